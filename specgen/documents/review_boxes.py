"""The boxes of a review: the contractor's statement and the revisions, beside room for the reviewer's stamp."""

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.register import is_government
from specgen.documents.transmittal import list_items_of
from specgen.model.block import Blank, Box, CheckBox, Inline, Inlines, ReviewBoxes, Table, Text, Value
from specgen.model.field import Path
from specgen.model.value_text import value_text, words

_REVIEW: Path = ("package", "contractor_review")
# What the reviewer can decide, a line of boxes each: the action codes of UFGS 01 33 00, and those usual else.
_BY_AUTHORITY = (
    ("Approved as submitted", "Approved, except as noted"),
    ("Revise and resubmit", "Disapproved"),
    ("Receipt acknowledged",),
)
_BY_ARCHITECT = (("Approved",), ("Approved as noted",), ("Revise and resubmit",), ("Rejected",))
# Shares of the columns of the revisions.
_REVISIONS = (12, 33, 55)


def review_boxes(context: DocumentContext) -> ReviewBoxes:
    """The boxes of a submittal; what is not given is left to be filled in by hand."""
    return ReviewBoxes((_contractor_box(context), _revision_box(context)), _stamp_box(context))


def _contractor_box(context: DocumentContext) -> Box:
    statement = context.project.get((*_REVIEW, "statement"))
    lines: list[Inlines] = [(Text(str(statement)),)] if statement else []
    title, unnamed = _name_box(context, "Contractor's review", "general_contractor")
    return Box(
        title,
        (
            *unnamed,
            *lines,
            (Text("Reviewed by: "), _fill(context, (*_REVIEW, "by"), Blank("Reviewed by"))),
            *_tell_signature(context),
        ),
    )


def _tell_signature(context: DocumentContext) -> tuple[Inlines, ...]:
    """`Signed March 1, 2027`, or room for signature and date."""
    signed = context.project.get((*_REVIEW, "signed_on"))
    if signed is not None:
        return ((Text(f"Signed {value_text(signed)}"),),)
    return (
        (Text("Signature: "), Blank("Signature of the contractor")),
        (Text("Date: "), Blank("Date of the review", "date")),
    )


def _revision_box(context: DocumentContext) -> Box:
    """The revision in hand with its date and purpose; what it changes is listed apart."""
    project = context.project
    revision, date = (project.get(("package", name)) for name in ("revision", "date"))
    purpose = words(str(project.value(("package", "purpose")))).capitalize()
    changed = bool(project.get(("package", "changes")))
    row = (
        str(revision or 0),
        value_text(date) if date else "",
        f"{purpose}, changes listed below" if changed else purpose,
    )
    header = tuple((Text(title),) for title in ("No.", "Date", "Description"))
    return Box("Revisions", table=Table(header, (tuple((Text(cell),) if cell else () for cell in row),), _REVISIONS))


def _stamp_box(context: DocumentContext) -> Box:
    """The box of the reviewer, who alone takes action; of a draft none is asked for."""
    government = is_government(context)
    said, role = ("Approving authority", "owner") if government else ("Architect", "architect")
    title, unnamed = _name_box(context, f"{said}'s review", role)
    if context.is_marked:
        return Box(title, unnamed)
    choices = _BY_AUTHORITY if government else _BY_ARCHITECT
    action = list_items_of(context, "action")
    asked = f"Action, items {action}:" if action and not government else "Action:"
    lines = [(Text(asked),), *map(_set_choices, choices), *([] if government else _tell_received(context))]
    by = "approving authority" if government else "architect"
    signed: tuple[Inlines, ...] = (
        (Text("By: "), Blank(f"Reviewed by, {by}")),
        (Text("Date: "), Blank("Date of action", "date")),
    )
    return Box(title, (*unnamed, *lines, *signed))


def _set_choices(labels: tuple[str, ...]) -> Inlines:
    """The boxes of a line, a blank between them."""
    parts = [(Text(" "), CheckBox(label)) for label in labels]
    return tuple(one for pair in parts for one in pair)[1:]


def _tell_received(context: DocumentContext) -> list[Inlines]:
    """A box for the informational items, on which no action is taken."""
    told = list_items_of(context, "informational")
    return [(Text(f"Informational, items {told}: "), CheckBox("Received"))] if told else []


def _name_box(context: DocumentContext, title: str, role: str) -> tuple[str, tuple[Inlines, ...]]:
    """The title of a box with the party it is for, and a line that asks for a name not given."""
    name: DisplayValue = context.display(("parties", role, "name"))
    if name.open:
        return title, ((Value(name.text, open=True, asks=name.asks),),)
    return f"{title}: {name}", ()


def _fill(context: DocumentContext, path: Path, blank: Blank) -> Inline:
    """A given value, or the blank for it."""
    value = context.project.get(path)
    return blank if value is None else Text(value_text(value))
