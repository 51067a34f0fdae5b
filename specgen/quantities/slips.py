"""Ways of writing a number that mean one thing to people and are no number: what is told of each, and what is meant.

Nothing is taken for a number here; it is said what to write.
"""

import re
from collections.abc import Callable, Iterator
from typing import NamedTuple

from specgen.quantities.number import quote

_NUMBER = r"\d+(?:\.\d+)?"
_BEFORE = re.compile(
    r"(?:<=?|>=?|≤|≥|~|≈|=|ca\.?|circa|about|around|approx\.?|approximately|max\.?|min\.?|maximum|minimum|up to"
    r"|at least|at most|under|over|below|above|not more than|not less than|less than|more than)\s*(?=[\d.])(.+)",
    re.IGNORECASE,
)
_BEHIND = re.compile(
    r"(.*[\w%°'\"])[\s,]+(?:max\.?|min\.?|maximum|minimum|approx\.?|approximately|or less|or more|or so|or under"
    r"|or over)",
    re.IGNORECASE,
)
_SPREAD = re.compile(r"(.+?)\s*(?:\+\s*/?\s*-|±|\bplus or minus\b)\s*(.+)", re.IGNORECASE)
_RANGE = re.compile(
    rf"({_NUMBER})\s*([^\d\s-][^\d]*?)?\s*(?:-|\.\.+|\bto\b|\bthrough\b)\s*({_NUMBER})\s*([^\d\s/,.].*)?"
)
_SIZES = re.compile(
    r"([\d./ -]*\d\s*(?:[a-z]+|['\"])?)\s*(?<!\d)(?:x|×|by)\s*([\d./ -]*\d\s*(?:[a-z]+|['\"])?)", re.IGNORECASE
)
_NO_INCH_SIGN = re.compile(r"(\d+)\s*(?:'|ft\.?|feet)\s*-?\s*(\d+(?:\.\d+)?|\d+[ -]\d+/\d+|\d+/\d+)")
# A hyphen right behind the sign of feet joins inches to them; without any sign it does so too, or stands for a range.
_FEET_SIGN = re.compile(r"(\d+)'-?(\d+(?:\.\d+)?|\d+[ -]\d+/\d+|\d+/\d+)")
_NO_SIGNS = re.compile(r"(\d+)-(\d{1,2}(?:[ -]\d+/\d+)?)")
_UNIT = re.compile(r"[\d./ ]*\d\s*(.*)")
_MOST = 60  # characters; a longer text is no figure with a slip of the pen
_IN_WORDS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_DIGITS = {word: str(number) for number, word in enumerate(_IN_WORDS, 1)} | {"half": "1/2", "quarter": "1/4"}


class Slip(NamedTuple):
    """What is wrong with a text, and the texts that may be meant by it."""

    message: str
    meant: tuple[str, ...]

    @property
    def hint(self) -> str:
        """What to write."""
        return f"write {' or '.join(self.meant)}"


def find_slip(text: str, may_stand: Callable[[str], bool]) -> Slip | None:
    """What a plain text may mean that is not a number, or no quantity, all of which may stand; None where none may."""
    slips = _slips(text) if 0 < len(text) <= _MOST else iter(())
    return next((slip for slip in slips if all(map(may_stand, slip.meant))), None)


def _slips(text: str) -> Iterator[Slip]:
    if found := _BEFORE.fullmatch(text) or _BEHIND.fullmatch(text):
        yield Slip(f"more than a number and its unit stands in {quote(text)}", (found[1],))
    if found := _SPREAD.fullmatch(text):
        unit = "" if (own := _unit_of(found[1])) else _unit_of(found[2])
        alone = f"{found[1]} {unit}".strip() if not own else found[1]
        yield Slip(f"{quote(text)} is a figure with its tolerance; the figure alone stands here", (alone,))
    if found := _FEET_SIGN.fullmatch(text):
        yield Slip(f"the inches of {quote(text)} have no sign", (f"{found[1]}'-{found[2]}\"",))
    if found := _RANGE.fullmatch(text):
        least, first_unit, most, unit = found.groups("")
        ends = _with_unit(least, first_unit or unit), _with_unit(most, unit or first_unit)
        yield Slip(f"{quote(text)} is a range; one figure stands here", ends)
    if found := _NO_INCH_SIGN.fullmatch(text):
        yield Slip(f"the inches of {quote(text)} have no sign", (f"{found[1]}'-{found[2]}\"",))
    if found := _NO_SIGNS.fullmatch(text):
        yield _tell_no_signs(text, found[1], found[2])
    if found := _SIZES.fullmatch(text):
        second = found[2].strip()
        first = _with_unit(found[1].strip(), "" if _unit_of(found[1]) else _unit_of(second))
        yield Slip(
            f"two sizes stand in {quote(text)}; each has a line of its own", tuple(dict.fromkeys((first, second)))
        )
    words = re.split(r"[\s-]+", text.lower())
    words = words[1:] if words[0] in ("a", "an") and len(words) > 1 else words
    if words[0] in _DIGITS:
        behind = [word for word in words[1:] if word not in ("a", "an", "of")]
        yield Slip(
            f"the number of {quote(text)} is written in words", (_with_unit(_DIGITS[words[0]], " ".join(behind)),)
        )


def _tell_no_signs(text: str, feet: str, inches: str) -> Slip:
    """Two numbers with a hyphen between them: feet and inches, or a range where the second is the greater one."""
    both = f"{feet}'-{inches}\""
    if not inches.isdigit() or int(feet) >= int(inches):
        return Slip(f"the feet and inches of {quote(text)} have no signs", (both,))
    return Slip(f"{quote(text)} may be feet and inches, or a range", (both, f"{feet} ft", f"{inches} ft"))


def _unit_of(text: str) -> str:
    found = _UNIT.fullmatch(text.strip())
    return found[1].strip() if found else ""


def _with_unit(number: str, unit: str) -> str:
    unit = unit.strip()
    return f"{number} {unit}" if unit and unit[0].isalpha() else f"{number}{unit}"
