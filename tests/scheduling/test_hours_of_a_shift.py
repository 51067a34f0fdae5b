"""The usable hours of a shift as stretches after the midnight before it, also over the next midnight."""

from datetime import date, time, timedelta

import pytest

from specgen.model.schedule import Span, UsableMonth
from specgen.scheduling.spray_hours import list_stretches


# Worked by hand: a shift from noon to the next noon has its morning on the next day, 24 h later.
@pytest.mark.parametrize(
    ("opens", "span", "stretch"),
    [
        ("06:00", ("08:40", "12:00"), (8 + 40 / 60, 12)),
        ("12:00", ("08:40", "12:00"), (32 + 40 / 60, 36)),
        ("12:00", ("13:00", "15:00"), (13, 15)),
        ("12:00", ("22:00", "02:00"), (22, 26)),
        ("22:00", ("02:00", "03:00"), (26, 27)),
        ("22:00", ("23:00", "06:00"), (23, 30)),
    ],
)
def test_hours_behind_the_next_midnight_lie_behind_those_before_it(
    opens: str, span: tuple[str, str], stretch: tuple[float, float]
) -> None:
    start, end = map(time.fromisoformat, span)
    month = UsableMonth(date(2027, 7, 1), (Span(start, end),), 1.0)
    (found,) = list_stretches(month, time.fromisoformat(opens))
    assert tuple(edge / timedelta(hours=1) for edge in found) == pytest.approx(stretch)
