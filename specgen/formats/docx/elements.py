"""Elements of an XML part: the child and the number that must be there, and an element taken out."""

from docx.oxml.ns import qn
from lxml import etree

Element = etree._Element


def find_required(parent: Element, name: str) -> Element:
    """The child of a name such as `w:pgSz`; LookupError where a part of our own lacks it."""
    child = parent.find(qn(name))
    if child is None:
        raise LookupError(f"no {name} in {parent.tag!r}")
    return child


def read_whole_number(element: Element, name: str, default: str = "") -> int:
    """The whole number in an attribute of a name such as `w:w`."""
    return int(element.get(qn(name), default))


def remove_element(element: Element) -> None:
    """Take an element out of the one that holds it, if any does."""
    parent = element.getparent()
    if parent is not None:
        parent.remove(element)
