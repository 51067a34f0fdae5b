"""Suggestions for a mistyped word."""

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
