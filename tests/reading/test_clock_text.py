"""A time of day as people write it: common practice, no source; noon and midnight as 12 pm and 12 am, from memory."""

import datetime

import pytest

from specgen.reading.clock_text import read_clock, read_day_share


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("7:10", "07:10"),
        ("7:10 am", "07:10"),
        ("7:10 PM", "19:10"),
        ("7.10 p.m.", "19:10"),
        ("7 am", "07:00"),
        ("12:05 am", "00:05"),
        ("12 pm", "12:00"),
        ("noon", "12:00"),
        ("midnight", "00:00"),
        ("0710", "07:10"),
        ("1425 h", "14:25"),
        ("07:10:00", "07:10"),
    ],
)
def test_a_time_is_read_as_it_is_written_on_site(text: str, wanted: str) -> None:
    assert read_clock(text) == wanted


@pytest.mark.parametrize("text", ["7", "13:10 pm", "0 am", "after lunch", "2560", ""])
def test_what_is_no_plain_time_is_left_as_it_is(text: str) -> None:
    assert read_clock(text) == text


def test_a_share_of_a_day_is_a_time_to_the_minute() -> None:
    # 430 and 1,439 of the 1,440 minutes of a day.
    assert read_day_share(430 / 1440) == datetime.time(7, 10)
    assert read_day_share(1439 / 1440) == datetime.time(23, 59)
    assert (read_day_share(1.5), read_day_share(-0.1), read_day_share(0.99999)) == (None, None, None)
