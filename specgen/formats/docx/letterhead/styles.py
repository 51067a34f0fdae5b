"""The firm's styles as they are, plus those of ours that the firm lacks, under the firm's ids."""

import itertools
from copy import deepcopy

from docx.oxml.ns import qn

from specgen.formats.docx.elements import Element, find_required, remove_element
from specgen.model.problem import refuse

# A word processor holds some four thousand (from memory).
MOST_STYLES = 5_000
_NAME, _VAL, _ID, _TYPE = qn("w:name"), qn("w:val"), qn("w:styleId"), qn("w:type")
# Where one style names another.
_LEADS = tuple(qn(f"w:{word}") for word in ("basedOn", "next", "link"))
# The run properties that follow the language in the schema.
_AFTER_LANGUAGE = ("eastAsianLayout", "specVanish", "oMath")


def merge_styles(theirs: Element | None, ours: Element) -> tuple[Element, dict[str, str]]:
    """The styles of the letterhead, and their ids by our names."""
    styles = deepcopy(ours) if theirs is None else _clean_styles(theirs)
    if styles.find(qn("w:docDefaults")) is None:
        styles.insert(0, deepcopy(find_required(ours, "w:docDefaults")))
    ids = _match_ids(styles, ours)
    missing = [style for style in _list_styles(ours) if _read_name(style) not in ids]
    ids |= _choose_ids(styles, missing)
    for style in missing:
        styles.append(_adapt_style(style, styles, ours, ids))
    _set_language(styles)
    return styles, ids


def _list_styles(root: Element) -> list[Element]:
    return [style for style in root.iterchildren(qn("w:style")) if _read_name(style)]


def _read_name(style: Element) -> str:
    named = style.find(_NAME)
    return named.get(_VAL, "") if named is not None else ""


def _clean_styles(theirs: Element) -> Element:
    """The firm's styles, each with an id, without lists, which belong to the firm's document."""
    styles = deepcopy(theirs)
    for style in styles.iter(qn("w:style")):
        for listed in list(style.iter(qn("w:numPr"))):
            remove_element(listed)
    named = _list_styles(styles)
    if len(named) > MOST_STYLES:
        raise refuse(f"the letterhead has {len(named)} styles", f"at most {MOST_STYLES}; copy it into a new document")
    taken = {style.get(_ID, "").lower() for style in named}
    for style in named:
        if not style.get(_ID):
            style.set(_ID, _find_free("Style", taken))
            taken.add(style.get(_ID, "").lower())
    return styles


def _match_ids(styles: Element, ours: Element) -> dict[str, str]:
    """The ids of the firm's styles that match ours in name, in any case, and in type."""
    found: dict[tuple[str, str], str] = {}
    for style in _list_styles(styles):
        found.setdefault((_read_name(style).lower(), style.get(_TYPE, "paragraph")), style.get(_ID, ""))
    wanted = {_read_name(style): (_read_name(style).lower(), style.get(_TYPE)) for style in _list_styles(ours)}
    return {name: found[key] for name, key in wanted.items() if key in found}


def _choose_ids(styles: Element, missing: list[Element]) -> dict[str, str]:
    taken = {style.get(_ID, "").lower() for style in styles.iterchildren(qn("w:style"))}
    ids: dict[str, str] = {}
    for style in missing:
        ids[_read_name(style)] = _find_free(style.get(_ID, ""), taken)
        taken.add(ids[_read_name(style)].lower())
    return ids


def _find_free(wish: str, taken: set[str]) -> str:
    """The word, with a number appended where it is taken."""
    words = (wish if number == 1 else f"{wish}{number}" for number in itertools.count(1))
    return next(word for word in words if word.lower() not in taken)


def _adapt_style(style: Element, styles: Element, ours: Element, ids: dict[str, str]) -> Element:
    """A style of ours for the firm's file: linked to the firm's styles, in the firm's font."""
    new = deepcopy(style)
    new.set(_ID, ids[_read_name(style)])
    names = {other.get(_ID, ""): _read_name(other) for other in _list_styles(ours)}
    for lead in new:
        if lead.tag in _LEADS:
            lead.set(_VAL, ids[names[lead.get(_VAL, "")]])
    taken = {_read_name(other).lower() for other in _list_styles(styles)}
    if _read_name(new).lower() in taken:  # the firm uses the name for a style of another type
        find_required(new, "w:name").set(_VAL, _find_free(f"{_read_name(new)} ", taken))
    if any(o.get(qn("w:default")) and o.get(_TYPE) == new.get(_TYPE) for o in _list_styles(styles)):
        new.attrib.pop(qn("w:default"), None)
    for font in list(new.iter(qn("w:rFonts"))):
        remove_element(font)
    return new


def _set_language(root: Element) -> None:
    """Set the language of the text for word processors and screen readers."""
    for language in root.iter(qn("w:lang")):
        language.set(_VAL, "en-US")
    place = find_required(root, "w:docDefaults")
    for step in ("rPrDefault", "rPr"):
        inner = place.find(qn(f"w:{step}"))
        if inner is None:
            inner = place.makeelement(qn(f"w:{step}"))
            place.insert(0, inner)
        place = inner
    if place.find(qn("w:lang")) is None:
        language = place.makeelement(qn("w:lang"), {_VAL: "en-US"})
        behind = [child for child in place if child.tag in [qn(f"w:{word}") for word in _AFTER_LANGUAGE]]
        place.insert(list(place).index(behind[0]) if behind else len(place), language)


def find_tab_stops(root: Element, style_id: str) -> dict[int, str]:
    """The tab stops of a style by position, those of the styles it is based on included."""
    by_id = {style.get(_ID): style for style in root.iterchildren(qn("w:style"))}
    chain: list[Element] = []
    while style_id in by_id:  # each is taken once, so that a circle ends
        chain.append(by_id.pop(style_id))
        base = chain[-1].find(qn("w:basedOn"))
        style_id = base.get(_VAL, "") if base is not None else ""
    stops: dict[int, str] = {}
    for style in reversed(chain):
        for tab in style.iterfind(f"{qn('w:pPr')}/{qn('w:tabs')}/{qn('w:tab')}"):
            place, kind = _read_place(tab), tab.get(_VAL, "left")
            stops.pop(place, None)
            if kind != "clear":
                stops[place] = kind
    return stops


def _read_place(tab: Element) -> int:
    try:
        return int(float(tab.get(qn("w:pos"), "0")))
    except ValueError:
        return 0
