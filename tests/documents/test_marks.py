"""Marks as documents print them, where several members bear the same. Rules of our own."""

from pathlib import Path
from typing import Any

from specgen.documents.attachments import tell_state
from specgen.documents.marks import name_opening
from specgen.model.value_text import sort_members
from tests.documents.example import changed_small
from tests.support import merged

OPENINGS: Any = {
    "elevations": {
        "E1": {"openings": {"A": {"kind": "window"}, "B": {"kind": "window"}}},
        "E2": {"openings": {"A": {"kind": "door"}}},
    }
}
COLORS: Any = {"colors": {mark: {"kind": "standard"} for mark in ("C2", "C1", "C10")}}


def test_an_opening_whose_mark_stands_on_two_elevations_is_named_with_its_own(tmp_path: Path) -> None:
    context = changed_small(tmp_path, OPENINGS)
    named = [name_opening(context, *at) for at in (("E1", "A"), ("E1", "B"), ("E2", "A"))]
    assert named == ["E1-A", "B", "E2-A"]


def test_members_in_a_list_stand_in_the_order_of_the_project(tmp_path: Path) -> None:
    paper = {"attachments": {"TR1": {"kind": "test_report", "colors": ["C10", "C1", "C2"]}}}
    context = changed_small(tmp_path, merged(COLORS, paper))
    path = ("attachments", "TR1", "colors")
    assert [member.mark for member in sort_members(context.project.value(path))] == ["C2", "C1", "C10"]
    assert (str(context.display(path)), context.display(path).raw) == ("C2, C1, C10", ("C2", "C1", "C10"))
    assert "colors C1, C2, C10" in tell_state(context, "TR1")


def test_a_report_of_no_color_names_none(tmp_path: Path) -> None:
    context = changed_small(tmp_path, {"attachments": {"TR1": {"kind": "test_report", "colors": []}}})
    assert not any("color" in str(part) for part in tell_state(context, "TR1"))
