"""Who asks for the drainage of a wall: the code, a paragraph of the specification, or nobody."""

from specgen.documents.context import DocumentContext
from specgen.model.absence import Absent

BY_CODE = "required by the code"
# The limit on the efficiency is not of required drainage alone.
OF_EACH = "for each EIFS with drainage"


def tell_who_asks(context: DocumentContext, mark: str) -> str:
    """`required by the code`, `per Section 07 24 00, 2.1.A`, or `by choice`; empty while the code's answer is open."""
    try:
        due = context.resolve(("walls", mark), "drainage-due").result
    except Absent:
        return ""
    if due:
        return BY_CODE
    # A local code is not evaluated: nobody can say that it leaves the choice.
    local = context.project.get(("code", "model")) == "other"
    return _find_paragraph(context, mark) or ("" if local else "by choice")


def _find_paragraph(context: DocumentContext, mark: str) -> str:
    """The paragraph of the specification that wants a wall drained, if one is listed."""
    project = context.project
    for demand in project.members.get(("contract", "demands"), ()):
        at = ("contract", "demands", demand)
        walls = tuple(map(str, project.get((*at, "for")) or (mark,)))
        if mark in walls and str(project.get((*at, "field")) or "").startswith("walls.*.drainage."):
            section, paragraph = (project.get((*at, name)) for name in ("section", "paragraph"))
            return f"per Section {section}, {paragraph}"
    return ""
