"""The rows of a filled form to entries, each with what the head of its form holds for all of them.

The names of fields are those that `documents/views/_record_blanks.py` gives them: collection, field, row, and the
choice or the place in a list. The letter of a row is that of its form.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import chain
from typing import Any, NamedTuple

from specgen.model.field import Field
from specgen.model.record import COLLECTIONS, EntryPlace
from specgen.reading.conversion import InvalidValue
from specgen.reading.grid import Cell
from specgen.reading.records.columns import ACCEPTED
from specgen.reading.records.form_file import FormField
from specgen.reading.records.gathering import Gathering
from specgen.reading.records.row_names import SHEET, SIGNERS, read_answer_row, read_signature

_HEAD, _NUMBERED, _OF_STEP = re.compile("[a-z]"), re.compile(r"[a-z][1-9]\d*"), re.compile(r"[a-z]-(\w+?)(?:-\d+)?")
_COATS = "a"  # the form on which a row is a coat, counted by its number
_OF_MOCKUP = "form.mockup."
# Of the mockup pails and weather are entries of the record, at the area of this name; its coats are on form D10.
_READ_OF_MOCKUP, MOCKUP = {"b", "c"}, "mockup"
_OWN = "own-"  # a line of the acceptance form that the project has added
_JOINED = "; "  # between several readings of one line


class _Spot(NamedTuple):
    """A filled field: what it is of, its row, and the choice or place in a list behind the row."""

    collection: str
    field: Field
    row: str
    part: str
    text: str
    ticked: bool


@dataclass
class _Row:
    """What the fields of one row hold, by name; of a list by place."""

    values: dict[str, Any] = field(default_factory=dict)
    listed: dict[str, dict[str, Any]] = field(default_factory=dict)


class FormReader:
    """Reads the filled fields of one form."""

    def __init__(self, gathering: Gathering, file: str) -> None:
        self.gathering, self.file = gathering, file
        self._reader = gathering.reader
        self._system = gathering.project.system
        self._rows: dict[tuple[str, str], _Row] = {}
        self._mockup: set[str] = set()

    def read(self, fields: Iterable[FormField]) -> bool:
        """Add the entries of a form; whether any of its fields is one of a record."""
        every = list(fields)
        filled = [one for one in every if one.text]
        mockup = {one.name.split(".")[2] for one in filled if one.name.startswith(_OF_MOCKUP)}
        for one in filled:
            spot = self._find_spot(one)
            if spot is not None and spot.row[:1] not in mockup - _READ_OF_MOCKUP:
                self._take(spot)
        self._mockup = mockup & _READ_OF_MOCKUP
        for letter in sorted(mockup - _READ_OF_MOCKUP):
            message = "this sheet is of the mockup, which is no part of the record of the work"
            self.gathering.remark(message, "its readings stand on the acceptance form", self._place(letter))
        self._add_rows()
        return any(one.name.split(".")[0] in (*COLLECTIONS, ACCEPTED) for one in every)

    def _find_spot(self, one: FormField) -> _Spot | None:
        """What a field of the form is of; None for one that no record holds."""
        section, name, row, *part = (*one.name.split("."), "", "")
        fields = self.gathering.project.schema.fields
        if section == ACCEPTED and (section, name) in fields:
            return _Spot(section, fields[section, name], "", row, one.text, one.ticked)
        found = fields.get((section, name)) if section in COLLECTIONS else None
        return None if found is None else _Spot(section, found, row, ".".join(filter(None, part)), one.text, one.ticked)

    def _take(self, spot: _Spot) -> None:
        """Put the value of a field into its row; a fault is told at its name."""
        name, place = spot.field.path[-1], self._place(spot.row or f"{ACCEPTED}.{spot.field.path[-1]}")
        row = self._rows.setdefault((spot.collection, spot.row), _Row())
        if spot.collection == "result" and name == "reading":
            row.listed.setdefault(name, {})[spot.part] = spot.text
            return
        if name == "masked_panels":
            row.listed.setdefault(name, {})[spot.part] = spot.part
            return
        try:
            text = spot.part if spot.ticked else spot.text
            read = self._reader.read(spot.field, Cell(text), self._unit(spot.field))
        except InvalidValue as invalid:
            self.gathering.fault(invalid.message, invalid.hint, place, name)
            return
        if read is None:
            return
        if spot.collection == ACCEPTED:
            self.gathering.accept(spot.field.path, read.value, place)
        elif spot.part and not spot.ticked:
            row.listed.setdefault(name, {})[spot.part] = read.value
        elif row.values.setdefault(name, read.value) != read.value:
            self.gathering.fault("two boxes are ticked", "tick one of them", place, name)

    def _add_rows(self) -> None:
        for (collection, name), row in self._rows.items():
            if collection == "result":
                self._add_result(name, row)
            elif collection == "disposition":
                self._put(collection, read_answer_row(name) | row.values, name)
            elif collection == "inspection":
                self._add_inspections(name, row)
            elif _NUMBERED.fullmatch(name):
                self._add_pass(collection, name, row) if name[0] == _COATS else self._add(collection, name, row.values)
            elif _OF_STEP.fullmatch(name):
                self._add_of_step(collection, name, row)
            elif _HEAD.fullmatch(name) and not self._has_rows(collection, name):
                message = "the head of this form is filled in, and none of its rows"
                self.gathering.fault(message, "fill in a row, or clear the head", self._place(name))

    def _has_rows(self, collection: str, letter: str) -> bool:
        return any(one == collection and row != letter and row[:1] == letter for one, row in self._rows)

    def _add(self, collection: str, name: str, own: dict[str, Any], part: str = "") -> None:
        """Add the entry of a row with what the head of its form says."""
        head = self._rows.get((collection, name[:1]), _Row())
        panels = head.listed.get("panels", {})
        ticked = [panels[place] for place in head.listed.get("masked_panels", {}) if place in panels]
        lists = {"panels": _join(panels.values()), "masked_panels": _join(ticked)}
        values = head.values | {one: marks for one, marks in lists.items() if marks} | own
        if name[:1] in self._mockup:
            values.pop("elevation", None)
            values["area"] = ", ".join(filter(None, (MOCKUP, values.get("area"))))
        self._put(collection, values, f"{name}.{part}" if part else name)

    def _add_pass(self, collection: str, name: str, row: _Row) -> None:
        """Add the pass of a coat; where the wet film of several panels was read, one entry for each panel."""
        own = {"coat": int(name[1:])} | row.values
        films = row.listed.get("wet_film", {})
        panels = self._rows.get((collection, name[:1]), _Row()).listed.get("panels", {})
        for place, film in films.items():
            panel = {"panels": panels[place]} if place in panels else {}
            self._add(collection, name, own | panel | {"wet_film": film}, place)
        rest = _join(marks for place, marks in panels.items() if place not in films)
        if not films or rest:
            self._add(collection, name, own | ({"panels": rest} if rest else {}))

    def _add_of_step(self, collection: str, name: str, row: _Row) -> None:
        found = _OF_STEP.fullmatch(name)
        own = self._read_own(collection, "step", found[1] if found else "", name)
        self._add(collection, name, own | row.values)

    def _add_inspections(self, name: str, row: _Row) -> None:
        """Add a hold point for each elevation for which its release was signed: who signs is told once, by the role."""
        signed = row.listed.get("done_on", {})
        step = self._read_own("inspection", "step", name, name) if signed else {}
        sheet = self._rows.get(("inspection", SHEET), _Row()).values
        by = self._rows.get(("inspection", SIGNERS), _Row()).listed.get("by", {})
        for part, day in signed.items():
            face, role = read_signature(part)
            told = self._read_own("inspection", "elevation", face, name) if face else {}
            signer = {"by": by[role]} if role in by else {}
            self._put("inspection", step | sheet | told | {"done_on": day, "outcome": "accepted"} | signer, name)

    def _add_result(self, name: str, row: _Row) -> None:
        """Add a line of the acceptance form; its readings stand in one text, in their order."""
        readings = row.listed.get("reading", {})
        told = {"reading": _JOINED.join(readings.values())} if readings else {}
        own = name.removeprefix(_OWN).partition("-")[0]
        which = "own" if name.startswith(_OWN) else "criterion"
        criterion = self._read_own("result", which, own, name)
        self._put("result", criterion | told | row.values, name)

    def _read_own(self, collection: str, name: str, text: str, row: str) -> dict[str, Any]:
        """The value that the name of a row tells."""
        one = self._reader.find_field(collection, name)
        try:
            read = self._reader.read(one, Cell(text))
        except InvalidValue as invalid:
            self.gathering.fault(invalid.message, invalid.hint, self._place(row), name)
            return {}
        return {} if read is None else {name: read.value}

    def _put(self, collection: str, values: dict[str, Any], row: str) -> None:
        self.gathering.add(collection, values, self._place(row), self.gathering.codes_of(values))

    def _unit(self, one: Field) -> str:
        return (one.unit_si if self._system == "si" else one.unit_ip) if one.kind == "quantity" else ""

    def _place(self, row: str) -> EntryPlace:
        return EntryPlace(self.file, row=row)


def _join(lists: Iterable[tuple[Any, ...]]) -> tuple[Any, ...]:
    return tuple(chain.from_iterable(lists))
