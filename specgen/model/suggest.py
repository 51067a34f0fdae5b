"""Suggestions for a mistyped word: the nearest of known ones, or only one that is meant but for a slip of the pen."""

import re
from bisect import bisect_left
from collections.abc import Iterable
from difflib import get_close_matches

# Among more words than these only those that begin or end most alike are compared, so many of each side: a large file
# with a fault on every line is answered as soon as a small one.
_FEW, _BESIDE = 100, 12
_LONGEST = 80  # letters of a word with a slip of the pen


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
    of three letters; the digits agree, and of several words each is its own but for such a slip: what is merely alike
    may be another thing.
    """
    near: dict[int, list[str]] = {}
    words = _part(word) if len(word) <= _LONGEST else []
    for name in known if words else ():
        slips = _count_slips(words, _part(name))
        if slips is not None:
            near.setdefault(slips, []).append(name)
    least = min(near, default=0)
    return near[least][0] if near and len(near[least]) == 1 else ""


def _part(text: str) -> list[str]:
    return re.split("[ _-]+", text.strip().lower())


def _count_slips(words: list[str], known: list[str]) -> int | None:
    """How many letters differ; None where it is more than a slip of the pen. Blanks may stand or not."""
    whole, meant = "".join(words), "".join(known)
    if _digits(whole) != _digits(meant):
        return None
    if len(words) != len(known):
        return _count_letters(whole, meant)
    counts = [_count_letters(*pair) for pair in zip(words, known, strict=True)]
    return None if None in counts else sum(count for count in counts if count)


def _digits(word: str) -> str:
    return "".join(filter(str.isdigit, word))


def _count_letters(one: str, other: str) -> int | None:
    """How many letters are wrong, missing, too many, or change places with the next; None for more than a slip.

    Another ending of the same word counts as one.
    """
    most = (len(one) + 2) // 6 if len(one) > 3 else 0
    if (
        min(len(one), len(other)) > 3
        and abs(len(one) - len(other)) < 3
        and (one.startswith(other) or other.startswith(one))
    ):
        return int(one != other)
    if abs(len(one) - len(other)) > most:
        return None
    before: list[int] = []
    above = list(range(len(other) + 1))
    for row, letter in enumerate(one, 1):
        here = [row]
        for at, beside in enumerate(other, 1):
            here.append(min(here[-1] + 1, above[at] + 1, above[at - 1] + (letter != beside)))
            if row > 1 and at > 1 and letter == other[at - 2] and one[row - 2] == beside:
                here[-1] = min(here[-1], before[at - 2] + 1)
        before, above = above, here
    return above[-1] if above[-1] <= most else None
