"""The lines of the mockup acceptance form, with blanks for what is read."""

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView
from specgen.documents.display_values import Page, Shown
from specgen.model.block import Blank, CheckBox
from specgen.model.evaluation import evaluate
from specgen.model.standard import Criterion


def rows(desk: Desk, composer: Composer) -> TableView:
    """The lines that the project's own criteria cover; all that apply where it names none."""
    project = desk.sight.project
    root = Page(desk.sight, project.schema.root, ())
    names = {name: getattr(root, name) for name in project.schema.root.children} | {"limit": desk.sight.limit}
    made = tuple(
        (
            Shown(line.title, line.title, line.basis[0]),
            [f"{line.method} ({line.location})"],
            composer.inlines(composer.text(line.limit, names, f"criteria.yaml: {line.name}")),
            line.readings,
            Blank(f"Reading, {line.title}"),
            [CheckBox("pass"), " ", CheckBox("fail")],
            Blank(f"Initials, {line.title}"),
        )
        for line in desk.standards.criteria.values()
        if (not line.when or evaluate(line.when, project)) and _covered(desk, line)
    )
    header = ("Criterion", "Method and place", "Limit", "Readings", "Read", "Result", "Initials")
    return TableView(header, made, (15, 23, 20, 10, 14, 9, 9))


def _covered(desk: Desk, line: Criterion) -> bool:
    """Whether a criterion of the project covers the line: its name is the beginning of the line's id."""
    given = _criteria(desk)
    return not given or line.name.startswith("other") or any(line.name.startswith(name) for name in given)


def _criteria(desk: Desk) -> list[str]:
    path = ("mockup", "criteria")
    names = [desk.sight.project.get((*path, number, "name")) for number in desk.sight.project.members.get(path, ())]
    return [str(name) for name in names if name]
