"""Each value of each entry stands once on the forms, or in the list of what these have no place for."""

import re
from datetime import date, timedelta
from fractions import Fraction
from random import Random
from typing import Any

import pytest

from specgen.formats import text
from specgen.reading.schema import project_schema
from tests.documents.records.entries import context_with, documents_of, make_entries, q

UNITS = {"temperature": "F", "speed": "mph", "viscosity_time": "s", "volume": "fl oz", "pressure": "psi"}
STEPS = ("primer", "gloss", "setup", "boards", "smoothing_1")
# What tells where and when stands on each sheet of an entry, and is no value of one of them alone.
SHARED = {"date", "elevation", "step", "area", "coat", "crew", "panels", "masked_panels", "started_at", "ended_at"}


class Numbers:
    """Numbers that stand nowhere else in the documents."""

    def __init__(self) -> None:
        self.given = 7_000_000

    def next(self) -> int:
        self.given += 1
        return self.given


def make_value(field: Any, numbers: Numbers) -> tuple[Any, str] | None:
    """A value for a field that no other entry has, with the digits by which it is found; None for other kinds."""
    number = numbers.next()
    if field.kind == "text":
        return f"T{number}", f"T{number}"
    if field.kind in ("percent", "number"):
        return Fraction(number), str(number)
    if field.kind == "quantity" and field.dimension in UNITS:
        return q(str(number), UNITS[field.dimension]), str(number)
    return None


def entry_at(random: Random, numbers: Numbers, collection: str) -> tuple[dict[str, Any], list[str]]:
    """An entry with some of its fields, and the digits of their values."""
    values: dict[str, Any] = {}
    found = []
    for (_, last), field in ((path, f) for path, f in project_schema().fields.items() if path[0] == collection):
        if last in SHARED or random.random() < 0.6:
            continue
        made = make_value(field, numbers)
        if made is not None:
            values[last], sign = made
            found.append(sign)
    for name, choices in (("elevation", ("E1", "E2", None)), ("step", STEPS), ("area", ("left", "right", None))):
        chosen = random.choice(choices)
        values |= {name: chosen} if chosen else {}
    if collection == "log":
        values |= {"coat": random.choice((1, 2)), "panels": (f"P{random.randint(1, 30)}",)}
    return values | {"date": date(2027, 6, 1) + timedelta(days=random.randint(0, 5))}, found


@pytest.mark.parametrize("seed", range(12))
def test_each_value_stands_in_the_documents_once(seed: int) -> None:
    random, numbers = Random(seed), Numbers()
    made = [(name, *entry_at(random, numbers, name)) for name in random.choices(("log", "release"), (9, 1), k=60)]
    entries = make_entries(*((name, values) for name, values, _ in made))
    documents = documents_of(context_with(entries))
    words = "\n".join(text.write_text(one) for name, one in documents.items() if name.startswith("D12"))
    counted: dict[str, int] = {}
    for sign in re.findall(r"T?700\d{4}", words):
        counted[sign] = counted.get(sign, 0) + 1
    wanted = [sign for *_, signs in made for sign in signs]
    assert len(wanted) > 200
    assert counted == dict.fromkeys(wanted, 1)


def test_a_yes_a_no_and_a_choice_are_on_the_forms_too() -> None:
    fields = {p[1]: f for p, f in project_schema().fields.items() if p[0] == "log" and f.kind == "yes_no"}
    for value, sign in ((True, "(x)"), (False, "(no)")):
        entry = {"date": date(2027, 6, 1), "step": "gloss", "elevation": "E1"} | dict.fromkeys(fields, value)
        documents = documents_of(context_with(make_entries(("log", entry))))
        words = text.write_text(documents["D12-E1"])
        # Beside the boxes of step and elevation, which are ticked on their forms: two of each on A, B, and C.
        told = words.count(sign) - (6 if value else 0)
        boxed = 2 if not value else 0  # boxed batches have a box for the no; strained is told by a plain one
        assert told == len(fields) - boxed
