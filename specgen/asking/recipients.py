"""Who gets a workbook of questions: a firm one for all its roles; a contractor forwards those of the design side."""

from collections.abc import Iterable
from typing import NamedTuple

from specgen.asking.question_words import name_party_file
from specgen.asking.questions import BY_ROUTE, PartySheet
from specgen.documents.context import DocumentContext

_FORWARDS = "general_contractor"


class Recipient(NamedTuple):
    """A workbook: the name of its file without ending, and what each party is asked in it, the recipient first."""

    file: str
    sheets: tuple[PartySheet, ...]


def list_recipients(context: DocumentContext, sheets: Iterable[PartySheet]) -> tuple[Recipient, ...]:
    """The workbooks in the order of the sheets that come first in each."""
    grouped: dict[str, list[PartySheet]] = {}
    firms: dict[str, str] = {}
    for sheet in sheets:
        grouped.setdefault(_find_recipient(context, sheet, firms), []).append(sheet)
    return tuple(
        Recipient(name_party_file(role), tuple(sorted(asked, key=lambda sheet: sheet.role != role)))
        for role, asked in grouped.items()
    )


def list_apart(sheets: Iterable[PartySheet]) -> tuple[Recipient, ...]:
    """A workbook for each party by itself."""
    return tuple(Recipient(name_party_file(sheet.role), (sheet,)) for sheet in sheets)


def _find_recipient(context: DocumentContext, sheet: PartySheet, firms: dict[str, str]) -> str:
    """The role of whoever gets a sheet; `firms` gets the role that each firm was met in first."""
    contractor, applicator = (_fold(context, role) for role in (_FORWARDS, "applicator"))
    if sheet.role in BY_ROUTE and contractor not in ("", applicator):
        return _FORWARDS
    return firms.setdefault(sheet.name.casefold(), sheet.role) if sheet.name else sheet.role


def _fold(context: DocumentContext, role: str) -> str:
    return str(context.project.get(("parties", role, "name")) or "").casefold()
