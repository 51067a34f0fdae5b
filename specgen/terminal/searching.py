"""Words that a user looks for in the manual."""

from collections.abc import Iterable


def tells_of(words: Iterable[str], texts: Iterable[str]) -> bool:
    """Whether every word stands somewhere in the texts, in any case, with blanks or underscores between its parts."""
    told = _plain(" ".join(texts))
    return all(_plain(word) in told for word in words)


def _plain(text: str) -> str:
    return " ".join(text.casefold().replace("_", " ").split())
