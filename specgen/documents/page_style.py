"""A firm's own looks of the web page: held against lists of what a style sheet may ask for.

Whatever a style sheet fetches it fetches by a function or an at-rule. Where no sign is written as an escape, each of
them stands in the text by its own name; so every such name is held against a list, wherever it stands.
"""

import re

from specgen.documents.template_mistakes import Mistake
from specgen.model.suggest import suggest

_RULES = ("media", "page", "supports", "charset", "keyframes")
_MARGINS = tuple(f"{edge}-{place}" for edge in ("top", "bottom") for place in ("left", "center", "right"))
_MEASURES = ("var", "calc", "min", "max", "clamp", "attr", "counter", "counters", "repeat", "minmax", "fit-content")
_COLORS = ("rgb", "rgba", "hsl", "hsla", "linear-gradient", "radial-gradient", "repeating-linear-gradient")
_SHAPES = ("inset", "circle", "ellipse", "polygon", "translate", "translatex", "translatey", "rotate", "scale", "url")
_CHOICES = (
    "not",
    "is",
    "where",
    "has",
    "nth-child",
    "nth-last-child",
    "nth-of-type",
    "nth-last-of-type",
    "lang",
    "dir",
)
_FUNCTIONS = (*_MEASURES, *_COLORS, *_SHAPES, *_CHOICES)
_SIGNS = re.compile(r"[\\<]|@(?P<rule>[-\w]*)|(?<![-\w])(?P<name>[-\w]++)\(")
_PICTURE = re.compile(r"""\s*(["']?)data:image/(?:png|jpeg|gif|webp);base64,[A-Za-z0-9+/=]*\1\s*\)""")


def check_style(text: str, line: int = 1) -> None:
    """Raise Mistake, its line counted from `line`, for a style that asks for anything outside the page or hides it."""
    for sign in _SIGNS.finditer(text):
        fault = _find_fault(sign)
        if fault is not None:
            raise Mistake(*fault, line + text.count("\n", 0, sign.start()))


def _find_fault(sign: re.Match[str]) -> tuple[str, str] | None:
    """What is wrong with a sign of a style sheet, and what would be right; None for nothing."""
    rule, name = sign["rule"], (sign["name"] or "").lower()
    if rule is not None:
        hint = suggest(rule, _RULES)
        return None if rule.lower() in (*_RULES, *_MARGINS) else (f"@{rule} has no place in the looks of a page", hint)
    if not name:
        return (
            f"{sign[0]} has no place in the looks of a page",
            "write the letter itself, and max-width for a comparison",
        )
    if name not in _FUNCTIONS:
        return f"{name}( has no place in the looks of a page", suggest(name, _FUNCTIONS)
    if name == "url" and not _PICTURE.match(sign.string, sign.end()):
        return "url( asks for something outside the page", "put the picture into the file: data:image/png;base64,..."
    return None
