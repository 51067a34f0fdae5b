"""The page of a letterhead: one section with its size, margins, headers and footers."""

import re
from copy import deepcopy
from fractions import Fraction

from docx.oxml.ns import qn

from specgen.formats.docx.elements import Element, find_required, read_whole_number
from specgen.formats.docx.letterhead.cleaning import clean_plain_part
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
# What a letterhead decides in a section; columns, page count, text direction and the like are the document's.
_KEPT = ("paperSrc", "pgBorders")
_MARGINS = ("top", "right", "bottom", "left", "header", "footer", "gutter")


def find_section(body: Element | None) -> tuple[Element | None, int, int]:
    """The first section with a header or footer, its number, and the number of sections."""
    every = body.iter(qn("w:sectPr")) if body is not None else ()
    found = [section for section in every if not _is_former(section)]
    headed = [n for n, section in enumerate(found) if section.find(qn("w:headerReference")) is not None]
    headed += [n for n, section in enumerate(found) if section.find(qn("w:footerReference")) is not None]
    number = min(headed, default=0)
    return (found[number] if found else None), number + 1, len(found)


def _is_former(section: Element) -> bool:
    """Whether a section is what a tracked change has replaced."""
    parent = section.getparent()
    return parent is not None and parent.tag == qn("w:sectPrChange")


def build_page(theirs: Element | None, ours: Element, gutter_at_top: bool) -> Element:
    """A section without headers: the firm's size and margins, else ours; raises Refused if too narrow."""
    page = deepcopy(ours)
    for child in list(page):
        if child.tag not in (qn("w:pgSz"), qn("w:pgMar")):
            page.remove(child)
    if theirs is None:
        return page
    size, margins = find_required(page, "w:pgSz"), find_required(page, "w:pgMar")
    given = theirs.find(qn("w:pgSz"))
    if given is not None:
        _take_lengths(given, size, ("w", "h"))
        # The orientation follows from the sides; a code of the printer's goes with the size.
        size.attrib.update({key: value for key, value in given.attrib.items() if key == qn("w:code")})
    if read_whole_number(size, "w:w") > read_whole_number(size, "w:h"):
        size.set(qn("w:orient"), "landscape")
    given = theirs.find(qn("w:pgMar"))
    if given is not None:
        _take_lengths(given, margins, _MARGINS)
    _check_page(page, gutter_at_top)
    for found in (theirs.find(qn(f"w:{name}")) for name in _KEPT):
        if found is not None:
            page.append(deepcopy(found))
            clean_plain_part(page[-1])
    return page


def _take_lengths(source: Element, to: Element, names: tuple[str, ...]) -> None:
    for name in names:
        length = _parse_length(source.get(qn(f"w:{name}")))
        if length is not None:
            to.set(qn(f"w:{name}"), str(length))


def _parse_length(text: str | None) -> int | None:
    """A length in whole twentieths of a point; None where there is none. A negative margin means `exactly`."""
    found = re.fullmatch(r"-?(\d{1,7}(?:\.\d{1,6})?)(mm|cm|in|pt|pc|pi|)", text or "")
    return round(Fraction(found[1]) * _UNITS[found[2]]) if found else None


def _check_page(section: Element, gutter_at_top: bool) -> None:
    size, margins = find_required(section, "w:pgSz"), find_required(section, "w:pgMar")
    wide, high = read_whole_number(size, "w:w"), read_whole_number(size, "w:h")
    text = measure_text_width(section, gutter_at_top)
    # A form may lie wide: then the short side is the height.
    column = min(wide, high) - read_whole_number(margins, "w:top") - read_whole_number(margins, "w:bottom")
    if max(wide, high) > MOST_PAGE:
        raise refuse(f"the page of the letterhead is {max(wide, high) / 1440:.1f} in long", "at most 22 in")
    for side, length in (("wide", text), ("high", column)):
        if length < LEAST_TEXT:
            message = f"the margins of the letterhead leave text {length / 1440:.1f} in {side}"
            raise refuse(message, f"at least {LEAST_TEXT // 1440} in")


def measure_text_width(section: Element, gutter_at_top: bool = False) -> int:
    """The width of the text area, in twentieths of a point."""
    size, margins = find_required(section, "w:pgSz"), find_required(section, "w:pgMar")
    beside = read_whole_number(margins, "w:left") + read_whole_number(margins, "w:right")
    gutter = 0 if gutter_at_top else read_whole_number(margins, "w:gutter", "0")
    return read_whole_number(size, "w:w") - beside - gutter
