"""Days off and public holidays of a project are refused at their line, with what is meant. Rules of our own."""

import sys
from pathlib import Path

import pytest

from specgen.model.problem import Refused
from specgen.reading.conversion import InvalidValue
from specgen.reading.working_days import read_day_off
from specgen.resolving.public_holidays import find_holidays
from tests.support import project_of


@pytest.mark.parametrize("text", ["mon", "sun", " sat ", "2028-02-29"])
def test_a_day_of_the_week_or_a_date_is_taken(text: str) -> None:
    assert read_day_off(text) == text.strip()


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("Sat", "write sat"),
        ("sunday", "write sun"),
        ("Thurs", "write thu"),
        ("s", "write mon to sun, or a date such as 2027-07-05"),
        ("weekends", "write mon to sun, or a date such as 2027-07-05"),
        ("July 5, 2027", "write 2027-07-05"),
        ("2027-02-29", "write mon to sun, or a date such as 2027-07-05"),
        ("", "write mon to sun, or a date such as 2027-07-05"),
    ],
)
def test_any_other_text_is_told_what_is_meant(text: str, meant: str) -> None:
    with pytest.raises(InvalidValue) as invalid:
        read_day_off(text)
    assert (invalid.value.message, invalid.value.hint) == (f"{text!r} is not a day off", meant)


@pytest.mark.parametrize(
    ("schedule", "said"),
    [
        (
            {"days_off": ["sat", "sunday"]},
            "project.yaml:13:3: schedule.days_off: 'sunday' is not a day off (write sun)",
        ),
        (
            {"days_off": ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]},
            "project.yaml:13:3: schedule.days_off: every day of the week is off (leave the working days out)",
        ),
        (
            {"holidays": "UX"},
            "project.yaml:13:3: schedule.holidays: 'UX' is not the code of a country with known holidays "
            "(write the letters of ISO 3166, such as US or US-CO)",
        ),
        (
            {"holidays": "US-Colorado"},
            "project.yaml:13:3: schedule.holidays: 'US-Colorado' is not the code of a part of US with known holidays "
            "(write US-CO)",
        ),
    ],
)
def test_a_calendar_without_sense_is_refused_at_its_line(
    schedule: dict[str, object], said: str, tmp_path: Path
) -> None:
    with pytest.raises(Refused) as refused:
        project_of(tmp_path, {"schedule": schedule})
    assert [str(problem) for problem in refused.value.problems] == [said]


def test_a_project_that_names_holidays_without_the_library_is_told_how_to_get_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "holidays", None)
    find_holidays.cache_clear()
    project_of(tmp_path, {"schedule": {"days_off": ["sun"]}})
    with pytest.raises(Refused) as refused:
        project_of(tmp_path, {"schedule": {"holidays": "US"}})
    assert [str(problem) for problem in refused.value.problems] == [
        "project.yaml:13:3: schedule.holidays: the holidays of US need a library (pip install 'specgen[site]')"
    ]
