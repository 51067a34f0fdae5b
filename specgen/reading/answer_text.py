"""Turns a cell into the text of a value as a project file has it, as far as it is plain what was meant."""

import csv
import datetime
import re
from collections.abc import Iterable
from typing import NamedTuple

from specgen.model.field import Field
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.project import Project
from specgen.model.value_text import words
from specgen.quantities.number import is_number
from specgen.reading.clock_text import read_clock
from specgen.reading.conversion import InvalidValue
from specgen.reading.counts import read_count
from specgen.reading.days import read_day
from specgen.reading.grid import Cell

# What people write where they have no answer yet, in small letters.
NO_ANSWER = {"", "?", "??", "-", "--", "\u2013", "\u2014", "n/a", "na", "n.a.", "tbd", "t.b.d.", "tba"}
NO_ANSWER |= {"unknown", "not known", "don't know", "not known yet", "open", "pending", "to be determined"}
# A size that a spreadsheet program took for a day, as it comes out of one as CSV: `4-Mar`, `Mar-04`.
_SHORT_DAY = re.compile(r"\d{1,2}-[A-Z][a-z]{2}(-\d{2,4})?|[A-Z][a-z]{2}-\d{2}")
_PERCENT = re.compile(r"(?<!\\)%")
_UNIT_IN_LOOK = re.compile(r'0[^;"]*"\s*([^";]+?)\s*"\s*(?:;|$)')
_AND = re.compile(r",?\s+(?:and|&)\s+")
_DIGITS = 15  # that a spreadsheet keeps of a number
_UNIT_NAMES = {"h": "hours", "d": "days", "year": "years", "min": "minutes", "month": "months"}
_TOLD = {"date", "number", "integer", "percent"}  # kinds of which it is told how an answer was read
_YES_NO = {"y": "yes", "n": "no", "yes": "yes", "no": "no"}
_CONFIRMS = {"confirmed", "confirm", "ok", "okay", "agreed", "as proposed", "accepted", "approved", "correct", "yes"}
# What says where the answer stands, in place of the answer.
_THERE = (
    "attached|attachments?|enclosed|specs?|specifications?|plans?|drawings?|dwgs?|contract documents|contract|above"
)
_THERE += "|below|e-?mail|letter|cut ?sheets?|data ?sheets?|submittals?|manufacturer|code"
_TO = r"see|per|as per|refer to|as shown (?:in|on)|as noted (?:in|on)|as in|in|ref\.?"
_ELSEWHERE = re.compile(
    rf"(?:please )?(?:{_TO}) (?:the |your |our )?(?:{_THERE})\.?|attached\.?|enclosed\.?", re.IGNORECASE
)


class AnswerText(NamedTuple):
    """The text of a value, or the texts of a list, and what is to be told of how it was taken."""

    entries: tuple[str, ...]
    listed: bool
    notes: tuple[str, ...] = ()


def read_answer(cell: Cell, field: Field, project: Project, unit: str, proposed: str = "") -> AnswerText | None:
    """The answer in a cell to a field; None where it holds none. Raises InvalidValue.

    `unit` is the one that was asked for: a quantity without a unit is in that one, and refused where there is none.
    `proposed` is the value that stands where the answer confirms it.
    """
    if cell.error:
        raise InvalidValue(f"the cell holds the error {cell.value}", "write the value itself")
    if cell.value is None and cell.formula:
        raise InvalidValue("the cell holds a formula without a value", "write the value itself")
    text = _read_text(cell, field)
    if text.casefold() in NO_ANSWER:
        return None
    found = find_forbidden(text)
    if found:
        raise InvalidValue(found[1], found[2])
    if not field.values and _ELSEWHERE.fullmatch(text):
        raise InvalidValue(f"{text!r} says where to look, not what the value is", "write the value itself")
    notes: tuple[str, ...] = (f"a formula; its value {text} is taken",) if cell.formula else ()
    if proposed and text.casefold().rstrip(".! ") in _CONFIRMS:
        notes += (f"{text!r} confirms what was proposed, {proposed}",)
        text = proposed
    if field.kind == "list":
        return AnswerText(
            tuple(_mean(entry, field, project, unit) for entry in _split(text, bool(field.values or field.to))),
            True,
            notes,
        )
    meant = _mean(text, field, project, unit)
    if field.kind == "quantity" and is_number(text):
        notes += (f"taken as {meant}, in the unit that was asked for",)
    elif field.kind in _TOLD and meant != text:
        notes += (f"{text!r} is read as {meant}{_tell_unit(field)}",)
    return AnswerText((meant,), False, notes)


def _read_text(cell: Cell, field: Field) -> str:
    """What a cell says; raises InvalidValue for a day or a time that stands where none is asked for."""
    value, kind = cell.value, field.of or field.kind
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, (datetime.datetime, datetime.date)):
        return _read_day(value, kind)
    if isinstance(value, datetime.time):
        if kind != "time":
            raise InvalidValue(f"the cell holds a time of day, {value:%H:%M}", f"write {field.example} as text")
        return f"{value:%H:%M}"
    if isinstance(value, datetime.timedelta):
        raise InvalidValue(f"the cell holds a span of time, {value}", f"write {field.example} as text")
    if isinstance(value, (int, float)):
        return _read_number(value, cell.look, kind)
    several = field.lines or field.kind == "list"
    text = str(value or "").strip() if several else " ".join(str(value or "").split())
    if kind not in ("text", "date", "file", "reference") and _SHORT_DAY.fullmatch(text):
        hint = f"write {field.example}, with an apostrophe before it in a spreadsheet"
        raise InvalidValue(f"{text!r} is what a spreadsheet program makes of a size that it takes for a date", hint)
    return text


def _read_day(value: datetime.date, kind: str) -> str:
    day = value.date() if isinstance(value, datetime.datetime) else value
    if kind == "date":
        return day.isoformat()
    typed = f"{day.month}/{day.day}"
    message = f"the cell holds a date, {day.isoformat()}, which a spreadsheet program makes of {typed}"
    raise InvalidValue(message, f"format the cell as text and write what was meant, such as {typed} in")


def _read_number(value: int | float, look: str, kind: str) -> str:
    """A number as it is shown: 65 for 65.0, 65% where the cell shows percent, with the unit that its format adds."""
    if _PERCENT.search(re.sub(r'"[^"]*"', "", look)):
        return f"{_plain(value * 100)}%"
    unit = _UNIT_IN_LOOK.search(look) if kind == "quantity" else None
    return f"{_plain(value)} {unit[1]}" if unit else _plain(value)


def _plain(value: int | float) -> str:
    """The digits of a number as a spreadsheet keeps them; without an exponent as far as a person would write it so."""
    if isinstance(value, int) or value.is_integer():
        return str(int(value))
    text = f"{value:.{_DIGITS}g}"
    return f"{value:.{_DIGITS}f}".rstrip("0") if "e-" in text and abs(value) >= 1e-4 else text


def _split(text: str, several: bool) -> Iterable[str]:
    """The entries of a list: between commas, or semicolons where there are any; one with a comma may be in quotes.

    Of `several` choices or marks the last may stand behind an `and`.
    """
    bare = text.removeprefix("[").removesuffix("]").strip()
    if bare.casefold() == "none":
        return ()
    sign = ";" if ";" in bare else ","
    bare = _AND.sub(sign, bare) if several else bare
    rows = csv.reader([bare.replace("\n", sign)], delimiter=sign, skipinitialspace=True)
    return [entry.strip() for row in rows for entry in row if entry.strip()]


def find_mark(project: Project, collection: str, text: str) -> str:
    """The mark of the member that a text names: by the mark in any case, by the name that it alone has, or by both.

    A text that names none is given back as it is.
    """
    named: list[str] = []
    for mark in project.members.get((collection,), ()):
        name = str(project.values.get((collection, mark, "name"), ""))
        if text.casefold() in (mark.casefold(), f"{mark} {name}".casefold()):
            return mark
        named += [mark] if name and name.casefold() == text.casefold() else []
    return named[0] if len(named) == 1 else text


def _mean(text: str, field: Field, project: Project, unit: str) -> str:
    """A text with the unit that was asked for, as the word of a choice, or as the mark of the member it names."""
    kind = field.of or field.kind
    if kind == "quantity":
        plain = text.rstrip(".") if text[-2:-1].isalpha() else text
        return f"{plain} {unit}" if unit and is_number(plain) else plain
    if kind in ("number", "integer", "percent"):
        return read_count(text, field)
    if kind == "yes_no":
        return _YES_NO.get(text.casefold().rstrip(". "), text)
    if kind == "time":
        return read_clock(text)
    if kind == "date":
        return read_day(text, project.system)
    if kind == "reference":
        return find_mark(project, field.to, text)
    if kind == "choice":
        return next((value for value in field.values if words(value).casefold() == text.casefold()), text)
    return text


def _tell_unit(field: Field) -> str:
    """The unit behind a bare number, in words."""
    told = _UNIT_NAMES.get(field.unit_ip, "")
    return f", in {told}" if told and field.kind != "date" else ""
