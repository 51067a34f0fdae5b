"""Words in series, as a sentence names them."""

from collections.abc import Iterable


def join_series(words: Iterable[str], last: str = "and") -> str:
    """`a`; `a and b`; `a, b, and c`: with `last` before the last of them."""
    told = list(words)
    if len(told) < 3:
        return f" {last} ".join(told)
    return f"{', '.join(told[:-1])}, {last} {told[-1]}"
