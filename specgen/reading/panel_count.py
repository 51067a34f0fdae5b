"""A check on reading that the joint lines of a project cut no more panels than are laid out in reasonable time."""

from collections.abc import Iterator
from math import ceil
from typing import Any

from specgen.model.field import Path
from specgen.model.project import Project

MOST_PANELS = 20_000
_SIDES = (("width", "vertical_lines"), ("height", "horizontal_lines"))


def find_too_many_panels(project: Project) -> Iterator[tuple[Path, str, str]]:
    """The elevation at which the panels of all become too many: its layout, the message, and the hint."""
    total = 0
    for mark in project.members.get(("elevations",), ()):
        layout: Path = ("elevations", mark, "layout")
        total += _count_panels(project, mark)
        if total > MOST_PANELS:
            told = f"with {mark} there are about {total:,} panels in all, more than {MOST_PANELS:,}"
            yield layout, told, "correct a size, a panel limit, or the lines, or split the project"
            return


def _count_panels(project: Project, mark: str) -> int:
    """About how many panels an elevation has, openings not taken out; 0 where that is not known."""
    parts = [_count_parts(project, ("elevations", mark), side, lines) for side, lines in _SIDES]
    return parts[0] * parts[1]


def _count_parts(project: Project, face: Path, side: str, lines: str) -> int:
    mode = project.values.get((*face, "layout", "mode"))
    if mode == "given":
        return len(project.values.get((*face, "layout", lines)) or ()) + 1
    length: Any = project.values.get((*face, side))
    mosts = [
        project.values.get(path) for path in (("panel_limits", f"max_{side}"), (*face, "layout", f"target_{side}"))
    ]
    known = [most for most in mosts if most is not None]
    return ceil(length.amount / min(known).amount) if mode == "request" and length is not None and known else 0
