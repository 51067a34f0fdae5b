"""`check`: how it ends, and its object for programs."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from tests.commands.support import STOPPED, checked
from tests.judging.test_outcomes import WHOLE
from tests.running import run_main
from tests.support import SMALL, merged, written

CHECK = {"format", "project", "purpose", "walls", "counts", "errors", "findings", "open", "not_judged"}


FINDING = {
    "rule",
    "clause",
    "severity",
    "subjects",
    "message",
    "found",
    "wanted",
    "path",
    "file",
    "line",
    "column",
    "basis",
    "remedy",
    "steps",
    "documents",
    "lifted_by",
    "places",
}
PLACE = {"subject", "path", "file", "line", "column"}


def test_a_check_ends_0_without_a_stop_1_with_one_2_where_it_cannot(tmp_path: Path, capsys: Any) -> None:
    assert run_main(capsys, "check", str(written(tmp_path, SMALL))).code == 0
    done = run_main(capsys, "check", str(written(tmp_path, STOPPED)))
    assert (done.code, done.err) == (1, "")
    assert "STOP ATT-01a  W1" in done.out
    done = run_main(capsys, "check", str(tmp_path / "none.yaml"))
    assert (done.code, done.out) == (2, "")
    assert "none.yaml: the file cannot be read" in done.err


def test_the_object_of_a_check_has_its_keys_also_where_it_could_not_read(tmp_path: Path, capsys: Any) -> None:
    made = checked(capsys, tmp_path, STOPPED)
    assert set(made) == CHECK
    assert set(made["findings"][0]) == FINDING
    assert [set(place) for place in made["findings"][0]["places"]] == [PLACE]
    assert made["walls"] == [{"wall": "W1", "verdict": "no"}]
    assert set(made["counts"]) == {"stop", "caution", "note", "open", "not_judged"}
    assert {frozenset(item) for item in made["open"]} == {frozenset({"path", "ring", "owed_by", "holds_up"})}
    assert {frozenset(n) for n in made["not_judged"]} == {frozenset({"rule", "clause", "subject", "needs"})}
    assert made["counts"] | {"open": len(made["open"]), "not_judged": len(made["not_judged"])} == made["counts"]
    finding = made["findings"][0]
    assert (finding["path"], finding["file"], finding["line"]) == ("walls.W1.attachment.method", "project.yaml", 11)
    bad = checked(capsys, tmp_path, merged(SMALL, {"primmer": {}}))
    assert set(bad) == CHECK
    assert [set(e) for e in bad["errors"]] == [{"message", "hint", "path", "file", "line", "column"}]
    assert bad["errors"][0]["hint"] == "did you mean primer?"
    assert bad["findings"] == []


@pytest.mark.parametrize(
    ("words", "message", "place"),
    [
        (("none.yaml",), "the file cannot be read: No such file or directory", ("none.yaml", 0, 0)),
        (("bad.yaml",), "character U+0007 is not allowed: it cannot be seen on paper", ("bad.yaml", 2, 18)),
        (("project.yaml", "--rule", "ATT-1"), "there is no rule 'ATT-1'", ("", 0, 0)),
    ],
)
def test_a_check_that_could_not_be_done_gives_the_same_object_with_its_errors(
    words: Any, message: str, place: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    monkeypatch.chdir(tmp_path)
    written(tmp_path, SMALL)
    written(tmp_path, "format: 1\nproject: {name: a\x07b}\n", "bad.yaml")
    done = run_main(capsys, "check", *words, "--format", "json")
    made = json.loads(done.out)
    assert done.code == 2
    assert set(made) == CHECK
    (error,) = made["errors"]
    assert (error["message"], (error["file"], error["line"], error["column"])) == (message, place)
    assert message in done.err


TWO = merged(
    WHOLE,
    {
        "walls": {"W1": {"attachment": {"method": "mechanical"}}, "W2": WHOLE["walls"]["W1"]},
        "elevations": {"E1": {"wall": "W1"}, "E2": WHOLE["elevations"]["E1"] | {"wall": "W2"}},
    },
)


def test_of_two_walls_one_passes_and_the_package_is_stopped_all_the_same(tmp_path: Path, capsys: Any) -> None:
    made = checked(capsys, tmp_path, TWO)
    assert made["walls"] == [{"wall": "W1", "verdict": "no"}, {"wall": "W2", "verdict": "yes"}]
    assert next(f for f in made["findings"] if f["rule"] == "ATT-01")["subjects"] == ["W1"]
    file = str(tmp_path / "project.yaml")
    done = run_main(capsys, "check", file)
    assert done.code == 1
    assert re.search(r"(?m)^W1  no: cannot be built as described \(ATT-01a\)$", done.out)
    assert re.search(r"(?m)^W2  yes; not judged: BAS-01, BAS-02, BAS-03 and 7 more$", done.out)
    assert run_main(capsys, "build", file, "--out", str(tmp_path / "out")).code == 2


def test_a_value_given_as_tbd_is_open_and_holds_its_clauses_up(tmp_path: Path, capsys: Any) -> None:
    known = checked(capsys, tmp_path, WHOLE)
    assert known["walls"] == [{"wall": "W1", "verdict": "yes"}]
    open_one = checked(capsys, tmp_path, merged(WHOLE, {"walls": {"W1": {"insulation": {"kind": "tbd"}}}}))
    assert open_one["walls"] == [{"wall": "W1", "verdict": "not_yet_known"}]
    (item,) = (i for i in open_one["open"] if i["path"] == "walls.W1.insulation.kind")
    assert (item["ring"], "INS-01a" in item["holds_up"]) == ("verdict", True)
    waiting = [n for n in open_one["not_judged"] if n["rule"] + n["clause"] == "INS-01a"]
    assert waiting == [{"rule": "INS-01", "clause": "a", "subject": "W1", "needs": ["walls.W1.insulation.kind"]}]


@pytest.mark.parametrize(
    ("deviation", "severity", "lifted", "said"),
    [
        ({"answers": ["ATT-01"]}, "stop", None, ", but is not approved."),
        ({"answers": ["ATT-01"], "approved_on": "2027-01-05"}, "caution", "DV1", "fasteners through the board"),
        ({"answers": ["ATT-01a"], "approved_on": "2027-01-05"}, "caution", "DV1", "fasteners through the board"),
        ({"answers": ["ATT-02"], "approved_on": "2027-01-05"}, "stop", None, "fasteners through the board"),
    ],
)
def test_a_deviation_lifts_only_what_it_answers_once_approved(
    deviation: Any, severity: str, lifted: str | None, said: str, tmp_path: Path, capsys: Any
) -> None:
    made = checked(capsys, tmp_path, merged(STOPPED, {"deviations": {"DV1": deviation}}))
    finding = next(f for f in made["findings"] if f["rule"] == "ATT-01")
    assert (finding["severity"], finding["lifted_by"]) == (severity, lifted)
    assert said in finding["message"]


def test_a_rule_that_nothing_lifts_stays_and_says_so(tmp_path: Path, capsys: Any) -> None:
    drained = {
        "code": {"model": "irc"},
        "walls": {"W1": {"substrate": {"kind": "osb"}, "drainage": {"kind": "none"}}},
        "deviations": {"DV1": {"answers": ["COD-02"], "approved_on": "2027-01-05"}},
    }
    finding = next(f for f in checked(capsys, tmp_path, merged(SMALL, drained))["findings"] if f["rule"] == "COD-02")
    assert (finding["severity"], finding["lifted_by"]) == ("stop", None)
    assert "Deviation DV1 is listed against it, but no deviation lifts this rule." in finding["message"]


def test_a_control_character_is_refused_with_its_place(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "check", str(written(tmp_path, "format: 1\nproject: {name: a\x07b}\n")))
    assert done.code == 2
    assert "project.yaml:2:18: character U+0007 is not allowed" in done.err
