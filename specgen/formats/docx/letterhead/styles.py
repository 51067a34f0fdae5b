"""The firm's styles as they are, and those of ours that the firm has not, under the firm's ids."""

import itertools
from copy import deepcopy

from docx.oxml.ns import qn

from specgen.formats.docx.elements import Element, find_required, remove_element

_NAME, _VAL, _ID, _TYPE = qn("w:name"), qn("w:val"), qn("w:styleId"), qn("w:type")
# Where one style names another.
_LEADS = tuple(qn(f"w:{word}") for word in ("basedOn", "next", "link"))
# What follows the language among the properties of a run.
_AFTER_LANGUAGE = ("eastAsianLayout", "specVanish", "oMath")


def merged(theirs: Element | None, ours: Element) -> tuple[Element, dict[str, str]]:
    """The styles of the paper, and their ids by our names."""
    made = deepcopy(ours) if theirs is None else _cleaned(theirs)
    if made.find(qn("w:docDefaults")) is None:
        made.insert(0, deepcopy(find_required(ours, "w:docDefaults")))
    ids = _named(made, ours)
    missing = [style for style in _styles(ours) if _name(style) not in ids]
    ids |= _new_ids(made, missing)
    for style in missing:
        made.append(_added(style, made, ours, ids))
    _speak_english(made)
    return made, ids


def _styles(root: Element) -> list[Element]:
    return [style for style in root.iterchildren(qn("w:style")) if _name(style)]


def _name(style: Element) -> str:
    named = style.find(_NAME)
    return named.get(_VAL, "") if named is not None else ""


def _cleaned(theirs: Element) -> Element:
    """Their styles without lists, which belong to their document, and with an id each."""
    made = deepcopy(theirs)
    for style in made.iter(qn("w:style")):
        for listed in list(style.iter(qn("w:numPr"))):
            remove_element(listed)
    for style in _styles(made):
        if not style.get(_ID):
            style.set(_ID, _free("Style", {s.get(_ID, "").lower() for s in _styles(made)}))
    return made


def _named(made: Element, ours: Element) -> dict[str, str]:
    """Ids of the styles that carry one of our names and are of its type; names count without regard to case."""
    found: dict[tuple[str, str], str] = {}
    for style in _styles(made):
        found.setdefault((_name(style).lower(), style.get(_TYPE, "paragraph")), style.get(_ID, ""))
    wanted = {_name(style): (_name(style).lower(), style.get(_TYPE)) for style in _styles(ours)}
    return {name: found[key] for name, key in wanted.items() if key in found}


def _new_ids(made: Element, missing: list[Element]) -> dict[str, str]:
    taken = {style.get(_ID, "").lower() for style in made.iterchildren(qn("w:style"))}
    ids: dict[str, str] = {}
    for style in missing:
        ids[_name(style)] = _free(style.get(_ID, ""), taken)
        taken.add(ids[_name(style)].lower())
    return ids


def _free(wish: str, taken: set[str]) -> str:
    """The word, with a number behind it where it is taken."""
    words = (wish if number == 1 else f"{wish}{number}" for number in itertools.count(1))
    return next(word for word in words if word.lower() not in taken)


def _added(style: Element, made: Element, ours: Element, ids: dict[str, str]) -> Element:
    """A style of ours for the firm's file: its links lead to the firm's styles, and the firm's font is kept."""
    new = deepcopy(style)
    new.set(_ID, ids[_name(style)])
    names = {other.get(_ID, ""): _name(other) for other in _styles(ours)}
    for lead in new:
        if lead.tag in _LEADS:
            lead.set(_VAL, ids[names[lead.get(_VAL, "")]])
    taken = {_name(other).lower() for other in _styles(made)}
    if _name(new).lower() in taken:  # the firm uses the name for a style of another type
        find_required(new, "w:name").set(_VAL, _free(f"{_name(new)} ", taken))
    if any(o.get(qn("w:default")) and o.get(_TYPE) == new.get(_TYPE) for o in _styles(made)):
        new.attrib.pop(qn("w:default"), None)
    for font in list(new.iter(qn("w:rFonts"))):
        remove_element(font)
    return new


def _speak_english(root: Element) -> None:
    """Tell word processors and screen readers the language of the words."""
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


def stops(root: Element, style_id: str) -> dict[int, str]:
    """The tab stops of a style by their place, those of the styles below it included."""
    by_id = {style.get(_ID): style for style in root.iterchildren(qn("w:style"))}
    chain: list[Element] = []
    while style_id in by_id and by_id[style_id] not in chain:
        chain.append(by_id[style_id])
        base = chain[-1].find(qn("w:basedOn"))
        style_id = base.get(_VAL, "") if base is not None else ""
    made: dict[int, str] = {}
    for style in reversed(chain):
        for tab in style.iterfind(f"{qn('w:pPr')}/{qn('w:tabs')}/{qn('w:tab')}"):
            place, kind = _place(tab), tab.get(_VAL, "left")
            made.pop(place, None)
            if kind != "clear":
                made[place] = kind
    return made


def _place(tab: Element) -> int:
    try:
        return int(float(tab.get(qn("w:pos"), "0")))
    except ValueError:
        return 0
