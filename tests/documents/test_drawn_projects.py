"""Whatever a project gives and leaves out, each of its documents is written, and says nothing of the program."""

import re
from pathlib import Path

import pytest

from specgen import building
from specgen.documents.catalogue import templates
from tests.projects_at_random import draw_project
from tests.support import SMALL, merged, written

EVERY = tuple(template.id for template in templates() if template.stage != "closeout")
# What stands on a page where a value was taken for words.
UNSAID = re.compile(r"\b(?:nan|inf)\b|DisplayValue|object at 0x|\{\{|\}\}|\[None|: None\b(?!\.)")


@pytest.mark.parametrize("seed", range(16))
def test_each_document_of_a_project_drawn_at_random_is_written(seed: int, tmp_path: Path) -> None:
    out = tmp_path / "out"
    building.build(written(tmp_path, draw_project(seed)), out, ("txt",), EVERY, draft=True)
    pages = {page.name[:3]: page.read_text("utf-8") for page in out.glob("*.txt")}
    assert sorted(pages) == sorted(EVERY)
    assert not [(name, found[0]) for name, page in pages.items() if (found := UNSAID.search(page))]


def test_sealed_details_need_no_joint_to_be_told_of(tmp_path: Path) -> None:
    pipe = {"kind": "penetration", "elevation": "E1", "sealed": "yes"}
    page = procedure(tmp_path, {"details": {"PN1": pipe}, "joints": {}, "elevations": {"E1": {"wall": "W1"}}})
    assert "Seal the joint around the penetration against its collar" in page


def test_a_joint_too_narrow_for_a_bead_stops_no_document(tmp_path: Path) -> None:
    joint = {"kind": "opening_perimeter", "elevation": "E1", "width": "1/8 in"}
    assert "Sealant joints" in procedure(tmp_path, {"joints": {"J1": joint}, "elevations": {"E1": {"wall": "W1"}}})


def test_cloth_is_told_of_once_the_shift_is_known(tmp_path: Path) -> None:
    cloth = {"elevation": "E1", "kind": "shade_cloth", "rig_minutes": "30"}
    change = {"shade": {"SH1": cloth}, "elevations": {"E1": {"wall": "W1"}}}
    building.build(written(tmp_path, merged(SMALL, change)), tmp_path / "out", ("txt",), ("D14",), draft=True)
    (page,) = (tmp_path / "out").glob("D14*.txt")
    assert "each day of a coat or of sealing" not in page.read_text("utf-8")


def procedure(folder: Path, change: dict[str, object]) -> str:
    """The procedure of the small project with a change."""
    building.build(written(folder, merged(SMALL, change)), folder / "out", ("txt",), ("D08",), draft=True)
    (page,) = (folder / "out").glob("D08*.txt")
    return page.read_text("utf-8")
