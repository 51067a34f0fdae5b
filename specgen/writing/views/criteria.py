"""The lines of the mockup acceptance form, with blanks for what is read."""

from typing import Any

from ...vocabulary.block import Blank, CheckBox
from ...vocabulary.condition import holds
from ...vocabulary.standard import Criterion
from ..compose import Composer
from ..desk import Desk, TableView
from ..values import Page


def rows(desk: Desk, composer: Composer) -> TableView:
    """The lines that the project's own criteria cover; all that apply where it names none."""
    project = desk.sight.project
    root = Page(desk.sight, project.schema.root, ())
    names = {name: getattr(root, name) for name in project.schema.root.children} | {"limit": desk.sight.limit}
    made = tuple(
        (
            line.title,
            [f"{line.method} ({line.location})"],
            _limit(desk, composer, line, names),
            line.readings,
            Blank(f"Reading, {line.title}"),
            [CheckBox("pass"), " ", CheckBox("fail")],
            Blank(f"Initials, {line.title}"),
        )
        for line in desk.standards.criteria.values()
        if (not line.when or holds(line.when, project)) and _covered(desk, line)
    )
    header = ("Criterion", "Method and place", "Limit", "Readings", "Read", "Result", "Initials")
    return TableView(header, made, (15, 23, 20, 10, 14, 9, 9))


def _covered(desk: Desk, line: Criterion) -> bool:
    """Whether a criterion of the project covers the line: its name is the beginning of the line's id."""
    given = _criteria(desk)
    return not given or line.name.startswith("other") or any(line.name.startswith(name) for name, _ in given)


def _criteria(desk: Desk) -> list[tuple[str, tuple[str, ...]]]:
    path = ("mockup", "criteria")
    entries = [(*path, number) for number in desk.sight.project.members.get(path, ())]
    return [(str(desk.sight.project.get((*entry, "name")) or ""), entry) for entry in entries]


def _limit(desk: Desk, composer: Composer, line: Criterion, names: dict[str, Any]) -> list[Any]:
    """The limit of the trade's line, and the project's own words where it sets a criterion of that name."""
    made: list[Any] = [*composer.inlines(composer.text(line.limit, names, f"criteria.yaml: {line.name}"))]
    for name, entry in _criteria(desk):
        own = desk.sight.project.get((*entry, "limit"))
        if name and line.name.startswith(name) and own:
            made += ["; project: ", desk.sight.shown((*entry, "limit"))]
    return made
