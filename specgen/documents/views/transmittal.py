"""The transmittal: from whom to whom, for which contract, and what is asked."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.register import is_government
from specgen.documents.transmittal import list_paragraphs, tell_action, tell_deviations, tell_items, tell_sections
from specgen.documents.verifiers import find_sealing_day, is_checked_by_engineer

# What is told of a party beside its name, where it is given.
_REACHED = ("contact", "phone", "email")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each fact of the transmittal."""
    government = is_government(context)
    lines: list[tuple[str, Any]] = [
        (
            "To",
            ["Contracting Officer, " if government else "", *_name(context, "owner" if government else "architect")],
        ),
        ("Through", _name(context, "general_contractor")),
        ("From", _name(context, "applicator")),
        ("Engineer", _tell_engineer(context)),
        ("Contract", context.display(("contract", "number"))),
        (_name_sections(context), tell_sections(context)),
        ("Items", tell_items(context)),
        ("Variations" if government else "Deviations", tell_deviations(context)),
        ("Action requested", tell_action(context)),
    ]
    if context.project.get(("package", "revision")):
        lines.append(("Last review", _tell_review(context)))
    return TableView(("Subject", "This package"), tuple(line for line in lines if line[1]), (22, 78))


def _name(context: DocumentContext, role: str) -> list[Any]:
    """The name of a party, with the person written to, telephone, and e-mail where they are given."""
    at = ("parties", role)
    told = [context.display((*at, name)) for name in _REACHED if context.project.is_given((*at, name))]
    return [context.display((*at, "name")), *(part for one in told for part in (", ", one))]


def _name_sections(context: DocumentContext) -> str:
    """`Section and paragraph`; of sections without an item, `Section`."""
    return "Section and paragraph" if list_paragraphs(context) else "Section"


def _tell_engineer(context: DocumentContext) -> list[Any]:
    """The engineer, and the day of the seal, or that it comes before submittal; empty where none is named."""
    role = "design_engineer"
    if not context.project.is_given(("parties", role, "name")):
        return []
    if find_sealing_day(context.project):
        day = context.display(("package", "checked_on"))
        return [*_name(context, role), "; signed and sealed D06, ", day, "; sealed copy enclosed"]
    signs = is_checked_by_engineer(context.project) and not context.is_marked
    return [*_name(context, role), *(["; signs and seals D06 before submittal, see D19"] if signs else [])]


def _tell_review(context: DocumentContext) -> list[Any]:
    """`revise and resubmit, by R. Lindqvist, March 19, 2027`."""
    action, by, on = (context.display(("package", "review", name)) for name in ("action", "by", "on"))
    return [action, ", by ", by, ", ", on]
