"""The night in which the clocks of a site change: an hour that does not exist, or exists twice."""

from datetime import date, datetime, time, timedelta

from specgen.reading.time_zones import find_zone

_FOLDED = "this time is told twice by the clock: the clocks went back in this night"


class SiteClock:
    """The clock of a site by the name of its time zone; without one it changes in no night."""

    def __init__(self, zone: str | None) -> None:
        self._zone = find_zone(zone) if zone else None
        self._changes: dict[date, bool] = {}

    def tell_missing(self, day: date, at: time) -> tuple[str, str] | None:
        """What is wrong with a time that the clock skips, and what would be right; None where it tells it."""
        if not self.is_changing(day):
            return None
        here = datetime.combine(day, at, self._zone)
        shown = datetime.fromtimestamp(here.timestamp(), self._zone)
        if shown.replace(tzinfo=None) == datetime.combine(day, at):
            return None
        message = f"there is no {at:%H:%M} on {day}: the clocks went forward in this night"
        return message, f"write the time that the clock showed, such as {shown:%H:%M}"

    def tell_twice(self, day: date, at: time) -> str:
        """What is told of a time that the clock tells twice; empty for any other."""
        if not self.is_changing(day) or self.tell_missing(day, at):
            return ""
        first, second = (datetime.combine(day, at, self._zone).replace(fold=fold) for fold in (0, 1))
        return _FOLDED if first.utcoffset() != second.utcoffset() else ""

    def is_changing(self, day: date) -> bool:
        """Whether the clocks change between the beginning and the end of a day."""
        if self._zone is None:
            return False
        if day not in self._changes:
            begins = datetime.combine(day, time(), self._zone)
            ends = datetime.combine(day + timedelta(days=1), time(), self._zone)
            self._changes[day] = begins.utcoffset() != ends.utcoffset()
        return self._changes[day]
