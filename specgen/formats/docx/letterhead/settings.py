"""The settings of a letterhead: ours, with those of the firm's that shape the page."""

from copy import deepcopy

from docx.oxml.ns import qn

from specgen.formats.docx.elements import Element

# In the order of the schema (ECMA-376 part 1, 17.15.1.78); those the firm decides, and those we decide.
_FIRM = (
    "mirrorMargins",
    "alignBordersAndEdges",
    "bordersDoNotSurroundHeader",
    "bordersDoNotSurroundFooter",
    "gutterAtTop",
    "defaultTabStop",
    "evenAndOddHeaders",
    "clrSchemeMapping",
)
_ORDER = ("zoom", *_FIRM[:-1], "characterSpacingControl", "compat", "themeFontLang", "clrSchemeMapping")


def merge_settings(theirs: Element | None, ours: Element) -> Element:
    """Our settings plus those of the firm's that its page needs; no protection, template or data source."""
    settings = deepcopy(ours)
    kept = {word: settings.find(qn(f"w:{word}")) for word in _ORDER}
    for word in _FIRM:
        given = theirs.find(qn(f"w:{word}")) if theirs is not None else None
        if given is not None:
            kept[word] = deepcopy(given)
    settings[:] = [element for element in kept.values() if element is not None]
    return settings


def is_on(parent: Element, name: str) -> bool:
    """Whether a switch is on: present, and not set to off."""
    found = parent.find(qn(name))
    return found is not None and found.get(qn("w:val"), "true") not in ("0", "false", "off")
