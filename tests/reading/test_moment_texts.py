"""A moment that is not written as ISO 8601 is refused with the moment that it can mean."""

import pytest

from specgen.reading.conversion import InvalidValue
from specgen.reading.moment_texts import read_moment


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        # Month or day may stand first, and the end of a day is the beginning of the next: counted on a calendar.
        ("6/7/2026 24:00", "write 2026-06-08T00:00 or 2026-07-07T00:00"),
        ("13/7/2026 24:00", "write 2026-07-14T00:00"),
        ("6/7/2026 3 pm", "write 2026-06-07T15:00 or 2026-07-06T15:00"),
        ("soon", "write year-month-day and hours, such as 2026-07-02T15:00"),
    ],
)
def test_a_moment_in_other_words_is_told_as_what_it_can_mean(text: str, meant: str) -> None:
    with pytest.raises(InvalidValue) as refused:
        read_moment(text)
    assert refused.value.hint == meant
