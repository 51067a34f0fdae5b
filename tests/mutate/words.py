"""Changes of words and figures inside a text."""

import re

FIGURE = re.compile(r"\d+(?:\.\d+)?")
WORD = re.compile(r" (?:not|no|or|and|least|most|more|less|above|below|before|after|at|of|the|with|without|only)(?= )")


def less_a_word(text: str) -> str:
    """A sentence without one of the small words that carry its sense; empty where it has none."""
    found = WORD.search(text)
    return text[: found.start()] + text[found.end() :] if found else ""


def moved_figure(text: str) -> str:
    """A text with its first figure a tenth higher; empty where it has none."""
    found = FIGURE.search(text)
    if not found:
        return ""
    figure = float(found[0])
    moved = figure + 1 if figure == 0 else figure * 1.1
    return f"{text[: found.start()]}{moved:.6g}{text[found.end() :]}"
