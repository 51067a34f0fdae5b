"""A stretch of time where a bare number stands: what is advised is the same time, and no unit is ever dropped."""

import re
from datetime import timedelta
from fractions import Fraction

import pytest

from specgen.model.field import Field, dotted_path
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.schema import project_schema

COUNTED = [row for row in project_schema().fields.values() if row.kind in ("number", "integer") and row.unit_ip]
CLOCK = {"min": timedelta(minutes=1), "h": timedelta(hours=1), "d": timedelta(days=1)}
WRITTEN = [
    ("30 min", timedelta(minutes=30)),
    ("60 min.", timedelta(hours=1)),
    ("90 minutes max", timedelta(minutes=90)),
    ("4 hrs", timedelta(hours=4)),
    ("1 hr 30 min", timedelta(minutes=90)),
    ("36 hours", timedelta(hours=36)),
    ("3 d", timedelta(days=3)),
    ("about 2 weeks", timedelta(weeks=2)),
    ("two weeks", timedelta(weeks=2)),
    ("half a day", timedelta(hours=12)),
]
ADVICE = re.compile(r"write ([\d./ ]+?), the bare number of \w+")


def advise(field: Field, text: str) -> str:
    with pytest.raises(InvalidValue) as raised:
        convert(field, text)
    return raised.value.hint


def test_every_field_that_counts_something_counts_time() -> None:
    assert {row.unit_ip for row in COUNTED} == {"min", "h", "d", "month", "year"}
    assert len(COUNTED) > 30


@pytest.mark.parametrize("field", COUNTED, ids=lambda field: dotted_path(field.path))
@pytest.mark.parametrize(("text", "meant"), WRITTEN)
def test_the_advice_is_the_same_time(field: Field, text: str, meant: timedelta) -> None:
    hint = advise(field, text)
    found = ADVICE.match(hint)
    if field.unit_ip not in CLOCK:
        assert found is None
        return
    exact = Fraction(meant // timedelta(minutes=1), CLOCK[field.unit_ip] // timedelta(minutes=1))
    whole = field.kind == "number" or exact.denominator == 1
    fits = Fraction(field.least) <= exact <= Fraction(field.most)
    assert (found is not None) == (whole and fits)
    assert found is None or Fraction(found[1]) == exact == convert(field, found[1])


@pytest.mark.parametrize(
    ("path", "text", "hint"),
    [
        ("gloss.touch_dry_hours", "60 min", "write 1, "),
        ("gloss.touch_dry_hours", "30-60 min", "write 0.5 or 1, "),
        ("walls.*.base_coat.first_pass_dry_hours", "30 min", "write 0.5, "),
        ("walls.*.base_coat.first_pass_dry_hours", "20 min", "write 1/3, "),
        ("mockup.duration_days", "2 weeks", "write 14, "),
        ("mockup.duration_days", "1-2 weeks", "write 7 or 14, "),
        ("schedule.weather_days", "1 week", "write 7, "),
        ("gloss.dry_hours", "7 days", "write 168, "),
        ("contract.warranty_years", "60 months", "write 5, "),
        ("primer.shelf_life_months", "1 year", "write 12, "),
    ],
)
def test_a_unit_is_converted(path: str, text: str, hint: str) -> None:
    assert advise(project_schema().fields[tuple(path.split("."))], text).startswith(hint)


@pytest.mark.parametrize(
    ("path", "text", "counted"),
    [
        ("mockup.duration_days", "2 months", "days"),
        ("mockup.duration_days", "10 working days", "days"),
        ("mockup.duration_days", "3 shifts", "days"),
        ("primer.shelf_life_months", "52 weeks", "months"),
        ("contract.report_max_age_years", "400 days", "years"),
        ("gloss.dry_hours", "24 psi", "hours"),
    ],
)
def test_what_has_no_fixed_size_is_asked_back(path: str, text: str, counted: str) -> None:
    hint = advise(project_schema().fields[tuple(path.split("."))], text)
    assert hint.startswith(f"write the bare number of {counted}")
    assert not re.search(r"\d", hint)


@pytest.mark.parametrize("text", ["2 weeks", "2 years", "2 mils", "2 h"])
def test_no_number_is_offered_where_its_unit_measures_something_else(text: str) -> None:
    assert not re.search(r"\d", advise(project_schema().fields["gloss", "coats"], text))
