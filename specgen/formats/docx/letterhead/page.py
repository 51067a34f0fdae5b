"""The page of a firm's paper: one section with size, margins, and what its headers and footers are."""

import re
from copy import deepcopy
from fractions import Fraction
from typing import Any

from docx.oxml.ns import qn

from specgen.formats.docx.letterhead.opc import OFFICE
from specgen.model.problem import refuse

# Twentieths of a point.
_UNITS: dict[str, Fraction | int] = {
    "": 1,
    "mm": Fraction(14400, 254),
    "cm": Fraction(144000, 254),
    "in": 1440,
    "pt": 20,
    "pc": 240,
    "pi": 240,
}
# Narrower text than two inches holds no table of ours; no word processor takes a page wider than 22 inches.
LEAST_TEXT, MOST_PAGE = 2 * 1440, 22 * 1440
# What of a section is the paper's; columns, page count, text direction and the like are the document's.
_KEPT = ("paperSrc", "pgBorders")
_MARGINS = ("top", "right", "bottom", "left", "header", "footer", "gutter")


def section_of(body: Any) -> tuple[Any, int, int]:
    """The section that is the paper, its number, and how many there are: the first with a header or footer."""
    every = body.iter(qn("w:sectPr")) if body is not None else ()
    found = [one for one in every if one.getparent().tag != qn("w:sectPrChange")]
    headed = [n for n, one in enumerate(found) if one.find(qn("w:headerReference")) is not None]
    headed += [n for n, one in enumerate(found) if one.find(qn("w:footerReference")) is not None]
    number = min(headed, default=0)
    return (found[number] if found else None), number + 1, len(found)


def page_of(theirs: Any, ours: Any, gutter_at_top: bool) -> Any:
    """A section without headers: their size and margins, ours where they give none; raises Refused if too narrow."""
    made = deepcopy(ours)
    for child in list(made):
        if child.tag not in (qn("w:pgSz"), qn("w:pgMar")):
            made.remove(child)
    if theirs is None:
        return made
    size, margins = made.find(qn("w:pgSz")), made.find(qn("w:pgMar"))
    given = theirs.find(qn("w:pgSz"))
    if given is not None:
        _take(given, size, ("w", "h"))
        # The orientation follows from the sides; a code of the printer's goes with the size.
        size.attrib.update({key: value for key, value in given.attrib.items() if key == qn("w:code")})
    if int(size.get(qn("w:w"))) > int(size.get(qn("w:h"))):
        size.set(qn("w:orient"), "landscape")
    if theirs.find(qn("w:pgMar")) is not None:
        _take(theirs.find(qn("w:pgMar")), margins, _MARGINS)
    _check(made, gutter_at_top)
    made.extend(_own(found) for name in _KEPT if (found := theirs.find(qn(f"w:{name}"))) is not None)
    return made


def _own(element: Any) -> Any:
    """A copy that leads to no other part."""
    made = deepcopy(element)
    for part in made.iter():
        for key in [key for key in part.attrib if key.startswith(f"{{{OFFICE}}}")]:
            del part.attrib[key]
    return made


def _take(source: Any, to: Any, names: tuple[str, ...]) -> None:
    for name in names:
        length = _length(source.get(qn(f"w:{name}")))
        if length is not None:
            to.set(qn(f"w:{name}"), str(length))


def _length(text: str | None) -> int | None:
    """A length in twentieths of a point, whole; None where there is none. A margin below nothing means `exactly`."""
    found = re.fullmatch(r"-?(\d{1,7}(?:\.\d{1,6})?)(mm|cm|in|pt|pc|pi|)", text or "")
    return round(Fraction(found[1]) * _UNITS[found[2]]) if found else None


def _check(section: Any, gutter_at_top: bool) -> None:
    size, margins = section.find(qn("w:pgSz")), section.find(qn("w:pgMar"))
    wide, high = int(size.get(qn("w:w"))), int(size.get(qn("w:h")))
    text = text_width(section, gutter_at_top)
    # A form may lie wide: then the short side is the height.
    column = min(wide, high) - int(margins.get(qn("w:top"))) - int(margins.get(qn("w:bottom")))
    if max(wide, high) > MOST_PAGE:
        raise refuse(f"the page of the letterhead is {max(wide, high) / 1440:.1f} in long", "at most 22 in")
    for side, length in (("wide", text), ("high", column)):
        if length < LEAST_TEXT:
            message = f"the margins of the letterhead leave text {length / 1440:.1f} in {side}"
            raise refuse(message, f"at least {LEAST_TEXT // 1440} in")


def text_width(section: Any, gutter_at_top: bool = False) -> int:
    """The width of the text of a page, in twentieths of a point."""
    size, margins = section.find(qn("w:pgSz")), section.find(qn("w:pgMar"))
    beside = sum(int(margins.get(qn(f"w:{name}"))) for name in ("left", "right"))
    return int(size.get(qn("w:w"))) - beside - (0 if gutter_at_top else int(margins.get(qn("w:gutter"), "0")))
