"""Checks on reading what attachments state: a figure of the limits by its name, and no other than the one in force."""

from collections.abc import Iterator, Mapping

from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.standard import Limit
from specgen.model.suggest import suggest
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.stated_figures import ATTACHMENTS, IS, STATES, is_figure

# No paper of a project takes the place of the law.
_LAW = ("{osha}", "{ibc}", "{irc}", "40 CFR", "International Building Code")


def stated_problems(project: Project, limits: Mapping[str, Limit]) -> Iterator[Problem]:
    """Problems of all figures that attachments state."""
    for mark in project.members.get((ATTACHMENTS,), ()):
        path = (ATTACHMENTS, mark, STATES)
        for entry in project.values.get(path, ()):
            wrong = _find_wrong(project, limits, entry)
            if wrong:
                place = project.place(path)
                yield Problem(*wrong, place.path, place.file, place.line, place.column)


def _find_wrong(project: Project, limits: Mapping[str, Limit], entry: str) -> tuple[str, str] | None:
    """What is wrong with an entry and what would be right; None where it is as it should be."""
    name, _, text = (part.strip() for part in entry.partition(IS))
    row = limits.get(name)
    if row is None:
        open_to_papers = [known for known, limit in limits.items() if not _is_settled(limit)]
        return f"{name!r} is no figure that a paper can state", suggest(name, open_to_papers)
    if row.maker_figure is not None:
        return f"{name!r} is a figure of the coating manufacturer", f"write {'.'.join(row.maker_figure)}"
    if _is_settled(row):
        return f"{name!r} is a figure of the law, which no paper replaces", "leave it out"
    figure = row.figure(project.system)
    # A sheet in the other system of units may say the twin of the figure; it is cited where that is in force.
    if not any(is_figure(one, text) for one in (row.value, row.value_si) if one is not None):
        said = f"{name} {IS} {_write(figure)}"
        message = f"{entry!r} is not the figure in force"
        return message, f"write {said} where the paper says so; else answer in D05"
    return None


def _is_settled(row: Limit) -> bool:
    """Whether the law or the coating system file sets the figure."""
    return row.maker_figure is not None or row.source.controls.startswith(_LAW)


def _write(figure: object) -> str:
    return format_quantity(figure, figure.unit) if isinstance(figure, Quantity) else str(figure)
