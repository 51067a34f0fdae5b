"""The deviations of a project that move a field, found through the requirements they answer."""

from specgen.documents.context import DocumentContext
from specgen.model.field import Path, dotted_path


def name_deviations(context: DocumentContext, fields: set[Path]) -> list[str]:
    """The marks of the deviations that answer a requirement of the contract on one of the fields."""
    project = context.project
    names: set[str] = set()
    for mark in project.members.get(("contract", "demands"), ()):
        demand = ("contract", "demands", mark)
        field, paragraph, section = (project.get((*demand, name)) for name in ("field", "paragraph", "section"))
        if field in set(map(dotted_path, fields)):
            names |= {str(paragraph), f"{section} {paragraph}"}
    return [
        mark
        for mark in project.members.get(("deviations",), ())
        if names & set(project.get(("deviations", mark, "answers")) or ())
    ]
