"""The published standards that this project's work refers to."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.evaluation import evaluate


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Designation and title in short, of those that apply, and of those that the project names itself."""
    project = context.project
    applying = {
        r.name: r.title for r in context.standards.references.values() if not r.when or evaluate(r.when, project)
    }
    made = list(applying.items())
    made += [(name, what) for name, what in _own(context).items() if name not in applying]
    return TableView(("Standard", "Subject"), tuple(made), (30, 70))


def _own(context: DocumentContext) -> dict[str, str]:
    """Standards the project names for its sheathing and weather barrier."""
    made = {}
    for mark in context.project.members[("walls",)]:
        for section, what in (("substrate", "sheathing"), ("wrb", "weather barrier")):
            name = context.project.get(("walls", mark, section, "standard"))
            if name:
                made[str(name)] = f"{what.capitalize()} of this project"
    return made
