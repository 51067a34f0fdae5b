"""The qualification sheets: one for each person, with all roles, certificates, years, like projects, and signature."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._cells import join_cells
from specgen.model.block import Blank
from specgen.model.field import Path


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each person that the project or the firm file names."""
    found: dict[str, list[str]] = {}
    for mark in context.project.members.get(("people",), ()):
        name, employer = (context.display(("people", mark, key)) for key in ("name", "employer"))
        # Two entries without a name may be two people.
        found.setdefault(f"{mark if name.open else name}, {employer}", []).append(mark)
    lines = tuple(_set_sheet(context, marks) for marks in found.values())
    header = ("Person", "Certificates", "Years; on this system", "Similar projects", "Signature, date")
    return TableView(header, lines, (28, 32, 12, 10, 18))


def _set_sheet(context: DocumentContext, marks: list[str]) -> tuple[Any, ...]:
    """The cells of a person; what one of the entries gives counts for all."""
    first = ("people", marks[0])
    roles = join_cells([context.display(("people", mark, "role"))] for mark in marks)
    name = context.display((*first, "name"))
    years = [*_show(context, marks, "years"), "; ", *_show(context, marks, "years_on_system")]
    return (
        [name, ": ", *roles, "; ", context.display((*first, "employer")), *_tell_engaged(context, marks)],
        _list_certificates(context, marks) or _show(context, marks, "certificates") or "–",
        "–" if years == ["; "] else years,
        _show(context, marks, "projects") or "–",
        _tell_signature(context, marks, name),
    )


def _tell_engaged(context: DocumentContext, marks: list[str]) -> list[Any]:
    """Who engages an inspector, where the contract says so."""
    role = ("contract", "inspector_engaged_by")
    inspects = any(context.project.get(("people", mark, "role")) == "inspector" for mark in marks)
    return [", engaged by the ", context.display(role)] if inspects and context.project.is_given(role) else []


def _tell_signature(context: DocumentContext, marks: list[str], name: Any) -> list[Any]:
    """`Signed February 15, 2027`, or room for signature and date."""
    if any(context.project.get(("people", mark, "signed_on")) for mark in marks):
        return ["Signed ", *_show(context, marks, "signed_on")]
    return [Blank(f"Signature of {name}"), " ", Blank(f"Date of signature of {name}", "date")]


def _show(context: DocumentContext, marks: list[str], field: str) -> list[Any]:
    """The value that an entry gives; in brackets where one owes it; nothing for those who need none."""
    paths: list[Path] = [("people", mark, field) for mark in marks]
    given = next((path for path in paths if context.project.get(path) is not None), None)
    owed = next((path for path in paths if context.project.applies(path)), None)
    path = given or owed
    return [] if path is None else [context.display(path)]


def _list_certificates(context: DocumentContext, marks: list[str]) -> list[Any]:
    """`CT1 Training on the finish, valid through October 3, 2028`."""
    linked = [one for mark in marks for one in context.project.get(("people", mark, "certificates")) or ()]
    return join_cells(_name_certificate(context, one.mark) for one in dict.fromkeys(linked))


def _name_certificate(context: DocumentContext, mark: str) -> list[Any]:
    at = ("attachments", mark)
    until = (
        [", valid through ", context.display((*at, "valid_to"))] if context.project.is_given((*at, "valid_to")) else []
    )
    return [mark, " ", context.display((*at, "title")), *until]
