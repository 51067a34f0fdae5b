"""Clears a part of a letterhead of all that is not on the lists of what it may hold, each element judged once."""

import re
from collections.abc import Callable
from enum import Enum

from docx.oxml.ns import qn
from lxml import etree

from specgen.formats.docx.elements import Element
from specgen.formats.docx.letterhead import vocabulary as known

Drop = Callable[[str], None]
TRACKED = "tracked changes"
# The places of a shape are written as in a style sheet; what has brackets calls something.
_PLACE = re.compile(r"[\w\s.:;,%#'\"+-]*")
# Addresses that a reader may be led to; a program is started by any other.
_ADDRESS = re.compile(r"(?:https?://[^\s\\/]|mailto:[^\s\\])[^\s\\]{0,2000}", re.IGNORECASE)


class Fate(Enum):
    """What becomes of an element: kept, replaced by what it holds, or left out with it."""

    KEPT = 1
    UNWRAPPED = 2
    GONE = 3


def rebuild(root: Element, judge: Callable[[Element], Fate]) -> None:
    """Give every element below the root its fate, in one pass: each is judged once and moved at most once."""
    waiting = [root]
    while waiting:
        parent = waiting.pop()
        children = list(parent)
        kept = _list_kept(children, judge)
        if kept != children:
            parent[:] = kept
        waiting.extend(reversed(kept))


def _list_kept(children: list[Element], judge: Callable[[Element], Fate]) -> list[Element]:
    kept, waiting = [], children[::-1]
    while waiting:
        child = waiting.pop()
        fate = judge(child)
        if fate is Fate.KEPT:
            kept.append(child)
        elif fate is Fate.UNWRAPPED:
            waiting.extend(reversed(child))
    return kept


def is_address(text: str) -> bool:
    """Whether a text is the address of a web page or a mailbox."""
    return _ADDRESS.fullmatch(text) is not None


def clean_page_part(root: Element, drop: Drop) -> None:
    """Keep of a header, a footer or a theme what is listed; `drop` is called with the name of each thing left out."""
    rebuild(root, lambda element: _judge(element, drop))
    rebuild(root, _judge_alternative)
    for element in root.iter(etree.Element):
        _clean_attributes(element, drop)


def clean_plain_part(root: Element) -> None:
    """Keep of styles, fonts or settings what leads nowhere, with tracked changes accepted."""

    def judge(element: Element) -> Fate:
        space = etree.QName(element).namespace
        return Fate.KEPT if space in known.LATER | {known.W, known.MC} and not _is_changed(element) else Fate.GONE

    rebuild(root, judge)
    for element in root.iter(etree.Element):
        for key in element.attrib:
            if etree.QName(key).namespace not in known.LATER | {known.W, known.XML} and key != _IGNORABLE:
                del element.attrib[key]


_ALTERNATE, _CHOICE, _FALLBACK = (f"{{{known.MC}}}{word}" for word in ("AlternateContent", "Choice", "Fallback"))
_IGNORABLE = f"{{{known.MC}}}Ignorable"
_ROW_GONE = f"{qn('w:trPr')}/{qn('w:del')}"


def _is_changed(element: Element) -> bool:
    tag = str(element.tag)
    return tag in known.GONE or tag.endswith("PrChange") or tag == qn("w:tr") and element.find(_ROW_GONE) is not None


def _judge(element: Element, drop: Drop) -> Fate:
    tag = str(element.tag)
    if tag in known.CHANGED or _is_changed(element):
        drop(TRACKED)
        return Fate.UNWRAPPED if tag in known.CHANGED else Fate.GONE
    if tag in known.UNWRAPPED:
        return Fate.UNWRAPPED
    if tag in known.SAID:
        drop(known.SAID[tag])
        return Fate.GONE
    if tag in known.KEPT or etree.QName(tag).namespace in known.WHOLE and tag not in known.UNSEEN:
        return Fate.KEPT
    if tag not in known.UNSEEN:
        drop("contents of an unknown kind")
    return Fate.GONE


def _judge_alternative(element: Element) -> Fate:
    """A choice of which nothing is left gives way to the next, and the last to the fallback."""
    if element.tag == _CHOICE:
        return Fate.KEPT if len(element) else Fate.GONE
    around = element if element.tag == _ALTERNATE else element.getparent() if element.tag == _FALLBACK else None
    if around is None or any(len(choice) for choice in around.iterchildren(_CHOICE)):
        return Fate.KEPT
    return Fate.UNWRAPPED


def _clean_attributes(element: Element, drop: Drop) -> None:
    """Keep the attributes that are listed; those that link to a part are looked at where the parts are at hand."""
    for key, value in element.attrib.items():
        space = etree.QName(key).namespace
        if space == known.R or space == known.XML or key == _IGNORABLE:
            continue
        if element.tag in known.NARROW:
            kept = key in known.NARROW[str(element.tag)]
        elif space is None:
            kept = _is_plain_kept(element, key, value, drop)
        else:
            kept = space in known.LATER | {known.W, known.WP, _WP14} or key in known.OFFICE_ATTRIBUTES
        if not kept:
            del element.attrib[key]


_WP14 = "http://schemas.microsoft.com/office/word/2010/wordprocessingDrawing"
_OF_SHAPES = {known.V, known.O, known.W10}


def _is_plain_kept(element: Element, key: str, value: str, drop: Drop) -> bool:
    """Whether an attribute without a namespace is kept: those of VML by name, those of DrawingML all."""
    space = etree.QName(element).namespace
    if space not in _OF_SHAPES:
        return space in known.WHOLE
    if space == known.O:
        return key in known.LOCK_ATTRIBUTES
    if key == "href":
        if not is_address(value):
            drop("links to files or programs")
        return is_address(value)
    return key in known.VML_ATTRIBUTES and (key != "style" or _PLACE.fullmatch(value) is not None)
