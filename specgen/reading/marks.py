"""What a mark may hold: the user's short name of a wall, joint or paper, as the drawings print it.

Marks stand in every table and message, and two of them must be told apart at a glance. So it is said what they may
hold, not what they may not.
"""

import unicodedata
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.model.forbidden_characters import name_character

MOST_MARK = 60
SIGNS = "-./_#&()+,'"
ALLOWED = f"letters, digits, single spaces inside, and {' '.join(SIGNS)}"
_DIGITS = frozenset("0123456789")
# Scripts whose letters are taken for those of no other.
_APART = {"CJK", "HIRAGANA", "KATAKANA", "HANGUL"}


class Alike(NamedTuple):
    """A mark, the earlier one it is taken for, and the fault and remedy in words."""

    mark: str
    earlier: str
    fault: str
    hint: str


def find_mark_fault(mark: str) -> tuple[str, str] | None:
    """Why a text cannot be a mark, and what would be right; None if it can."""
    fault = f"{mark[:20]!r} cannot be a mark"
    if len(mark) > MOST_MARK:
        return fault, f"at most {MOST_MARK} characters"
    wrong = next((char for char in mark if not _may_stand(char)), None)
    plain = _make_plain(mark)
    if not any(map(str.isalnum, plain)):
        return fault, "write the mark used on the drawings"
    hint = f"write {plain}" if all(map(_may_stand, plain)) else ALLOWED
    if wrong is not None:
        return f"{fault}: it holds {name_character(wrong)}", hint
    return (f"{fault}: it holds spaces that are not seen", hint) if mark != plain else None


def _make_plain(mark: str) -> str:
    """A mark with plain letters for wide, raised, joined and composed ones, hyphens for dashes, and single spaces."""
    letters = " ".join(unicodedata.normalize("NFKC", mark).split())
    return "".join("-" if unicodedata.category(char) == "Pd" else char for char in letters)


def _may_stand(char: str) -> bool:
    """Whether a character may stand in a mark; letters only in their plain form, and of those that run to the right."""
    if char in SIGNS or char in _DIGITS or char == " ":
        return True
    letter = unicodedata.category(char)[0] == "L" and unicodedata.bidirectional(char) == "L"
    return letter and unicodedata.normalize("NFKC", char) == char


def find_alike(marks: Iterable[str]) -> Iterator[Alike]:
    """The marks of one collection that are taken for an earlier one, or are written in another alphabet."""
    first: dict[str, str] = {}
    alphabet, written = "", ""
    for mark in marks:
        earlier = first.setdefault(mark.casefold(), mark)
        if earlier != mark:
            yield Alike(mark, earlier, "they differ only in capitals", "give one of them another mark")
        for script in _scripts(mark):
            alphabet, written = alphabet or script, written or mark
            if script != alphabet:
                fault = f"one holds {script.title()} letters, the other {alphabet.title()} ones that look the same"
                yield Alike(mark, written, fault, f"write all marks of one kind in {alphabet.title()} letters")
                break


def _scripts(mark: str) -> list[str]:
    """The scripts of the letters of a mark, as the Unicode names of the letters begin."""
    names = [unicodedata.name(char, "").split(" ")[0] for char in mark if char.isalpha() and not char.isascii()]
    latin = ["LATIN"] if any(char.isascii() and char.isalpha() for char in mark) else []
    return [script for script in dict.fromkeys([*latin, *names]) if script not in _APART]
