"""The answers of a workbook of questions as offers to a project, and what of it cannot be taken."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

from specgen.asking.answered_sheet import AnsweredSheet, SheetAnswer
from specgen.asking.field_paths import find_field
from specgen.asking.offers import Converter, Offer
from specgen.asking.proposals import find_proposal
from specgen.model.field import Path
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.reading.answer_text import read_answer
from specgen.reading.conversion import InvalidValue
from specgen.reading.days import read_day
from specgen.reading.rules import convert_checked
from specgen.resolving.answer_sources import name_answer

_BY, _PARTY = (("answers", "*", name) for name in ("by", "party"))
_UNDATED = "the answers are taken without one; add it as `on` to the answer in the project, or give --on next time"


class Signer(NamedTuple):
    """Who answered a workbook, and when."""

    party: str  # as `owed_by` has it
    by: str
    on: str
    name: str  # all three in words, as documents print them


@dataclass
class Offered:
    """What a workbook or a table offers, what of it is faulty, and what is told of how it was taken."""

    offers: list[Offer] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


def check_project(project: Project, sheet: AnsweredSheet) -> None:
    """Raise Refused for a workbook of another project."""
    for name, told in (("name", sheet.project_name), ("number", sheet.project_number)):
        own = " ".join(str(project.get(("project", name)) or "").split())
        # A spreadsheet program that takes a number for one leaves its zeros in front away.
        if own and told and own.casefold().lstrip("0") != told.casefold().lstrip("0"):
            message = f"the sheet is of another project: its {name} is {told!r}, not {own!r}"
            raise Refused(Problem(message, "take it into that project, or ask anew", file=sheet.file))


def find_signer(project: Project, sheet: AnsweredSheet, by: str, on: str) -> Signer:
    """Who answered, by the workbook, or `by` and `on` where it does not say; raises Refused where that is open.

    The day may be missing: it is empty then.
    """
    problems: list[Problem] = []
    unasked = ("the sheet does not say which party it is for", "ask anew with `specgen ask`")
    unsigned = ("it is not said who answered", "write the name there, or give --by NAME")
    given = (
        (_PARTY, sheet.party, sheet.file, *unasked),
        (_BY, sheet.by or by, sheet.by_place if sheet.by or not by else "--by", *unsigned),
    )
    for path, text, place, message, hint in given:
        try:
            if not text:
                raise InvalidValue(message, hint)
            convert_checked(project.schema.fields[path], text)
        except InvalidValue as invalid:
            problems.append(Problem(invalid.message, invalid.hint, file=place))
    if problems:
        raise Refused(*problems)
    party, signed = (text for _, text, *_ in given)
    day = _read_signed_day(project, sheet.on) or on
    return Signer(party, signed, day, name_answer(project, party, signed, day))


def read_call_day(project: Project, on: str) -> str:
    """The day that a call gives, as year-month-day; raises Refused."""
    try:
        return read_day(on, project.system) if on else ""
    except InvalidValue as invalid:
        raise Refused(Problem(invalid.message, invalid.hint, file="--on")) from None


def tell_signing(project: Project, sheet: AnsweredSheet, signer: Signer, by: str, on: str) -> Iterator[str]:
    """What is told of who signed a workbook and when: how it was read, what is missing, what was not used."""
    read = _read_signed_day(project, sheet.on)
    if by and sheet.by and by != sheet.by:
        yield f"{sheet.by_place}: the sheet says {sheet.by}; --by is not used"
    if on and read and on != read:
        yield f"{sheet.on_place}: the sheet says {read}; --on is not used"
    if read and read != sheet.on:
        yield f"{sheet.on_place}: {sheet.on!r} is read as {read}"
    elif not read:
        fault = f"{sheet.on!r} is not a plain date" if sheet.on else "the date is missing"
        kept = f"--on gives {signer.on}" if signer.on else _UNDATED
        yield f"{sheet.on_place}: {fault}; {kept}"


def _read_signed_day(project: Project, text: str) -> str:
    """The day in a workbook as year-month-day; empty where it is missing, or not plain."""
    try:
        return read_day(text, project.system) if text else ""
    except InvalidValue:
        return ""


def list_offers(project: Project, sheet: AnsweredSheet, number: int, who: str, converter: Converter) -> Offered:
    """The answers of a workbook, each with its field and typed value."""
    offered = Offered()
    seen: dict[Path, str] = {}
    for answer in sheet.answers:
        name = answer.field
        try:
            offer = _read(project, answer, number, who, converter, offered.notes)
            if offer is not None and seen.setdefault(offer.path, answer.place) != answer.place:
                raise InvalidValue(f"the field stands twice in the sheet, also at {seen[offer.path]}", "keep one row")
            if offer is not None:
                offered.offers.append(offer)
        except InvalidValue as invalid:
            offered.problems.append(Problem(invalid.message, invalid.hint, name, answer.place))
    return offered


def _read(
    project: Project, answer: SheetAnswer, number: int, who: str, converter: Converter, notes: list[str]
) -> Offer | None:
    """The offer of a row; None where it holds no answer. Raises InvalidValue."""
    if not answer.field:
        raise InvalidValue("the row names no field", f"leave {answer.field_place} as it was sent")
    found = find_field(project, answer.field)
    unit = found.field.unit_si if project.system == "si" else found.field.unit_ip
    read = read_answer(answer.cell, found.field, project, unit, find_proposal(found.field, answer.question))
    if read is None:
        notes += [f"{answer.place}: {answer.field}: remark without an answer: {answer.remark}"] if answer.remark else []
        return None
    text, value = converter.convert(found.field, read)
    return Offer(found.path, text, value, answer.place, who, answer.remark, read.notes, number)
