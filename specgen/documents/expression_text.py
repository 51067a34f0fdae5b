"""An expression of a working as words of a line: symbols set as formulas, signs as text, so that it wraps."""

import re
from collections.abc import Mapping
from typing import Any

from specgen.documents.page_figures import figure
from specgen.model.block import Emphasis, Formula, Text

_TOKEN = re.compile(
    r"(?P<name>[A-Za-z_]\w*)(?P<power>\^\d)?(?P<call>\()?|(?P<number>\d+\.?\d*(?:e[-+]?\d+)?)(?P<raised>\^\d)?"
    r"|\)\^(?P<behind>\d)|(?P<sign>[-+*/^,()])|\s+"
)
# What keeps a float on its step is no part of the formula.
_NOISE = re.compile(r" - (?:1e-9|0\.000001)(?=\))")
_SIGNS = {"*": " × ", "/": " / ", "+": " + ", "-": " \u2212 ", ",": ", "}
_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
MOST_TERMS = 4


def spell_formula(expression: str) -> list[Any]:
    """The expression with its symbols: `T_a + (1 − SR) × H`."""
    return _spell(expression, {})


def spell_figures(expression: str, values: Mapping[str, float]) -> str:
    """The expression with figures in place of its symbols; the plain result where it has no sign."""
    return "".join(map(str, _spell(expression, values)))


def shorten(expression: str) -> str:
    """A long sum by its first terms."""
    terms = expression.split(" + ")
    return " + ".join(terms[:MOST_TERMS]) if "(" not in expression and len(terms) > MOST_TERMS + 1 else expression


def _spell(expression: str, values: Mapping[str, float]) -> list[Any]:
    parts: list[Any] = []
    before = ""
    for token in _TOKEN.finditer(_NOISE.sub("", expression)):
        if not token[0].strip():
            continue
        parts += _set_token(token, values, before)
        before = token[0]
    return _join(parts)


def _set_token(token: re.Match[str], values: Mapping[str, float], before: str) -> list[Any]:
    if token["name"]:
        return _set_name(token, values)
    if token["number"]:
        return [figure(float(token["number"]), 9) + _raise(token["raised"])]
    if token["behind"]:
        return [f"){token['behind'].translate(_RAISED)}"]
    if token["sign"] == "-" and (not before or before[-1] in "(*/^,+-"):
        return ["\u2212"]
    return [_SIGNS.get(token["sign"], token["sign"])]


def _set_name(token: re.Match[str], values: Mapping[str, float]) -> list[Any]:
    name = token["name"]
    if token["call"]:
        return [f"{name}("]
    if name not in values:
        # A letter alone is as well in italics, and lines stay low.
        alone = len(name) == 1 and not token["power"]
        return [Emphasis((Text(name),)) if alone else Formula(name + (token["power"] or ""))]
    text = figure(values[name]).replace("-", "\u2212")
    bare = values[name] >= 0 and ("×" not in text or not token["power"])
    return [(text if bare else f"({text})") + _raise(token["power"])]


def _raise(power: str | None) -> str:
    return power[1:].translate(_RAISED) if power else ""


def _join(parts: list[Any]) -> list[Any]:
    """The parts with texts side by side made one."""
    joined: list[Any] = []
    for part in parts:
        if joined and isinstance(part, str) and isinstance(joined[-1], str):
            joined[-1] += part
        else:
            joined.append(part)
    return joined
