"""What an entry of the log is. The rows are those of the site forms; common practice, no source."""

from datetime import date, time
from typing import Any

import pytest

from specgen.model.record import Entry, EntryPlace
from specgen.recording.entry_kinds import is_pass, is_reading, is_work


@pytest.mark.parametrize(
    ("values", "kinds"),
    [
        ({"started_at": time(7), "air": 60, "humidity": 50}, "reading"),
        ({"started_at": time(7), "forecast_rain": True}, ""),
        ({"pail": "3", "water": 4, "cup": "CUP-1", "strained": True}, ""),
        ({"step": "boards"}, "work"),
        ({"step": "boards", "started_at": time(7)}, "work"),
        ({"started_at": time(7), "ended_at": time(9), "coat": 1}, "work pass"),
        # All in one row.
        ({"started_at": time(7), "ended_at": time(9), "air": 60, "water": 4}, "reading work pass"),
        # A coat alone makes neither a reading nor a pail work.
        ({"coat": 1, "started_at": time(7), "air": 60}, "reading"),
        ({"coat": 2, "started_at": time(7), "pail": "3"}, ""),
        ({"coat": 2, "started_at": time(7)}, "work"),
    ],
)
def test_what_an_entry_is(values: dict[str, Any], kinds: str) -> None:
    entry = Entry("log", 0, {"date": date(2027, 6, 14)} | values, EntryPlace("log.csv", 2))
    named = (("reading", is_reading), ("work", is_work), ("pass", is_pass))
    assert " ".join(name for name, test in named if test(entry)) == kinds


def test_a_pass_without_a_day_is_none() -> None:
    entry = Entry("log", 0, {"started_at": time(7), "ended_at": time(9)}, EntryPlace("log.csv", 2))
    assert is_work(entry) and not is_pass(entry)
