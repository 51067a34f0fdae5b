"""Whether those who build the mockup are those who do the work."""

from specgen.documents.context import DocumentContext
from specgen.documents.members import marks

_LEFT_OUT = ("MOC-02a", "MOC-02b")


def tell_crews(context: DocumentContext) -> str:
    """The crews of the work that the mockup leaves out; empty while nobody says who builds it."""
    named = context.project.get(("mockup", "crew"))
    if named is None:
        return ""
    found = {
        mark: finding.code
        for finding in context.judgment.findings
        for mark in finding.subjects
        if finding.code in _LEFT_OUT
    }
    if not found:
        every = set(context.project.members.get(("crews",), ())) <= set(map(str, named))
        return f"The {'same crews' if every else 'crews that plaster and spray the work'} build the mockup."
    crews = f"Crews {marks(list(found))} work" if len(found) > 1 else f"Crew {marks(list(found))} works"
    return f"{crews} on the wall and not on the mockup: {', '.join(dict.fromkeys(found.values()))}, see D05."
