"""Suggestions for a mistyped word: the nearest of known ones, or only one that is meant but for a slip of the pen."""

from bisect import bisect_left
from collections.abc import Iterable
from difflib import get_close_matches

# Among more words than these only those that begin or end most alike are compared, so many of each side: a large file
# with a fault on every line is answered as soon as a small one.
_FEW, _BESIDE = 100, 12


def suggest(word: str, known: Iterable[str]) -> str:
    """`did you mean width?`, else the first dozen known words; empty if there are none."""
    words = list(known)
    lower = {name.lower(): name for name in words}
    for asked in dict.fromkeys((word.lower().replace(" ", "_").replace("-", "_"), word.lower())):
        near = get_close_matches(asked, _most_alike(asked, list(lower)), 1, 0.6)
        if near:
            return f"did you mean {lower[near[0]]}?"
    shown = ", ".join(words[:12])
    return f"known: {shown}{', ...' if len(words) > 12 else ''}" if words else ""


def _most_alike(word: str, words: list[str]) -> list[str]:
    """All of a few words; of many those that stand beside the word in order of their beginnings and of their ends."""
    if len(words) <= _FEW:
        return words
    alike = _beside(word, words) + [name[::-1] for name in _beside(word[::-1], [name[::-1] for name in words])]
    return list(dict.fromkeys(alike))


def _beside(word: str, words: list[str]) -> list[str]:
    words.sort()
    at = bisect_left(words, word)
    return words[max(0, at - _BESIDE) : at + _BESIDE]


def find_slip(word: str, known: Iterable[str]) -> str:
    """The one known word that is meant but for a slip of the pen; empty where it is none, or more than one might be.

    About one letter in six may be wrong, missing, one too many, or change places with the next, none of the short names
    of three letters, and the digits agree: what is merely alike may be another thing.
    """
    asked = _letters(word)
    most = (len(asked) + 2) // 6 if len(asked) > 3 else 0
    near: dict[int, list[str]] = {}
    for name in known:
        letters = _letters(name)
        if abs(len(letters) - len(asked)) <= most and _digits(letters) == _digits(asked):
            near.setdefault(_count_slips(asked, letters), []).append(name)
    least = min(near, default=most + 1)
    return near[least][0] if least <= most and len(near[least]) == 1 else ""


def _letters(word: str) -> str:
    return word.lower().translate({ord(sign): None for sign in " _-"})


def _digits(word: str) -> str:
    return "".join(filter(str.isdigit, word))


def _count_slips(one: str, other: str) -> int:
    """How many letters are wrong, missing or too many, or change places with the next."""
    before: list[int] = []
    above = list(range(len(other) + 1))
    for row, letter in enumerate(one, 1):
        here = [row]
        for at, beside in enumerate(other, 1):
            here.append(min(here[-1] + 1, above[at] + 1, above[at - 1] + (letter != beside)))
            if row > 1 and at > 1 and letter == other[at - 2] and one[row - 2] == beside:
                here[-1] = min(here[-1], before[at - 2] + 1)
        before, above = above, here
    return above[-1]
