"""Fields of a header or footer: those that count pages or name a heading stay, any other becomes the words it showed.

An issued letterhead never changes and fetches nothing. A field is a `fldSimple`, or runs between the marks `begin`,
`separate` and `end` with its instruction in the first half (ECMA-376 part 1, 17.16).
"""

import re
from dataclasses import dataclass, field

from docx.oxml.ns import qn

from specgen.formats.docx.elements import Element, remove_element
from specgen.formats.docx.letterhead.cleaning import Fate, rebuild

_FORM = r"\s+\\\*\s*[A-Z]{1,20}"
_NUMBER = r"\s+\\#\s*(?:\"[0#x,.+ -]{1,40}\"|[0#x,.+-]{1,40})"
_STYLE = r"(?:\"[^\"\\]{1,200}\"|[^\s\"\\]{1,200})"
_KEPT = re.compile(
    rf"\s*(?:(?:PAGE|NUMPAGES|SECTIONPAGES)(?:{_FORM}|{_NUMBER}){{0,4}}"
    rf"|STYLEREF\s+{_STYLE}(?:\s+\\[LNPRTW]|{_FORM}){{0,6}})\s*",
    re.IGNORECASE,
)
_NAME = re.compile(r"\s*([A-Z]{1,20})\b", re.IGNORECASE)
_MARK, _CODE, _SIMPLE, _KIND = qn("w:fldChar"), qn("w:instrText"), qn("w:fldSimple"), qn("w:fldCharType")
_STORIES = (qn("w:txbxContent"), qn("w:hdr"), qn("w:ftr"))
_MOST_CODE = 500


@dataclass(eq=False)
class _Field:
    """A field of several runs: its marks, its instruction, and what else stands in the half of the instruction."""

    marks: list[Element]
    whole: bool  # begun outside the instruction of another
    code: list[Element] = field(default_factory=list)
    within: list[Element] = field(default_factory=list)
    in_code: bool = True


def freeze_fields(root: Element) -> list[str]:
    """Turn all fields but the kept ones into the words they showed; the names of those, `a field` for a strange one."""
    frozen: dict[str, None] = {}
    stories: dict[Element | None, list[Element]] = {}
    for run in root.iter(qn("w:r")):
        story = next(run.iterancestors(*_STORIES), None)
        stories.setdefault(story, []).extend(child for child in run if child.tag != qn("w:rPr"))
    for pieces in stories.values():
        _freeze_story(pieces, frozen)

    def judge(element: Element) -> Fate:
        if element.tag != _SIMPLE:
            return Fate.KEPT
        code = _normalize(element.get(qn("w:instr"), ""))
        if code:
            element.set(qn("w:instr"), code)
            return Fate.KEPT
        frozen[_find_name(element.get(qn("w:instr"), ""))] = None
        return Fate.UNWRAPPED

    rebuild(root, judge)
    return list(frozen)


def _normalize(code: str) -> str:
    """The instruction of a kept field; empty for any other."""
    return f" {' '.join(code.split())} " if len(code) <= _MOST_CODE and _KEPT.fullmatch(code) else ""


def _find_name(code: str) -> str:
    found = _NAME.match(code)
    return found[1].upper() if found else "a field"


def _freeze_story(pieces: list[Element], frozen: dict[str, None]) -> None:
    """Settle the fields of several runs in one story; a mark or an instruction that belongs to none goes."""
    going: list[_Field] = []
    for piece in pieces:
        kind = piece.get(_KIND) if piece.tag == _MARK else None
        if kind == "begin":
            _begin(piece, going)
        elif kind == "end" and going:
            going[-1].marks.append(piece)
            _settle(going.pop(), frozen)
        elif kind == "separate" and going and going[-1].in_code:
            going[-1].marks.append(piece)
            going[-1].in_code = False
        elif piece.tag in (_MARK, _CODE) and not (piece.tag == _CODE and going and going[-1].in_code):
            remove_element(piece)
        else:
            _add_piece(piece, going)
    for left in going:
        for piece in (*left.marks, *left.code):
            remove_element(piece)


def _begin(mark: Element, going: list[_Field]) -> None:
    outer = going[-1] if going else None
    going.append(_Field([mark], outer is None or outer.whole and not outer.in_code))


def _add_piece(piece: Element, going: list[_Field]) -> None:
    """Note an instruction, or words that stand in the half of one and show nowhere."""
    if not going:
        return
    if piece.tag == _CODE:
        going[-1].code.append(piece)
    elif going[-1].in_code or not going[-1].whole:
        going[-1].within.append(piece)


def _settle(done: _Field, frozen: dict[str, None]) -> None:
    """Keep a field with its instruction written anew, or leave the words it showed; those in an instruction go."""
    for piece in done.within:
        simple = next(piece.iterancestors(_SIMPLE, *_STORIES), None)
        remove_element(simple if simple is not None and simple.tag == _SIMPLE else piece)
    written = "".join(piece.text or "" for piece in done.code)
    code = _normalize(written) if done.whole and done.code else ""
    for piece in done.code[1 if code else 0 :]:
        remove_element(piece)
    if code:
        done.code[0].text = code
        return
    if done.whole:
        frozen[_find_name(written)] = None
    for mark in done.marks:
        remove_element(mark)
