"""Each command as its user meets it: what it prints where, and how it ends."""

import hashlib
import io
import json
import os
import re
import zipfile
from pathlib import Path
from typing import Any

import docx
import pytest
from lxml import etree, html

from specgen import __version__, pipeline
from specgen.cli import main
from specgen.reading.positions import TBD, read_text
from tests.documents.support import AWKWARD
from tests.judging.test_outcomes import WHOLE
from tests.running import run_main, run_specgen
from tests.support import ROOT, SMALL, merged, written

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
}
STOPPED = merged(SMALL, {"walls": {"W1": {"attachment": {"method": "mechanical"}}}})


def checked(capsys: Any, folder: Path, data: Any) -> dict[str, Any]:
    return json.loads(run_main(capsys, "check", str(written(folder, data)), "--format", "json").out)


def test_a_check_ends_0_without_a_stop_1_with_one_2_where_it_cannot(tmp_path: Path, capsys: Any) -> None:
    assert run_main(capsys, "check", str(written(tmp_path, SMALL))).code == 0
    done = run_main(capsys, "check", str(written(tmp_path, STOPPED)))
    assert done.code == 1
    assert done.err == ""
    assert "STOP ATT-01a  W1" in done.out
    done = run_main(capsys, "check", str(tmp_path / "none.yaml"))
    assert done.code == 2
    assert done.out == ""
    assert "none.yaml: the file cannot be read" in done.err


def test_the_object_of_a_check_has_its_keys_also_where_it_could_not_read(tmp_path: Path, capsys: Any) -> None:
    made = checked(capsys, tmp_path, STOPPED)
    assert set(made) == CHECK
    assert set(made["findings"][0]) == FINDING
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


def test_quiet_leaves_the_messages_out_before_and_after_the_command(tmp_path: Path, capsys: Any) -> None:
    assert run_main(capsys, "new", str(tmp_path / "a.yaml")).err
    assert run_main(capsys, "--quiet", "new", str(tmp_path / "b.yaml")).err == ""
    assert run_main(capsys, "new", str(tmp_path / "c.yaml"), "--quiet").err == ""
    file, out = str(written(tmp_path, SMALL)), str(tmp_path / "out")
    assert "wrote" in run_main(capsys, "build", file, "--out", out, "--only", "D05").err
    assert run_main(capsys, "build", file, "--out", out, "--only", "D05", "--quiet") == (0, "", "")


def test_quiet_leaves_results_and_refusals_as_they_are(tmp_path: Path, capsys: Any) -> None:
    file = str(written(tmp_path, SMALL))
    assert run_main(capsys, "check", file, "--quiet") == run_main(capsys, "check", file)
    done = run_main(capsys, "--quiet", "check", str(tmp_path / "none.yaml"))
    assert done.code == 2
    assert done.out == ""
    assert "cannot be read" in done.err


RESULTS = [
    ("check", "{file}"),
    ("check", "{file}", "--rule", "ATT-01"),
    ("check", "{file}", "--severity", "stop", "--format", "json"),
    ("rules",),
    ("rules", "ATT-01"),
    ("fields",),
    ("fields", "walls.*.substrate"),
    ("fields", "climate.hot_air"),
    ("matrix",),
    ("schema",),
    ("schema", "--file", "firm"),
    ("calc",),
    ("calc", "drainage-due", "--from", "{file}"),
    ("calc", "face-heat", "hot_air=95F", "solar_reflectance=0.4", "emittance=0.3", "irradiance=800W/m2"),
]


@pytest.mark.parametrize("words", RESULTS, ids=" ".join)
def test_results_go_out_alone_and_without_colour(words: tuple[str, ...], tmp_path: Path, capsys: Any) -> None:
    file = str(written(tmp_path, SMALL))
    done = run_main(capsys, *(word.format(file=file) for word in words))
    assert done.code == 0
    assert done.err == ""
    assert done.out.endswith("\n")
    assert "\x1b" not in done.out


def test_a_new_file_in_a_folder_that_is_not_there_is_refused(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "new", str(tmp_path / "none" / "a.yaml"))
    assert done.code == 2
    assert done.out == ""
    assert "nothing was written" in done.err
    assert list(tmp_path.iterdir()) == []


def test_the_version_is_that_of_the_package(capsys: Any) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["--version"])
    assert ended.value.code == 0
    assert capsys.readouterr().out == f"specgen {__version__}\n"


@pytest.mark.parametrize("ring", ["verdict", "mockup", "work", "closeout"])
@pytest.mark.parametrize("units", ["ip", "si"])
def test_a_starter_is_accepted_by_check_and_never_overwrites(
    ring: str, units: str, tmp_path: Path, capsys: Any
) -> None:
    file = tmp_path / "new.yaml"
    assert run_main(capsys, "new", str(file), "--for", ring, "--units", units).code == 0
    before = file.read_bytes()
    assert run_main(capsys, "check", str(file)).code == 0
    done = run_main(capsys, "new", str(file))
    assert done.code == 2
    assert "is not overwritten" in done.err
    assert file.read_bytes() == before


@pytest.mark.parametrize("ring", ["verdict", "mockup", "work"])
@pytest.mark.parametrize("units", ["ip", "si"])
def test_every_line_of_a_starter_can_be_taken_into_use(ring: str, units: str, tmp_path: Path, capsys: Any) -> None:
    run_main(capsys, "new", str(tmp_path / "new.yaml"), "--for", ring, "--units", units)
    lines = (tmp_path / "new.yaml").read_text("utf-8").splitlines()[2:]
    text = "\n".join(re.sub(r"^(\s*)# ", r"\1", re.sub(r"^# ", "", line)) for line in lines)
    file = written(tmp_path, text.replace("purpose: mockup_submittal", "purpose: design_draft"))
    err = run_main(capsys, "check", str(file)).err
    # A paper or face that another ring describes is all that may be missing.
    assert [line for line in err.splitlines() if "is the mark of no" not in line and "cannot be read" not in line] == []


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        (("rules", "ATT-1"), "did you mean ATT-01?"),
        (("rules", "att_01"), "did you mean ATT-01?"),
        (("calc", "face_heta"), "did you mean face-heat?"),
        (("calc", "joint-widht"), "did you mean joint-width?"),
        (("calc", "joint-width", "lenght=3ft"), "did you mean length?"),
        (("calc", "hose-loss", "flow=12", "scfm"), "'scfm' is no key with a value"),
        (("calc", "dew-point", "air=70F", "air=80F", "rh=50"), "air is given twice (air=70F or air=80F)"),
        (("fields", "walls.W1.wrb.knid"), "did you mean walls.*.wrb.kind?"),
    ],
)
def test_a_mistyped_word_gets_its_near_miss(words: tuple[str, ...], hint: str, capsys: Any) -> None:
    done = run_main(capsys, *words)
    assert done.code == 2
    assert done.out == ""
    assert hint in done.err


@pytest.mark.parametrize(
    ("more", "hint"),
    [
        (("--formats", "docs"), "did you mean docx?"),
        (("--only", "D8"), "did you mean D08?"),
        (("--formats", "docx,pdff"), "no format 'pdff'"),
    ],
)
def test_a_mistyped_choice_of_build_gets_its_near_miss_and_writes_nothing(
    more: Any, hint: str, tmp_path: Path, capsys: Any
) -> None:
    done = run_main(capsys, "build", str(written(tmp_path, SMALL)), "--out", str(tmp_path / "out"), *more)
    assert done.code == 2
    assert hint in done.err
    assert not (tmp_path / "out").exists()


def test_build_refuses_while_stops_stand_and_leaves_nothing_behind(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, STOPPED)
    done = run_main(capsys, "build", str(file), "--out", str(tmp_path / "out"))
    assert done.code == 2
    assert "nothing was written: 1 stop stands" in done.err
    assert [p.name for p in tmp_path.iterdir()] == ["project.yaml"]


def test_a_package_stands_untouched_where_its_project_is_now_stopped(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    assert run_main(capsys, "build", str(written(tmp_path, SMALL)), "--out", str(out)).code == 0
    before = {f.name: f.read_bytes() for f in out.iterdir()}
    assert run_main(capsys, "build", str(written(tmp_path, STOPPED)), "--out", str(out)).code == 2
    assert {f.name: f.read_bytes() for f in out.iterdir()} == before
    assert sorted(p.name for p in tmp_path.iterdir()) == ["out", "project.yaml"]


def test_a_second_build_takes_the_place_of_the_whole_package(tmp_path: Path, capsys: Any) -> None:
    file, out = str(written(tmp_path, SMALL)), tmp_path / "out"
    assert run_main(capsys, "build", file, "--out", str(out), "--formats", "txt,html").code == 0
    assert len(list(out.iterdir())) > 3
    assert run_main(capsys, "build", file, "--out", str(out), "--formats", "txt", "--only", "D05").code == 0
    assert sorted(p.name for p in out.iterdir()) == ["D05-warnings-and-limitations.txt", "manifest.json"]
    assert sorted(p.name for p in tmp_path.iterdir()) == ["out", "project.yaml"]


def test_the_manifest_lists_every_file_with_its_digest(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    run_main(capsys, "build", str(written(tmp_path, SMALL)), "--out", str(out), "--formats", "txt")
    manifest = json.loads((out / "manifest.json").read_text("utf-8"))
    digests = {f.name: hashlib.sha256(f.read_bytes()).hexdigest() for f in out.iterdir() if f.suffix == ".txt"}
    assert manifest["files"] == digests
    assert (manifest["project"], manifest["purpose"], manifest["draft"]) == ("Trial", "design_draft", True)


def test_a_draft_is_written_in_spite_of_stops_and_says_so(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    file = str(written(tmp_path, STOPPED))
    assert run_main(capsys, "build", file, "--out", str(out), "--draft", "--formats", "docx,html,txt").code == 1
    for file in out.glob("*.html"):
        assert "Draft, not for submission." in file.read_text("utf-8")
    for file in out.glob("*.docx"):
        head = docx.Document(str(file)).sections[0].header._element.xpath("string(.)")
        assert "DRAFT, NOT FOR SUBMISSION" in head
    for file in out.glob("*.txt"):
        body = file.read_text("utf-8")
        assert body.index("ATT-01a (W1)") < body.index("\n\n", body.index("Purpose")) + 400


def test_an_owed_point_stops_a_submittal_and_not_a_draft(tmp_path: Path, capsys: Any) -> None:
    submittal = merged(SMALL, {"package": {"purpose": "mockup_submittal"}})
    assert run_main(capsys, "check", str(written(tmp_path, submittal))).code == 1
    assert run_main(capsys, "build", str(tmp_path / "project.yaml"), "--out", str(tmp_path / "out")).code == 2
    assert run_main(capsys, "check", str(written(tmp_path, SMALL))).code == 0


@pytest.mark.no_cover
def test_two_builds_give_the_same_bytes_and_the_second_takes_the_place_of_the_first(
    clean_package: Path, tmp_path: Path, capsys: Any
) -> None:
    clean = str(ROOT / "project_examples" / "clean" / "project.yaml")
    made = []
    for _ in range(2):
        assert run_main(capsys, "build", clean, "--out", str(tmp_path / "out")).code == 0
        made.append({f.name: f.read_bytes() for f in (tmp_path / "out").iterdir()})
    assert made[0] == made[1]
    manifest = json.loads(made[0].pop("manifest.json"))
    assert manifest["stops"] == []
    # What is built where no format is asked for, in another process and another place.
    assert made[0] == {f.name: f.read_bytes() for f in clean_package.iterdir() if f.suffix in (".docx", ".html")}
    assert set(manifest["files"]) == set(made[0])


def test_a_folder_of_the_user_and_an_edited_file_are_left_alone(tmp_path: Path, capsys: Any) -> None:
    file, out = str(written(tmp_path, SMALL)), tmp_path / "out"
    out.mkdir()
    (out / "mine.txt").write_text("mine")
    assert run_main(capsys, "build", file, "--out", str(out)).code == 2
    (out / "mine.txt").unlink()
    assert run_main(capsys, "build", file, "--out", str(out), "--only", "D05").code == 0
    page = next(out.glob("*.html"))
    page.write_text("edited")
    done = run_main(capsys, "build", file, "--out", str(out))
    assert done.code == 2
    assert f"edited by hand since it was written: {page.name}" in done.err
    assert page.read_text() == "edited"


def test_only_writes_that_document(tmp_path: Path, capsys: Any) -> None:
    run_main(
        capsys,
        "build",
        str(written(tmp_path, SMALL)),
        "--out",
        str(tmp_path / "out"),
        "--only",
        "d10",
        "--formats",
        "txt",
    )
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == ["D10-mockup-acceptance-form.txt", "manifest.json"]


def test_a_sum_as_data_has_its_keys_and_a_bare_result(capsys: Any) -> None:
    keys = (
        "length=30ft",
        "alpha=3.6e-6/F",
        "movement_class=50",
        "tolerance=1/8in",
        "hot=105F",
        "cold=-15F",
        "install_low=60F",
        "install_high=75F",
        "moisture_strain=0.0002",
        "structural_closing=1/4in",
        "structural_opening=1/4in",
    )
    done = run_main(capsys, "calc", "joint-width", *keys, "--format", "json")
    made = json.loads(done.out)
    assert done.code == 0
    assert set(made) == {"name", "given", "result", "unit", "steps", "source", "notes"}
    assert set(made["steps"][0]) == {"symbol", "name", "expression", "substitution", "value", "unit"}
    # 0.8857 in before rounding: Cornell University, ARCH 262, fall 2007; the next sixteenth is 15/16.
    assert (made["result"], made["unit"]) == (0.9375, "in")
    metric = json.loads(run_main(capsys, "calc", "joint-width", *keys, "unit=mm", "--format", "json").out)
    assert metric["result"] == pytest.approx(0.9375 * 25.4)


@pytest.mark.parametrize(
    "wrong", [("length=30ft", "alpha"), ("alpha=steep",), ("movement_class=60",), ("length=30psi",), ("unit=psi",)]
)
def test_a_sum_refuses_what_it_cannot_use(wrong: tuple[str, ...], capsys: Any) -> None:
    good = {
        "length": "30ft",
        "alpha": "4e-6/F",
        "movement_class": "50",
        "tolerance": "0in",
        "temperature_range": "100F",
    }
    given = good | {w.partition("=")[0]: w.partition("=")[2] for w in wrong if "=" in w}
    words = [f"{key}={value}" for key, value in given.items()] + [w for w in wrong if "=" not in w]
    done = run_main(capsys, "calc", "joint-width", *words)
    assert done.code == 2
    assert done.out == ""
    assert done.err.startswith("specgen: ")


def test_all_sums_of_a_project_are_told_and_what_they_wait_for(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "calc", "joint-width", "--from", str(ROOT / "project_examples" / "clean" / "project.yaml"))
    assert done.code == 0
    assert done.out.count("result ") == len(re.findall(r"(?m)^J\d+: ", done.out))
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "1 in"}}}))
    told = run_main(capsys, "calc", "joint-width", "--from", str(file)).out
    assert told.startswith("J1: waits for ")
    assert "joints.J1.elevation" in told


def test_the_matrix_answers_for_every_substrate_and_attachment(capsys: Any) -> None:
    out = run_main(capsys, "matrix").out
    rows = {line[:20].strip(): line for line in out.splitlines()[1:11]}
    assert len(rows) == 10
    assert "no ATT-04a" in rows["paper-faced gypsum" if "paper-faced gypsum" in rows else "paper faced gypsum"]
    assert rows["concrete"].count("yes") == 3
    assert rows["concrete"].count("no ATT-01a") == 2


def test_a_rule_is_told_in_general_and_with_the_numbers_of_a_project(tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "rules", "slt-03").out
    assert "Why:" in out
    assert "SLT-03e" in out
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "3 in"}}}))
    out = run_main(capsys, "check", str(file), "--rule", "SLT-03c").out
    assert "SLT-03c stop, J1: fires" in out
    assert "joints.J1.width = 3 in (76.2 mm)" in out
    assert "limit: at most 2 in" in out


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
    assert re.search(r"(?m)^W1  no$", done.out)
    assert re.search(r"(?m)^W2  yes$", done.out)
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
        ({"answers": ["ATT-01"]}, "stop", None, "is not approved: the stop stands."),
        ({"answers": ["ATT-01"], "approved_on": "2027-01-05"}, "caution", "DV1", "Fasteners under the board"),
        ({"answers": ["ATT-01a"], "approved_on": "2027-01-05"}, "caution", "DV1", "Fasteners under the board"),
        ({"answers": ["ATT-02"], "approved_on": "2027-01-05"}, "stop", None, "Fasteners under the board"),
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
    assert "Deviation DV1 answers it, and no deviation lifts this rule: the stop stands." in finding["message"]


LONG = ("Long Hall " * 30).strip()


def words_of(file: Path) -> str:
    """What a reader of a document meets, runs of white space as one space."""
    if file.suffix == ".docx":
        parts = zipfile.ZipFile(file)
        pages = [etree.fromstring(parts.read(name)) for name in parts.namelist() if re.match(r"word/\w+\.xml", name)]
        text = "\n".join("".join(p.itertext(W + "t")) for page in pages for p in page.iter(W + "p"))
    elif file.suffix == ".html":
        text = html.fromstring(file.read_bytes().decode()).text_content()
    else:
        text = file.read_text("utf-8")
    return re.sub(r"\s+", " ", text)


W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
NOT_FREE = {"demands", "serves", "answers", "days_off", "for"}  # text that is a path, a mark or a day


def spoiled(data: Any, path: tuple[str, ...] = ()) -> Any:
    """The description with an awkward text, numbered, in the place of every free text."""
    if isinstance(data, dict):
        return {key: spoiled(value, (*path, key)) for key, value in data.items()}
    if isinstance(data, list):
        return [spoiled(value, (*path, str(n))) for n, value in enumerate(data)]
    made = pipeline.schema().field_at(path) or pipeline.schema().field_at(path[:-1])
    if made is None or (made.of or made.kind) != "text" or NOT_FREE & {*path}:
        return "tbd" if data is TBD else data
    return f"{AWKWARD} ({'/'.join(path)})"


@pytest.mark.no_cover
def test_every_text_of_the_user_comes_back_unchanged_in_every_document_and_format(tmp_path: Path, capsys: Any) -> None:
    for file in (ROOT / "project_examples" / "clean").glob("*.yaml"):
        written(tmp_path, spoiled(read_text(file, file.name).data), file.name)
    out = tmp_path / "out"
    file = str(tmp_path / "project.yaml")
    assert run_main(capsys, "build", file, "--out", str(out), "--formats", "docx,html,txt").code == 0
    for ending in ("docx", "html", "txt"):
        met = set()
        for file in out.glob(f"*.{ending}"):
            text = words_of(file)
            for match in re.finditer(r"\((\w+(?:/[\w ]+)+)\)", text):
                met.add(match[1])
                assert text[: match.start()].endswith(f"{AWKWARD} "), (file.name, match[1])
        assert "project/name" in met
        assert len(met) > 40, ending


def test_awkward_marks_come_back_unchanged(tmp_path: Path, capsys: Any) -> None:
    wall = {AWKWARD: STOPPED["walls"]["W1"]}
    file, out = written(tmp_path, merged(SMALL, {"walls": wall | {"W1": "drop"}})), tmp_path / "out"
    told = checked(capsys, tmp_path, merged(SMALL, {"walls": wall | {"W1": "drop"}}))
    assert told["findings"][0]["subjects"] == [AWKWARD]
    assert run_main(capsys, "build", str(file), "--out", str(out), "--draft", "--formats", "docx,html,txt").code == 1
    for made in (f for f in out.iterdir() if f.name.startswith(("D02", "D05"))):
        assert AWKWARD in words_of(made), made.name


@pytest.mark.parametrize("name", [AWKWARD, LONG], ids=["awkward", "300 characters"])
def test_text_of_the_user_comes_back_unchanged_in_every_format(name: str, tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    file = str(written(tmp_path, merged(SMALL, {"project": {"name": name}})))
    words = ("--only", "D05", "--formats", "docx,html,txt")
    assert run_main(capsys, "build", file, "--out", str(out), *words).code == 0
    assert f"Project: {name}\n" in next(out.glob("*.txt")).read_text("utf-8")
    page = html.fromstring(next(out.glob("*.html")).read_bytes().decode())
    assert page.xpath("string(//header//dd)") == name
    assert docx.Document(str(next(out.glob("*.docx")))).tables[0].rows[0].cells[1].text == name


def test_a_control_character_is_refused_with_its_place(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "check", str(written(tmp_path, "format: 1\nproject: {name: a\x07b}\n")))
    assert done.code == 2
    assert "project.yaml:2:18: character U+0007 is not allowed" in done.err


def test_the_command_runs_as_a_module_and_tells_its_usage(tmp_path: Path) -> None:
    # The one process whose lines are counted: nothing else runs the entry point.
    done = run_specgen("nonsense", cwd=tmp_path, env=os.environ)
    assert done.code == 2
    assert "Traceback" not in done.err


def test_the_readme_names_every_command() -> None:
    text = (ROOT / "README.md").read_text("utf-8")
    commands = re.findall(r"(?m)^    (\w+) ", run_specgen("--help").out)
    assert {"new", "check", "build"} <= set(commands)
    assert [c for c in commands if f"`specgen {c}" not in text] == []


def test_a_word_file_of_a_build_is_a_whole_zip(tmp_path: Path, capsys: Any) -> None:
    run_main(capsys, "build", str(written(tmp_path, SMALL)), "--out", str(tmp_path / "out"), "--only", "D05")
    assert zipfile.ZipFile(io.BytesIO(next((tmp_path / "out").glob("*.docx")).read_bytes())).testzip() is None
