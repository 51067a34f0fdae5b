"""What `check` says first and last, in which order, and what is typed to answer it."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.commands.support import STOPPED, SUBMITTAL, checked
from tests.judging.test_outcomes import WHOLE
from tests.running import run_main
from tests.support import EXAMPLES, SMALL, merged, written

# A wall of foam in a building of type IIB, whose fire reports nobody has listed, and one that has fasteners through it.
OWED = merged(
    SMALL,
    SUBMITTAL
    | {
        "code": {"model": "ibc", "edition": 2021, "construction_type": "IIB"},
        "parties": {"architect": {"name": "Studio Plain"}, "eifs_source": {"name": "Graywether"}},
        "walls": {
            "W1": {"insulation": {"kind": "eps"}},
            "W2": {
                "substrate": {"kind": "concrete"},
                "attachment": {"method": "mechanical"},
                "insulation": {"kind": "eps"},
            },
        },
    },
)


def lines_of(capsys: Any, folder: Path, data: Any, *words: str) -> list[str]:
    return run_main(capsys, "check", str(written(folder, data)), *words).out.splitlines()


def test_the_package_stands_first_and_the_next_command_last(tmp_path: Path, capsys: Any) -> None:
    file = tmp_path / "project.yaml"
    lines = lines_of(capsys, tmp_path, OWED)
    data = json.loads(run_main(capsys, "check", str(file), "--format", "json").out)
    stops, items = data["counts"]["stop"], data["counts"]["open"]
    # Five of the six ask for a document.
    head = f"Package: stopped by 1 stop, {stops - 1} stops for want of a document, and {items} open items"
    assert lines[:2] == [head, "Trial: submittal, mockup"]
    assert lines[2].startswith(f"{stops} stops, ")
    assert lines[-2:] == ["", f"next: specgen check {file} --severity stop"]


def test_a_draft_without_a_stop_is_ready_and_goes_on_with_what_is_open(tmp_path: Path, capsys: Any) -> None:
    lines = lines_of(capsys, tmp_path, SMALL)
    assert lines[:2] == ["Package: ready to build as a draft", "Trial: design draft"]
    assert lines[-1] == f"next: specgen check {tmp_path / 'project.yaml'} --open"


@pytest.mark.parametrize(
    ("data", "words", "command"),
    [
        (STOPPED, (), "specgen check FILE --severity stop"),
        (STOPPED, ("--severity", "stop"), "specgen check FILE --open"),
        (SMALL, ("--open",), "specgen ask FILE --out questions"),
        (WHOLE, (), "specgen grow FILE --for mockup"),
    ],
)
def test_the_next_command_fits_how_the_project_stands(
    data: Any, words: Any, command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    monkeypatch.chdir(tmp_path)
    written(tmp_path, data, "a b.yaml")
    out = run_main(capsys, "check", "a b.yaml", *words).out
    assert out.splitlines()[-1] == f"next: {command.replace('FILE', chr(39) + 'a b.yaml' + chr(39))}"


def test_a_submittal_that_lacks_nothing_is_built_next(capsys: Any) -> None:
    out = run_main(capsys, "check", str(EXAMPLES / "clean" / "project.yaml")).out
    assert out.startswith("Package: ready to build\nWickerwell Branch Library: submittal, work\n")
    assert re.search(r"\n\nnext: specgen build \S+project.yaml --out package\n$", out)


def test_each_wall_tells_what_decides_it(tmp_path: Path, capsys: Any) -> None:
    lines = lines_of(capsys, tmp_path, OWED)
    walls = lines[4 : lines.index("", 4)]
    text = " ".join(" ".join(walls).split())
    assert re.search(r"W1 not yet known: documents missing \(COD-03a, COD-03c\); values missing \(", text)
    assert text.endswith("W2 no: cannot be built as described (ATT-01a)")


def test_what_decides_a_wall_comes_first_then_the_groups(tmp_path: Path, capsys: Any) -> None:
    lines = lines_of(capsys, tmp_path, OWED)
    heads = [line for line in lines if re.match(r"(Stops|Cautions|Notes)\b", line)]
    assert heads[0] == "Stops that decide a wall (3)"
    assert heads[1].startswith("Stops, ")
    told = [line for line in lines if line.startswith("STOP ")]
    assert told[:3] == ["STOP ATT-01a  W2", "STOP COD-03a  W1, W2", "STOP COD-03c  W1, W2"]


def test_a_finding_tells_what_so_what_what_to_type_by_whom_and_where_to_read_on(tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "check", str(written(tmp_path, OWED))).out
    block = out.partition("STOP COD-03a")[2].partition("\n\n")[0]
    assert "     so: W1, W2 cannot be decided without it; only an approved deviation lifts\n       it.\n" in block
    assert "     why: foam burns, and fire spread depends on" in block
    # As issue and schema write it: one line for each wall.
    for wall in ("W1", "W2"):
        typed = f"     add attachments.X: {{kind: test_report, standard: NFPA 285, assembly: {wall}}}\n"
        assert typed in block
    assert "     by: EIFS manufacturer (Graywether)\n" in block
    assert block.endswith("     more: specgen rules COD-03")


@pytest.mark.parametrize("code", ["COD-03a", "COD-03c", "SUB-02a", "SUB-02c"])
def test_what_is_typed_settles_the_stop_that_asked_for_it(code: str, tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "check", str(written(tmp_path, OWED)), "--severity", "stop").out
    block = " ".join(out.partition(f"STOP {code} ")[2].partition("\n\n")[0].split())
    members = re.findall(r"add attachments\.X: (\{.*?\})", block)
    assert members
    papers = {f"A{n}": yaml.load(text, Loader=yaml.CBaseLoader) for n, text in enumerate(members, 1)}
    made = checked(capsys, tmp_path, OWED | {"attachments": papers})
    assert code not in [finding["rule"] + finding["clause"] for finding in made["findings"]]


def numbered(out: str) -> list[str]:
    """The entries of a numbered list, each on one line."""
    parts = re.split(r"\n(?=\d+\. (?:STOP|open item) )", out.partition("\nnext: ")[0])[1:]
    entries = [part.partition("\nOpen items (")[0] for part in parts]
    return [" ".join(entry.split()) for entry in entries]


def test_the_stops_are_numbered_and_complete_with_who_answers_for_them(tmp_path: Path, capsys: Any) -> None:
    data = checked(capsys, tmp_path, OWED)
    file = str(tmp_path / "project.yaml")
    out = run_main(capsys, "check", file, "--severity", "stop").out
    entries = numbered(out)
    stops = [finding for finding in data["findings"] if finding["severity"] == "stop"]
    assert [int(entry.split(".")[0]) for entry in entries] == [
        *range(1, len(stops) + 1),
        *range(1, len(data["open"]) + 1),
    ]
    assert f"\n{len(stops)} stops, " in out and f" {len(data['open'])} open items, " in out
    assert f"\nOpen items ({len(data['open'])}); they stop the package (SUB-09b)\n" in out
    told = [entry.split()[2] for entry in entries[: len(stops)] if " STOP " in entry and " by: " in entry]
    assert sorted(told) == sorted(finding["rule"] + finding["clause"] for finding in stops)
    deciding = set(re.findall(r"[A-Z]{3}-\d\d[a-z]", out.partition("\n\n1. STOP")[0]))
    first = [code in deciding for code in told]
    assert first == sorted(first, reverse=True)
    for item, entry in zip(data["open"], entries[len(stops) :], strict=True):
        assert f". open item {item['path']}, " in entry and "; by: " in entry
        assert f"; add {item['path']}: " in entry


def test_the_stops_of_a_draft_are_its_findings_alone(tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "check", str(written(tmp_path, STOPPED)), "--severity", "stop").out
    assert len(numbered(out)) == 1
    assert "No stops.\n" in run_main(capsys, "check", str(written(tmp_path, SMALL)), "--severity", "stop").out


def open_fields(out: str) -> dict[str, str]:
    """The fields of the open view with their examples."""
    found = re.findall(r"^  (\S+): ((?:.*\n      (?![A-Z]))*.*)$", out, flags=re.M)
    return {path: " ".join(text.split()) for path, text in found}


def nested(fields: dict[str, str]) -> dict[str, Any]:
    """The fields as they would stand in a file."""
    made: dict[str, Any] = {}
    for path, text in fields.items():
        *way, name = path.split(".")
        at = made
        for step in way:
            at = at.setdefault(step, {})
        at[name] = yaml.load(text, Loader=yaml.CBaseLoader)
    return made


@pytest.mark.parametrize("units", ["ip", "si"])
def test_the_file_can_be_filled_from_the_screen(units: str, tmp_path: Path, capsys: Any) -> None:
    base = merged(OWED, {"package": {"units": units}, "elevations": {"E1": {"wall": "W1"}}})
    data = checked(capsys, tmp_path, base)
    fields = open_fields(run_main(capsys, "check", str(tmp_path / "project.yaml"), "--open").out)
    waited = {need for clause in data["not_judged"] for need in clause["needs"]}
    assert {item["path"] for item in data["open"]} | waited == set(fields)
    # A file that is not there is refused, as it should be.
    given = {path: text for path, text in fields.items() if path != "coating_system"}
    filled = merged(base, nested(given))
    made = checked(capsys, tmp_path, filled)
    assert made["errors"] == []
    still = {item["path"] for item in made["open"]}
    assert not still & set(given)
    assert given["walls.W1.base_coat.dry_thickness"] == {"ip": "3/32 in", "si": "2.4 mm"}[units]


def test_open_fields_stand_by_who_answers_for_them(tmp_path: Path, capsys: Any) -> None:
    file = str(written(tmp_path, OWED))
    whole = run_main(capsys, "check", file, "--open").out
    heads = re.findall(r"^([A-Z].*): (\d+) fields?$", whole, flags=re.M)
    assert {"Architect (Studio Plain)", "EIFS manufacturer (Graywether)"} < set(dict(heads))
    assert sum(int(number) for _, number in heads) == len(open_fields(whole))
    for word in ("architect", "Architect", "studio plain"):
        alone = run_main(capsys, "check", file, "--open", word).out
        assert set(open_fields(alone)) < set(open_fields(whole))
        assert len(open_fields(alone)) == int(dict(heads)["Architect (Studio Plain)"])
    done = run_main(capsys, "check", file, "--open", "architct")
    assert (done.code, done.out) == (2, "")
    assert "'architct' answers for nothing that is open (did you mean architect?)" in done.err


def test_a_file_behind_open_is_a_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any) -> None:
    monkeypatch.chdir(tmp_path)
    written(tmp_path, OWED)
    before = run_main(capsys, "check", "--open", "project.yaml")
    assert before == run_main(capsys, "check", "project.yaml", "--open")
    assert before.code == 1


def test_a_report_that_is_missing_is_a_stop_and_no_open_item(tmp_path: Path, capsys: Any) -> None:
    unsealed = merged(OWED, {"sealants": {"S1": {"product": "Sealant 61"}}})
    made = checked(capsys, tmp_path, unsealed)
    (stop,) = (f for f in made["findings"] if f["rule"] + f["clause"] == "SLT-06a")
    assert stop["path"] == "sealants.S1.adhesion_report"
    # The list of papers is asked for by the stops that each add one to it.
    assert not {"sealants.S1.adhesion_report", "attachments"} & {item["path"] for item in made["open"]}
    draft = checked(capsys, tmp_path, merged(unsealed, {"package": {"purpose": "design_draft"}}))
    assert "SLT-06" not in [finding["rule"] for finding in draft["findings"]]


MANY = merged(
    SMALL,
    {
        "elevations": {
            f"E{n}": {"wall": "W1", "grade_clearance": "3 in" if n % 50 else "4 in", "grade_is_soil": "no"}
            for n in range(1, 201)
        }
    },
)


def test_subjects_are_grouped_by_like_values_and_each_has_its_place(tmp_path: Path, capsys: Any) -> None:
    made = checked(capsys, tmp_path, MANY)
    finding = next(f for f in made["findings"] if f["rule"] + f["clause"] == "BAS-05a")
    places = finding["places"]
    assert [place["subject"] for place in places] == finding["subjects"] == [f"E{n}" for n in range(1, 201)]
    assert [place["path"] for place in places] == [f"elevations.E{n}.grade_clearance" for n in range(1, 201)]
    rows = (tmp_path / "project.yaml").read_text("utf-8").splitlines()
    assert all("grade_clearance" in rows[place["line"] - 1] for place in places)
    assert {key: places[0][key] for key in ("path", "file", "line", "column")} == {
        key: finding[key] for key in ("path", "file", "line", "column")
    }
    out = run_main(capsys, "check", str(tmp_path / "project.yaml")).out
    block = out.partition("STOP BAS-05a  ")[2].partition("\n\n")[0]
    assert block.startswith("E1 to E200 (200)\n")
    assert "     E1 to E49 (49), E51 to E99 (49), E101 to E149 (49), E151 to E199 (49): The" in block
    assert "     E50, E100, E150, E200: The board ends 4 in above grade" in block


def test_no_line_is_wider_than_80(tmp_path: Path, capsys: Any) -> None:
    for data in (OWED, MANY):
        file = str(written(tmp_path, data))
        for words in ((), ("--severity", "stop"), ("--open",), ("--rule", "COD-03")):
            lines = run_main(capsys, "check", file, *words).out.splitlines()
            # What has no blank to break at stays whole, and a command that is to be copied.
            wide = [line for line in lines if len(line) > 80 and " " in line.strip()]
            assert [line for line in wide if ": specgen " not in line] == []


LINE = re.compile(r"(?P<file>[^:]+):(?P<line>\d+):(?P<column>\d+): (?P<code>\S+) (?P<severity>\w+) (?P<message>.+)")


def test_editors_get_a_line_for_each_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job").mkdir()
    data = checked(capsys, tmp_path / "job", merged(OWED, {"elevations": MANY["elevations"]}))
    done = run_main(capsys, "check", "job/project.yaml", "--format", "line")
    assert (done.code, done.err) == (1, "")
    found = [LINE.fullmatch(line) for line in done.out.splitlines()]
    assert all(found)
    rows = (tmp_path / "job" / "project.yaml").read_text("utf-8").splitlines()
    told = [one.groupdict() for one in found if one]
    assert {one["file"] for one in told} == {"job/project.yaml"}
    assert all(int(one["line"]) <= len(rows) for one in told)
    raised = [one for one in told if one["code"] == "BAS-05a"]
    assert [one["message"].split(":")[0] for one in raised] == [f"E{n}" for n in range(1, 201)]
    assert len([one for one in told if one["code"] == "SUB-09b"]) == len(data["open"])
    assert {one["severity"] for one in told if one["code"] == "SUB-09b"} == {"stop"}
    cut = run_main(capsys, "check", "job/project.yaml", "--format", "line", "--rule", "BAS-05").out
    assert {line.split()[1] for line in cut.splitlines()} == {"BAS-05a"}
    assert run_main(capsys, "check", "job/project.yaml", "--format", "line", "--severity", "caution").out == ""


def test_editors_get_the_faults_of_a_file_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any) -> None:
    monkeypatch.chdir(tmp_path)
    written(tmp_path, "format: 1\nprimmer: {}\n", "bad.yaml")
    done = run_main(capsys, "check", "bad.yaml", "--format", "line")
    assert (done.code, done.err) == (2, "")
    assert "bad.yaml:2:1: FILE error primmer: " in done.out
    assert done.out.splitlines()[0].endswith("(did you mean primer?)")
    done = run_main(capsys, "check", "none.yaml", "--format", "line")
    assert done.out.startswith("none.yaml:1:1: FILE error the file cannot be read")
    done = run_main(capsys, "check", "bad.yaml", "none.yaml", "--format", "line")
    assert (done.code, done.out) == (2, "")
    assert "--open and --format line tell of one project (name one file)" in done.err


@pytest.mark.parametrize(
    ("code", "reason"),
    [
        ("SUB-02c", "the crew needs the hazards of each product"),
        ("COD-03a", "foam burns, and fire spread depends on"),
        ("COD-03c", "heat from a burning building nearby"),
    ],
)
def test_the_reason_is_that_of_the_clause_that_fired(code: str, reason: str, tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "check", str(written(tmp_path, OWED)), "--severity", "stop").out
    block = " ".join(out.partition(f"STOP {code} ")[2].partition("\n\n")[0].split())
    assert f" why: {reason}" in block


@pytest.mark.parametrize("edition", [2018, 2021])
def test_a_basis_is_cited_in_the_adopted_edition(edition: int, tmp_path: Path, capsys: Any) -> None:
    project = OWED | {"code": OWED.get("code", {}) | {"model": "ibc", "edition": edition}}
    out = run_main(capsys, "check", str(written(tmp_path, project)), "--rule", "COD-03", "--severity", "stop").out
    assert out
    report = run_main(capsys, "check", str(written(tmp_path, project)), "--severity", "stop").out
    block = " ".join(report.partition("STOP COD-03a ")[2].partition("\n\n")[0].split())
    assert f" basis: International Building Code {edition}, 2603.5 and 2603.5.5" in block
    assert "2006" not in block and "780 CMR" not in block
