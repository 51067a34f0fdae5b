"""The one grammar of numbers: whatever reads a number, of a field, a key, a condition or a row, reads it here.

A decimal number (`40`, `1.5`, `.75`, `8e-6`, `1,200,000`), or a fraction of the trade (`3/4`, `1-1/2`, `1 1/2`, `1½`).
Digits and exponents are bounded, so that no text makes a number that takes hours to compute with; what can be read in
two ways is asked back.
"""

import re
from fractions import Fraction
from typing import NamedTuple

MOST_DIGITS, MOST_EXPONENT_DIGITS, MOST_SHOWN = 15, 2, 40
# For an editor, which knows no more than the look of a number: that of a decimal one, and that of a fraction.
DECIMAL = rf"[+-]?(\d{{1,{MOST_DIGITS}}}(\.\d{{0,{MOST_DIGITS}}})?|\.\d{{1,{MOST_DIGITS}}})([eE][+-]?\d{{1,2}})?"
PARTS = rf"[+-]?(\d{{1,{MOST_DIGITS}}}[ -])?\d{{1,{MOST_DIGITS}}}/\d{{1,{MOST_DIGITS}}}"
# Signs of typesetting that stand for plain ones: primes and quotes, fraction slashes, dashes, spaces.
_MARKS = str.maketrans(
    dict.fromkeys("’‘′ʹ", "'")
    | dict.fromkeys("“”″〃", '"')
    | dict.fromkeys("⁄∕", "/")
    | dict.fromkeys("−‐‑–—", "-")
    | dict.fromkeys("\xa0\u2009\u202f\u2007", " ")
)
_VULGAR = {
    "½": (1, 2),
    "¼": (1, 4),
    "¾": (3, 4),
    "⅓": (1, 3),
    "⅔": (2, 3),
    "⅛": (1, 8),
    "⅜": (3, 8),
    "⅝": (5, 8),
    "⅞": (7, 8),
    "⅙": (1, 6),
    "⅚": (5, 6),
    "⅕": (1, 5),
    "⅖": (2, 5),
    "⅗": (3, 5),
    "⅘": (4, 5),
    "⅒": (1, 10),
}
ANY_VULGAR = f"[{''.join(_VULGAR)}]"
# All digits are taken in, so that none is left over for a unit; how many there may be is asked afterwards.
_NUMBER = re.compile(
    rf"(?P<sign>[+-]?)\ *(?:"
    rf"(?:(?P<whole>\d+)(?:[ -]|\ *(?={ANY_VULGAR})))?(?:(?P<over>\d+)/(?P<under>\d+)|(?P<vulgar>{ANY_VULGAR}))"
    rf"|(?P<digits>\d+(?:,\d+)*)(?:\.(?P<part>\d*))?(?P<power>[eE][+-]?\d+)?|\.(?P<only>\d+)(?P<small>[eE][+-]?\d+)?)",
    re.ASCII,
)
_GROUPED = re.compile(r"[1-9]\d{0,2}(?:,\d{3})+", re.ASCII)


class QuantityError(ValueError):
    """The text is not a number, or no quantity of the requested dimension; `hint` says what would be right."""

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


class ImproperFraction(QuantityError):
    """A fraction of 1 or more, which may be a slip; `readings` are the numbers it may stand for."""

    def __init__(self, text: str, readings: list[Fraction], behind: str) -> None:
        written = " or ".join(f"{tell_number(number)}{behind}" for number in readings)
        super().__init__(f"the fraction of {quote(text)} is 1 or more", f"write {written}")
        self.readings = readings


class NumberRead(NamedTuple):
    """A number at the beginning of a text, and what stands behind it."""

    number: Fraction
    behind: str
    decimal_too: str = ""  # the other number where a comma may stand for a point


def plain_text(text: str) -> str:
    """A text with plain signs in place of those of typesetting, without outer blanks."""
    return (text if text.isascii() else text.translate(_MARKS)).strip()


def quote(text: str) -> str:
    """A text as a message tells it: in quotes, and not longer than a line."""
    return repr(text if len(text) <= MOST_SHOWN else f"{text[:MOST_SHOWN]}...").replace("\\'", "'")


def read_number(text: str) -> NumberRead | None:
    """The number a plain text begins with, None where it begins with none; raises QuantityError for a doubtful one."""
    match = _NUMBER.match(text)
    if match is None:
        return None
    behind, sign = text[match.end() :], -1 if match["sign"] == "-" else 1
    for digits in match.group("whole", "over", "under", "digits", "part", "only"):
        if len((digits or "").replace(",", "")) > MOST_DIGITS:
            raise QuantityError(f"{quote(text)} has more than {MOST_DIGITS} digits", "round it")
    if match["under"] or match["vulgar"]:
        _refuse_more_behind(text, behind)
        return NumberRead(sign * _fraction(text, match, behind), behind)
    number, decimal_too = _decimal(text, match, behind)
    return NumberRead(sign * number, behind, f"{match['sign']}{decimal_too}" if decimal_too else "")


def parse_number(text: str) -> Fraction:
    """The number that is the whole of a text, as `3`, `0.75`, `3/4`, `1-1/2` or `1½`; raises QuantityError."""
    read = read_number(plain_text(text))
    if read is None or read.behind:
        raise QuantityError(f"{quote(text)} is not a number", "write a bare number, without a unit")
    if read.decimal_too:
        raise ask_comma(text, read)
    return read.number


def ask_comma(text: str, read: NumberRead) -> QuantityError:
    """Asks back where a comma may part thousands or stand for a point."""
    readings = f"{tell_number(read.number)}{read.behind} or {read.decimal_too}{read.behind}"
    return QuantityError(f"the comma of {quote(text)} can be read in two ways", f"write {readings}")


def is_number(text: str) -> bool:
    """Whether a text looks like a number alone, without a unit."""
    plain = plain_text(text)
    match = _NUMBER.match(plain)
    return match is not None and match.end() == len(plain)


def tell_number(number: Fraction) -> str:
    """The exact number so that it is read back as itself: `40`, `0.15`, `1 1/2`, `1/3`."""
    sign, number = ("-" if number < 0 else ""), abs(number)
    whole, part = divmod(number, 1)
    if not part:
        return f"{sign}{whole}"
    if 128 % part.denominator and not 10**MOST_DIGITS % part.denominator:
        decimals = f"{part * 10**MOST_DIGITS}".zfill(MOST_DIGITS).rstrip("0")
        return f"{sign}{whole}.{decimals}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def _refuse_more_behind(text: str, behind: str) -> None:
    """Raises QuantityError where a digit, a second fraction or a power of ten stands behind a fraction."""
    if re.match(r"[eE][+-]?\d", behind, re.ASCII):
        raise QuantityError(f"a power of ten follows the fraction of {quote(text)}", "write the number without `e`")
    if re.match(rf" ?(?:[\d.,]|/\d|{ANY_VULGAR})", behind, re.ASCII):
        more = "write one fraction, such as 1 1/2, after the whole number"
        raise QuantityError(f"more digits follow the fraction of {quote(text)}", more)


def _fraction(text: str, match: re.Match[str], behind: str) -> Fraction:
    """A whole number, or none, and a fraction that is less than 1."""
    over, under = _VULGAR[match["vulgar"]] if match["vulgar"] else (int(match["over"]), int(match["under"]))
    if not under:
        raise QuantityError(f"{quote(text)} divides by zero", "write a whole number of parts, such as 1/2")
    whole = int(match["whole"] or 0)
    if over >= under:
        raise ImproperFraction(text, _readings(match["whole"] or "", match["over"], under), behind)
    return whole + Fraction(over, under)


def _readings(whole: str, over: str, under: int) -> list[Fraction]:
    """What an improper fraction may stand for: a blank left out or put in, and the sum it is."""
    cuts = [(over[:at], over[at:]) for at in range(1, len(over))]
    split = [int(head) + Fraction(int(tail), under) for head, tail in cuts if 0 < int(tail) < under and tail[0] != "0"]
    joined = [Fraction(int(whole + over), under)] if whole else split[:1]
    return list(dict.fromkeys([*joined, int(whole or 0) + Fraction(int(over), under)]))


def _decimal(text: str, match: re.Match[str], behind: str) -> tuple[Fraction, str]:
    """A decimal number, and the other one where a comma may stand for a point."""
    digits, part, power = match["digits"] or "0", match["part"] or match["only"] or "", match["power"] or match["small"]
    if re.match(rf" ?(?:{ANY_VULGAR})|[.,]\d|\.\.", behind, re.ASCII):
        raise QuantityError(f"{quote(text)} is not a number", "write one number, such as 1.5 or 1 1/2")
    other = ""
    if "," in digits:
        other = digits.replace(",", ".") if digits.count(",") == 1 and match["part"] is None else ""
        if power or not _GROUPED.fullmatch(digits):
            hint = f"write {other}{power or ''}{behind}" if other else "write the number without commas"
            raise QuantityError(f"the comma of {quote(text)} does not separate thousands", hint)
    if power and len(power.lstrip("eE+-")) > MOST_EXPONENT_DIGITS:
        raise QuantityError(f"the power of ten of {quote(text)} is out of all bounds", "write the number without `e`")
    number = Fraction(f"{digits.replace(',', '')}.{part}0")
    return number * Fraction(10) ** int(power[1:]) if power else number, other
