"""The published standards that this project's work refers to."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.evaluation import evaluate


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Designation and short title of the standards that apply, then of those named by the project itself."""
    project = context.project
    applying = {
        r.name: r.title for r in context.standards.references.values() if not r.when or evaluate(r.when, project)
    }
    lines = list(applying.items())
    lines += [(name, what) for name, what in _own(context).items() if name not in applying]
    return TableView(("Standard", "Subject"), tuple(lines), (30, 70))


def _own(context: DocumentContext) -> dict[str, str]:
    """Standards the project names for its sheathing and weather barrier."""
    subjects = {}
    for mark in context.project.members[("walls",)]:
        for section, what in (("substrate", "sheathing"), ("wrb", "weather barrier")):
            name = context.project.get(("walls", mark, section, "standard"))
            if name:
                subjects[str(name)] = f"{what.capitalize()} of this project"
    return subjects
