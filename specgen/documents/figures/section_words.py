"""Words on a drawing: their size, the room they take, and where a line breaks."""

from dataclasses import dataclass

# Capitals of this type are 2.1 mm high (ISO 3098: at least 1.8 mm by hand or machine; ours at least 2 mm).
SIZE = 3.0
_NARROW, _WIDE = frozenset("iljtfr.,:;'|!()[]- "), frozenset("mwMWQ@%½¼¾⅛")


@dataclass(frozen=True, slots=True)
class WordsOnPaper:
    """One line of words: its place, and which end of it stands there (start, middle, end)."""

    x: float
    y: float
    text: str
    anchor: str = "start"
    bold: bool = False


def measure(text: str) -> float:
    """The width of a line of words in millimeters, rather too much than too little."""
    wide = sum(0.36 if sign in _NARROW else 0.92 if sign in _WIDE else 0.7 if sign.isupper() else 0.58 for sign in text)
    return wide * SIZE


def wrap(text: str, width: float) -> list[str]:
    """The words in lines no wider than a width; a single word may be."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and measure(longer) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
