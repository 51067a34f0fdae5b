"""`layout`: what it writes, leaves out and refuses."""

import builtins
import csv
import json
from pathlib import Path
from typing import Any

import pytest

from specgen.formats.png import write_png
from tests.documents.figures.faces import FACE, JOINTS, LIMITS
from tests.running import run_main
from tests.support import EXAMPLES, SMALL, merged, written

PROJECT = merged(SMALL, {"panel_limits": LIMITS, "elevations": {"E1": FACE}, "joints": JOINTS})


def lay_out(capsys: Any, folder: Path, project: Any, *more: str) -> Any:
    return run_main(capsys, "layout", str(written(folder, project)), "--out", str(folder / "out"), *more)


def test_an_elevation_is_drawn_and_listed(tmp_path: Path, capsys: Any) -> None:
    done = lay_out(capsys, tmp_path, PROJECT)
    assert (done.code, done.err) == (0, f"specgen: wrote 6 files to {tmp_path / 'out'}\n")
    names = sorted(file.name for file in (tmp_path / "out").iterdir())
    assert names == ["E1.dxf", "E1.png", "E1.svg", "joints.csv", "layout.json", "manifest.json", "panels.csv"]
    assert (tmp_path / "out" / "E1.png").read_bytes().startswith(b"\x89PNG")


def test_the_lists_name_their_units(tmp_path: Path, capsys: Any) -> None:
    lay_out(capsys, tmp_path, PROJECT)
    with (tmp_path / "out" / "panels.csv").open(encoding="utf-8-sig", newline="") as file:
        head, first, *rest = csv.reader(file)
    assert head == ["elevation", "panel", "x in", "y in", "width in", "height in", "least side in", "net area sq in"]
    assert first == ["E1", "E1-A1", "0", "0", "60", "48", "48", "2880"]
    assert len(rest) == 46
    with (tmp_path / "out" / "joints.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert sum(float(row["length in"]) for row in rows if row["joint"] == "J2") == 480
    data = json.loads((tmp_path / "out" / "layout.json").read_text("utf-8"))
    assert (data["format"], data["unit"], list(data["elevations"])) == (1, "in", ["E1"])
    assert data["elevations"]["E1"]["width"] == 480


def test_the_same_project_gives_the_same_bytes(tmp_path: Path, capsys: Any) -> None:
    lay_out(capsys, tmp_path, PROJECT)
    before = {file.name: file.read_bytes() for file in (tmp_path / "out").iterdir()}
    assert lay_out(capsys, tmp_path, PROJECT).code == 0
    assert {file.name: file.read_bytes() for file in (tmp_path / "out").iterdir()} == before


def test_one_elevation_on_a_sheet_of_a_size(tmp_path: Path, capsys: Any) -> None:
    two = merged(PROJECT, {"elevations": {"E2": FACE}})
    assert lay_out(capsys, tmp_path, two, "--elevation", "E2", "--sheet", "a3").code == 0
    assert 'width="420mm" height="297mm"' in (tmp_path / "out" / "E2.svg").read_text("utf-8")
    assert not (tmp_path / "out" / "E1.svg").exists()


@pytest.mark.parametrize(
    ("change", "more", "told"),
    [
        ({}, ("--elevation", "E11"), "there is no elevation 'E11' (did you mean E1?)"),
        ({"elevations": "drop"}, (), "the project has no elevations (give them under elevations)"),
        ({"elevations": {"E1": {"layout": "drop"}}}, (), "E1 is not laid out (give elevations.E1.layout.mode)"),
    ],
)
def test_what_cannot_be_laid_out_is_refused_in_one_line(
    change: Any, more: Any, told: str, tmp_path: Path, capsys: Any
) -> None:
    project = merged(PROJECT, change)
    if "elevations" not in project:
        project.pop("joints")
    done = lay_out(capsys, tmp_path, project, *more)
    assert done.code == 2
    assert done.err.count("\n") == 1
    assert told in done.err
    assert not (tmp_path / "out").exists()


def test_an_elevation_without_lines_is_left_out_and_told(tmp_path: Path, capsys: Any) -> None:
    two = merged(PROJECT, {"elevations": {"E2": {"width": "20 ft"}}})
    done = lay_out(capsys, tmp_path, two)
    assert done.code == 0
    assert "E2 is not laid out (give elevations.E2." in done.err
    assert (tmp_path / "out" / "E1.svg").exists()
    assert not (tmp_path / "out" / "E2.svg").exists()


def test_a_file_of_the_user_is_left_alone(tmp_path: Path, capsys: Any) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "E1.svg").write_text("mine")
    done = lay_out(capsys, tmp_path, PROJECT)
    assert done.code == 2
    assert (tmp_path / "out" / "E1.svg").read_text() == "mine"


def test_forms_without_their_library_are_left_out_each_in_one_line(
    tmp_path: Path, capsys: Any, monkeypatch: Any
) -> None:
    load = builtins.__import__

    def refuse(name: str, *rest: Any, **named: Any) -> Any:
        if name.split(".")[0] in ("typst", "resvg_py", "ezdxf"):
            raise ImportError(name)
        return load(name, *rest, **named)

    write_png.cache_clear()  # another test may have drawn the same
    monkeypatch.setattr(builtins, "__import__", refuse)
    done = lay_out(capsys, tmp_path, PROJECT)
    assert done.code == 0
    assert "no PNG was written: a picture needs a library" in done.err
    assert "no DXF was written: DXF needs a library" in done.err
    assert done.err.count("\n") == 3
    assert not [file for file in (tmp_path / "out").iterdir() if file.suffix in (".png", ".dxf")]


def test_two_drawings_of_one_name_are_refused(tmp_path: Path, capsys: Any) -> None:
    project = merged(PROJECT, {"elevations": {"A/1": FACE, "A-1": FACE}})
    done = lay_out(capsys, tmp_path, project)
    assert done.code == 2
    assert "two drawings would have one name: A-1.svg" in done.err


def test_every_face_of_a_whole_example_is_drawn(tmp_path: Path, capsys: Any) -> None:
    file = EXAMPLES / "clean" / "project.yaml"
    done = run_main(capsys, "layout", str(file), "--out", str(tmp_path / "out"))
    assert done.code == 0
    drawn = sorted(each.name for each in (tmp_path / "out").glob("*.svg"))
    assert drawn == ["E1.svg", "E2.svg", "E3.svg"]


def test_drawings_that_go_are_counted(tmp_path: Path, capsys: Any) -> None:
    two = merged(PROJECT, {"elevations": {"E2": FACE}})
    lay_out(capsys, tmp_path, two)
    done = lay_out(capsys, tmp_path, two, "--elevation", "E1")
    told = f"removed from {tmp_path / 'out'}: 3 files of the earlier package (E2.dxf, E2.png, E2.svg)\n"
    assert (done.code, told in done.err) == (0, True)
