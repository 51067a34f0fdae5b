"""What stays on one line: a number and its unit, a word and its mark, the parts of a section, a standard or a code.

The hyphen before a figure that is below zero is set as a minus sign.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import islice

from specgen.model.block import Emphasis, Inline, Inlines, Strong, Text, Value
from specgen.quantities.format import format_unit
from specgen.quantities.units import SPELLINGS, UNITS

NO_BREAK = "\u00a0"
# Each format writes this one in its own way, so that a code is still found by the hyphen of a keyboard.
NO_BREAK_HYPHEN = "\u2011"
MINUS = "\u2212"
# Units of documents that no field is read in.
_UNITS = ("lb", "lbf", "oz", "g", "kg", "W", "kW", "Hg", "percent", "week", "weeks", "month", "months", "year", "years")
# Words that a mark or a number follows, in any case of their first letter.
_NAMED = (
    *("section", "sections", "article", "part", "parts", "table", "figure", "clause", "chapter", "division", "form"),
    *("type", "class", "grade", "step", "page", "wall", "walls", "elevation", "elevations", "joint", "joints", "panel"),
    *("color", "sealant", "revision", "method", "zone", "category", "no.", "nos.", "package", "letter"),
    *("letters", "document", "area", "stage", "deviation", "january", "february", "march", "april", "may", "june"),
    *("july", "august", "september", "october", "november", "december"),
)
# Publishers of standards and codes, before the number of one.
_ISSUERS = ("AAMA", "ANSI", "ASCE", "ASTM", "CFR", "EN", "IBC", "IEBC", "IECC", "IRC", "ISO", "NFPA", "OSHA", "SSPC")


# The letters that units begin with: a number and one of them stay together.
_LEADING = frozenset(
    found[0]
    for word in (*SPELLINGS, *map(format_unit, UNITS), *_UNITS)
    if (found := re.match(r"[A-Za-zµ°]+", word)) is not None
)
# Each alternative is one space and what stands around it; the side that fails soonest is looked at first.
_KEPT = re.compile(
    " (?:"
    r"(?=(?:by|x|×) \d)(?<=[\w²] )"
    r"|(?=\d)(?:(?<=[\w²] by )|(?<= [x×] )|(?<=[<>=≤≥±−] ))"
    r"|(?=\d[\d/-]* in\b)(?<=\dft )|(?=\d[\d/-]* in\b)(?<=\d ft )"
    r"|(?=\d\d \d\d\b)(?<=\b\d\d )|(?=\d\d\b)(?<=\b\d\d \d\d )"
    r"|(?=CFR\b)(?<=\d )|(?== )(?<=\ufffc )"
    r"|(?=(?:ft|in|yd|m)\b)(?<=\bsq )|(?=oz\b)(?<=\bfl )|(?=Hg\b)(?<=\bin\. )"
    r"|(?<=[\d⁰¹²³⁴⁵⁶⁷⁸⁹½¼¾] )(?=([A-Za-zµ°]+)[²³⁴]?(?!\w))"
    ")"
)
# A word and a space before what may be its mark or number.
_MARKED = re.compile(r"\b([A-Za-z]+\.?) (?=[A-Z]{0,3}\d|[A-Z]{1,4}\b)")
# The hyphen of a code, a mark, a fraction or a type: `PLN-02b`, `FG-1`, `7-1/2`, `I-A`.
_JOINED = re.compile(r"(?<=[^\W_])-(?=\d)|(?<=\b[A-Z])-(?=[A-Z]\b)")
# The hyphen of a figure below zero: a unit stands behind it, and no word, mark or number before.
_NEGATIVE = re.compile(r"(?:(?<=[\s(=])|^)-(?=\.?\d[\d./-]*[ \u00a0]([A-Za-zµ°]+))")
_MARKING = frozenset((*_ISSUERS, *_NAMED, *(word.capitalize() for word in _NAMED)))


def sign_figure(text: str) -> str:
    """A figure by itself, below zero with a minus sign; the hyphen of its fraction, `1-1/16`, stays."""
    return text.replace("-", MINUS, 1) if text.startswith("-") else text


def set_minus(text: str) -> str:
    """The text with a minus sign before each figure below zero: `−3.7 mm`."""
    return _NEGATIVE.sub(_sign_unit, text) if "-" in text else text


# Texts that differ in their digits alone are kept together alike: the cells of a long table are looked at once.
_ALIKE = bytes.maketrans(b"123456789", b"0" * 9)


def keep_words(text: str) -> str:
    """The text with spaces and hyphens that do not break where a line must not, and with minus signs."""
    # As bytes, which are many times faster to translate.
    places = _find_kept(text.encode(errors="surrogatepass").translate(_ALIKE)) if " " in text or "-" in text else ()
    if not places:
        return text
    signs = list(text)
    for place, sign in places:
        signs[place] = sign
    return "".join(signs)


@lru_cache(maxsize=8192)
def _find_kept(alike: bytes) -> tuple[tuple[int, str], ...]:
    """The places of the spaces and hyphens that do not break, and of minus signs, each with what stands there."""
    text = alike.decode(errors="surrogatepass")
    kept = _JOINED.sub(NO_BREAK_HYPHEN, _MARKED.sub(_keep_mark, _KEPT.sub(_keep_unit, set_minus(text))))
    return tuple((place, new) for place, (old, new) in enumerate(zip(text, kept, strict=True)) if old != new)


def _keep_unit(found: re.Match[str]) -> str:
    return NO_BREAK if found[1] is None or found[1] in _LEADING else " "


def _sign_unit(found: re.Match[str]) -> str:
    return MINUS if found[1] in _LEADING else "-"


def _keep_mark(found: re.Match[str]) -> str:
    return found[1] + (NO_BREAK if found[1] in _MARKING else " ")


def keep_together(content: Inlines) -> Inlines:
    """The content with such spaces, also where a number ends one part and its unit begins the next."""
    if len(content) == 1:  # nearly every cell of a long table
        only = content[0]
        if isinstance(only, (Text, Value)):
            kept = keep_words(only.text)
            return content if kept == only.text else (replace(only, text=kept),)
    joined = "".join(_spell(content))
    kept = keep_words(joined)
    return content if kept == joined else tuple(_fill(content, iter(kept)))


def _spell(content: Iterable[Inline]) -> Iterator[str]:
    """The words of the content; what holds none counts as one sign."""
    for part in content:
        if isinstance(part, (Strong, Emphasis)):
            yield from _spell(part.children)
        else:
            yield part.text if isinstance(part, (Text, Value)) else "\ufffc"


def _fill(content: Iterable[Inline], signs: Iterator[str]) -> Iterator[Inline]:
    """The content with its words taken from `signs`, which are as many."""
    for part in content:
        if isinstance(part, (Strong, Emphasis)):
            yield type(part)(tuple(_fill(part.children, signs)))
        elif isinstance(part, (Text, Value)):
            yield replace(part, text="".join(islice(signs, len(part.text))))
        else:
            next(signs)
            yield part
