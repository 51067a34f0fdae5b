"""What documents say of the changes they are composed with."""

from specgen.documents.context import DocumentContext
from specgen.documents.marks import name_member
from specgen.documents.parties import name_role
from specgen.model.changes import Changes
from specgen.model.state import Said
from specgen.model.value_text import words
from specgen.terminal.changes_words import tell_said

_NONE = Changes(was=("", ""), now=("", ""))


def changes_of(context: DocumentContext) -> Changes:
    """The changes that the documents are composed with; none where there is no set to compare with."""
    return context.changes or _NONE


def tell_issues(context: DocumentContext) -> str:
    """`revision 0 of March 1, 2027 to revision 1 of April 5, 2027`; empty without a set to compare with."""
    found = changes_of(context)
    told = (f"revision {revision}{f' of {date}' if date else ''}" for revision, date in (found.was, found.now))
    return " to ".join(told) if context.changes else ""


def tell_value(context: DocumentContext, said: Said | None) -> str:
    """A value as the documents of the project print it: in both systems where they do."""
    if said is None:
        return "Not given"
    if context.project.both_units or said.ip == said.si:
        return tell_said(said, context.first)
    return said.ip if context.first == "ip" else said.si


def name_place(context: DocumentContext, path: str) -> str:
    """The member or section that a dotted path stands in: `W1 concrete`, `E2 West face, WD7`, `Package`."""
    names = path.split(".")
    node, marks = context.project.schema.root.children.get(names[0]), list[str]()
    if node is None or node.star is None or len(names) < 2:
        said = words(names[0])
        return said[:1].upper() + said[1:]
    for name in names[1:]:
        marks += [name] if node.star is not None else []
        below = node.below(name)
        if below is None:
            break
        node = below
    return ", ".join((name_member(context, names[0], names[1]), *marks[1:]))


def name_owner(role: str) -> str:
    """The party that gives a value."""
    return name_role(role) if role else ""
