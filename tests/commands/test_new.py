"""`new`: the starters it writes, and what becomes of one as it is filled in."""

import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.pipeline import read
from specgen.reading.schema import project_schema
from tests.commands.starters import SIDES, Key, fill, list_keys
from tests.running import Ended, run_main

STAGES = ("verdict", "mockup", "work", "closeout")
NAMED = {("firm",): "firm.yaml", ("coating_system",): "coating_system.yaml"}


def new(capsys: Any, folder: Path, *words: str, name: str = "new.yaml") -> str:
    """The text of a starter, written to a folder."""
    assert run_main(capsys, "new", str(folder / name), *words).code == 0
    return (folder / name).read_text("utf-8")


def check(capsys: Any, folder: Path, text: str) -> Ended:
    (folder / "filled.yaml").write_text(text, "utf-8")
    return run_main(capsys, "check", str(folder / "filled.yaml"))


def live(keys: list[Key]) -> list[Key]:
    return [key for key in keys if not key.off]


def test_a_new_file_in_a_folder_that_is_not_there_is_refused(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "new", str(tmp_path / "none" / "a.yaml"))
    assert (done.code, done.out) == (2, "")
    assert "nothing was written" in done.err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("words", [(), ("--for", "work"), ("--file", "firm"), ("--file", "coating_system")])
def test_a_starter_never_overwrites_and_tells_what_comes_next(
    words: tuple[str, ...], tmp_path: Path, capsys: Any
) -> None:
    file = tmp_path / "new.yaml"
    done = run_main(capsys, "new", str(file), *words)
    assert done.code == 0
    assert done.err.rstrip().endswith(f"specgen check {file}")
    before = file.read_bytes()
    done = run_main(capsys, "new", str(file), *words)
    assert done.code == 2
    assert "is not overwritten" in done.err
    assert file.read_bytes() == before


def test_a_side_file_is_of_no_stage(tmp_path: Path, capsys: Any) -> None:
    assert run_main(capsys, "new", str(tmp_path / "a.yaml"), "--for", "work", "--file", "firm").code == 2
    assert list(tmp_path.iterdir()) == []


def test_who_begins_a_side_file_is_told_how_a_project_names_it(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "new", str(tmp_path / "ours.yaml"), "--file", "firm")
    assert "a project file beside it names it by the line firm: ours.yaml" in done.err


@pytest.mark.parametrize(
    ("stage", "purpose"),
    [
        ("verdict", "design_draft"),
        ("mockup", "mockup_submittal"),
        ("work", "work_submittal"),
        ("closeout", "closeout"),
    ],
)
def test_the_purpose_is_that_of_the_stage_and_nothing_else_is_given(
    stage: str, purpose: str, tmp_path: Path, capsys: Any
) -> None:
    keys = list_keys(new(capsys, tmp_path, "--for", stage))
    given = {".".join(key.path): key.value for key in keys if key.value}
    assert given == {"format": "1", "package.purpose": purpose}


def test_metric_work_is_told_so_in_the_file(tmp_path: Path, capsys: Any) -> None:
    keys = list_keys(new(capsys, tmp_path, "--units", "si"))
    assert [(key.value, key.off) for key in keys if key.path == ("package", "units")] == [("si", False)]


@pytest.mark.parametrize("stage", STAGES)
def test_a_starter_asks_for_every_field_of_its_stage_and_of_those_before(
    stage: str, tmp_path: Path, capsys: Any
) -> None:
    keys = list_keys(new(capsys, tmp_path, "--for", stage))
    asked = {key.field.path for key in live(keys) if key.field}
    offered = {key.field.path for key in keys if key.off and key.field}
    reached = STAGES[: STAGES.index(stage) + 1]
    fields = {path: field for path, field in project_schema().fields.items() if field.home == "project"}
    owed = {path for path, field in fields.items() if field.ring in reached}
    assert owed <= asked | offered
    # What is behind a # may be left away: it is optional, has a default, or belongs to a list that may be left out.
    optional = {path[:-1] for path, collection in project_schema().collections.items() if collection.optional}
    for path in owed - asked:
        assert fields[path].default or any(path[: len(above)] == above for above in optional), path
    assert not asked & offered
    assert {project_schema().fields[path].ring for path in asked} <= {*reached, "optional", "mockup"}


def test_a_mockup_starter_leaves_to_the_side_files_what_stands_there(tmp_path: Path, capsys: Any) -> None:
    keys = {key.path[0]: key for key in list_keys(new(capsys, tmp_path, "--for", "mockup"))}
    assert not {"people", "guns", "hoses", "compressor", "tank", "instruments", "smoothing", "primer"} & set(keys)
    assert [(keys[home].value, keys[home].off) for home in SIDES] == [("", False)] * 2


@pytest.mark.parametrize("home", SIDES)
def test_a_side_starter_has_every_field_that_stands_there(home: str, tmp_path: Path, capsys: Any) -> None:
    keys = list_keys(new(capsys, tmp_path, "--file", home))
    wanted = {path for path, field in project_schema().fields.items() if field.home == home}
    assert wanted <= {key.field.path for key in keys if key.field}
    assert {key.path[0] for key in keys} >= {"format", "attachments"}


# The sections and lists that hardly any job fills, which a reader of the starter must still come to know of.
@pytest.mark.parametrize("path", ["contract.demands", "deviations", "details", "accessories", "schedule.gaps"])
def test_what_may_be_given_stands_behind_a_sign_in_the_starter_of_the_work(
    path: str, tmp_path: Path, capsys: Any
) -> None:
    keys = {".".join(key.path): key for key in list_keys(new(capsys, tmp_path, "--for", "work"))}
    assert keys[path].off


@pytest.mark.parametrize("words", [("--for", "closeout"), ("--file", "firm"), ("--file", "coating_system")])
def test_every_section_has_words_over_it_and_a_blank_line(words: tuple[str, ...], tmp_path: Path, capsys: Any) -> None:
    text = new(capsys, tmp_path, *words)
    lines = text.splitlines()
    for key in live(list_keys(text)):
        if len(key.path) == 1 and key.path != ("format",):
            first = key.line - 1
            while lines[first].startswith("#"):
                first -= 1
            assert lines[first] == ""
            assert first < key.line - 1, key.path


def test_what_may_be_given_comes_with_the_section_it_stands_in(tmp_path: Path, capsys: Any) -> None:
    mockup, work = (
        {".".join(key.path) for key in list_keys(new(capsys, tmp_path, "--for", stage, name=f"{stage}.yaml"))}
        for stage in ("mockup", "work")
    )
    later = {"parties.inspector.contact", "elevations.E1.layout.target_width", "details.D1.kind"}
    assert not later & mockup
    assert later <= work
    assert "parties.owner.contact" in mockup


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("units", ["ip", "si"])
def test_a_fresh_starter_is_told_what_must_be_given_and_no_more(
    stage: str, units: str, tmp_path: Path, capsys: Any
) -> None:
    text = new(capsys, tmp_path, "--for", stage, "--units", units)
    lines = {".".join(key.path): key.line + 1 for key in list_keys(text)}
    wanted = ["project.name", "walls.W1.substrate.kind", "walls.W1.attachment.method"]
    for command in (["check"], ["build", "--out", str(tmp_path / "out")]):
        done = run_main(capsys, command[0], str(tmp_path / "new.yaml"), *command[1:])
        assert done.code == 2
        told = re.findall(r"new\.yaml:(\d+):\d+: (\S+): this must be given \(write ", done.err)
        assert told == [(str(lines[path]), path) for path in wanted], done
        assert len(done.err.splitlines()) == 3
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("units", ["ip", "si"])
def test_a_starter_in_which_the_few_required_values_are_typed_is_judged(
    stage: str, units: str, tmp_path: Path, capsys: Any
) -> None:
    text = new(capsys, tmp_path, "--for", stage, "--units", units)
    needed = (("project", "name"), ("walls", "W1", "substrate", "kind"), ("walls", "W1", "attachment", "method"))
    done = check(capsys, tmp_path, fill(text, units, [key for key in list_keys(text) if key.path in needed]))
    assert done.err == ""
    # The signature of the set and all data sheets are missing; members that stand empty are as if not written.
    assert set(re.findall(r"STOP (\S+)", done.out)) <= {"SUB-01a", "SUB-02a", "SUB-02c"}


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("units", ["ip", "si"])
def test_every_key_of_a_starter_is_read_as_it_is_typed(stage: str, units: str, tmp_path: Path, capsys: Any) -> None:
    for home in SIDES:
        text = new(capsys, tmp_path, "--file", home, "--units", units, name=f"{home}.yaml")
        # The project gives its own crews, save where it has not come so far.
        keys = [key for key in list_keys(text) if stage == "verdict" or "crews" not in key.path]
        (tmp_path / f"{home}.yaml").write_text(fill(text, units, keys), "utf-8")
    text = new(capsys, tmp_path, "--for", stage, "--units", units)
    keys = [key for key in list_keys(text) if key.path != ("records",)]
    (tmp_path / "filled.yaml").write_text(fill(text, units, keys, NAMED), "utf-8")
    values = read(tmp_path / "filled.yaml").values
    assert {key.path for key in keys if key.field} <= set(values)


@pytest.mark.parametrize("units", ["ip", "si"])
def test_a_starter_filled_line_by_line_never_slips(units: str, tmp_path: Path, capsys: Any) -> None:
    text = new(capsys, tmp_path, "--for", "work", "--units", units)
    keys = [key for key in list_keys(text) if key.field and not key.off and key.path[0] not in (*SIDES, "records")]
    for number in range(10, len(keys), 30):
        done = check(capsys, tmp_path, fill(text, units, keys[:number]))
        told = [line for line in done.err.splitlines() if "this must be given" not in line]
        assert told == []


@pytest.mark.parametrize("sign", [("\n", "\r\n"), ("\n", "\n\n")], ids=["line ends of another system", "double spaced"])
def test_a_starter_bears_what_editors_do_to_it(sign: tuple[str, str], tmp_path: Path, capsys: Any) -> None:
    text = new(capsys, tmp_path, "--for", "mockup")
    data = yaml.load(text.replace(*sign), yaml.BaseLoader)
    assert data == yaml.load(text, yaml.BaseLoader)
    assert data["walls"]["W1"]["substrate"]["kind"] == ""
