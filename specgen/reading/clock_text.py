"""A time of day as people write it, `7:10 am`, `7.10 p.m.`, `0710`, to hours and minutes of a day of 24 hours."""

import datetime
import re

_TIME = re.compile(r"(\d{1,2})(?:[:.](\d{2})(?:[:.]\d{2})?)?\s*(am|pm|a|p)?")
_FOUR = re.compile(r"([01]\d|2[0-3])([0-5]\d)\s*(?:h|hrs?|hours)?")
_NAMED = {"noon": "12 pm", "midnight": "12 am"}
_HALF = 12  # hours


def read_clock(text: str) -> str:
    """The time as `07:10`; a text that is none, or none that is plain, as it is. Noon is 12 pm, midnight 12 am."""
    plain = " ".join(text.lower().replace("a.m.", "am").replace("p.m.", "pm").split())
    four = _FOUR.fullmatch(plain)
    if four:
        return f"{four[1]}:{four[2]}"
    found = _TIME.fullmatch(_NAMED.get(plain, plain))
    if not found or (found[2] is None and found[3] is None):
        return text
    hours, half = int(found[1]), found[3]
    if half and not 1 <= hours <= _HALF:
        return text
    hours = hours % _HALF + (_HALF if half.startswith("p") else 0) if half else hours
    return f"{hours:02d}:{found[2] or '00'}"


def read_day_share(share: float) -> datetime.time | None:
    """The time of day that a spreadsheet holds as a share of a day, to the nearest minute; None for another number."""
    minutes = round(share * 24 * 60)
    return datetime.time(*divmod(minutes, 60)) if 0 <= share < 1 and minutes < 24 * 60 else None
