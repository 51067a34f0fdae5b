"""The settings of the paper: ours, and of the firm's those that say how a page looks."""

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


def merged_settings(theirs: Element | None, ours: Element) -> Element:
    """Our settings with those of the firm that its page needs; no protection, no template, no source of data."""
    made = deepcopy(ours)
    kept = {word: made.find(qn(f"w:{word}")) for word in _ORDER}
    for word in _FIRM:
        given = theirs.find(qn(f"w:{word}")) if theirs is not None else None
        if given is not None:
            kept[word] = deepcopy(given)
    made[:] = [element for element in kept.values() if element is not None]
    return made


def is_on(parent: Element, name: str) -> bool:
    """Whether a switch is set: present, and not told to be off."""
    found = parent.find(qn(name))
    return found is not None and found.get(qn("w:val"), "true") not in ("0", "false", "off")
