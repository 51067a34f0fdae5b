"""Suggestions for a mistyped word."""

from collections.abc import Iterable
from difflib import get_close_matches


def suggest(word: str, known: Iterable[str]) -> str:
    """`did you mean width?`, else the first dozen known words; empty if there are none."""
    words = list(known)
    lower = {name.lower(): name for name in words}
    near = get_close_matches(word.lower().replace(" ", "_").replace("-", "_"), lower, 1, 0.6)
    near = near or get_close_matches(word.lower(), lower, 1, 0.6)
    if near:
        return f"did you mean {lower[near[0]]}?"
    shown = ", ".join(words[:12])
    return f"known: {shown}{', ...' if len(words) > 12 else ''}" if words else ""
