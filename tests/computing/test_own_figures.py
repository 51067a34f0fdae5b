"""A figure of the trade is asked for by the row it stands in; a literal that equals a row says why it is another's.

A comment `method's own: WHY` on the line of the figure, or on the first line of its statement, marks a figure that the
method brings along and that no row of the limits moves.
"""

import ast
import re
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen.quantities.parse import QuantityError, parse_any_quantity, parse_number
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS
from specgen.standards import load_limits, load_standards
from tests.support import ROOT

FOLDER = ROOT / "specgen" / "computing"
MARK = "method's own: "
# Bare numbers of rows, by the unit they are told in; the others count things.
BARE = {"%", "h", "d", "min"}


def rows() -> dict[Any, str]:
    """The rows of the limits by their figure: a quantity, or a number of percent."""
    found: dict[Any, str] = {}
    for name, limit in load_limits().items():
        if isinstance(limit.value, Quantity):
            found[limit.value] = name
        elif limit.unit == "%":
            found["%", Fraction(limit.value)] = name
        elif limit.unit in BARE:
            found[Quantity.of(limit.value, limit.unit)] = name
    return found


def figures(tree: ast.Module) -> Iterator[tuple[ast.AST, Any]]:
    """Every literal figure with a unit: in a text, beside the name of a unit, or under it."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield from ((node, figure) for figure in written(node.value))
        elif isinstance(node, ast.Call):
            yield from ((node, figure) for figure in called(node))
        elif isinstance(node, ast.Dict):
            for key, value in zip(node.keys, node.values, strict=True):
                if isinstance(key, ast.Constant) and key.value in UNITS:
                    yield from ((node, figure) for n in numbers(value) for figure in measured(n, str(key.value)))


def written(text: str) -> Iterator[Any]:
    """The figure a text is, such as `1/16 in` or `25%`."""
    if text.endswith("%") and (number := number_in(text[:-1].strip())) is not None:
        yield "%", number
    elif text[:1].isdigit():
        try:
            yield parse_any_quantity(text)
        except (QuantityError, ValueError, KeyError):
            return


def number_in(text: str) -> Fraction | None:
    try:
        return parse_number(text)
    except ValueError:
        return None


def called(call: ast.Call) -> Iterator[Any]:
    """The figures of a call: each number among its arguments by each unit among them, in percent where it says so."""
    words = [a.value for a in call.args if isinstance(a, ast.Constant) and isinstance(a.value, str)]
    values = [number for a in call.args for number in numbers(a)]
    values += [number for k in call.keywords if k.arg in ("default", "value") for number in numbers(k.value)]
    values += [n for n in map(number_in, (w for w in words if w[:1].isdigit())) if n is not None]
    for number in values:
        for unit in words:
            yield from measured(number, unit)


def numbers(node: ast.AST) -> list[Fraction]:
    """The literal numbers of an expression that is one, a tuple of them, or a choice between two."""
    if isinstance(node, ast.Constant) and isinstance(node.value, int | float) and not isinstance(node.value, bool):
        return [Fraction(repr(node.value))]
    if isinstance(node, ast.Tuple):
        return [number for part in node.elts for number in numbers(part)]
    return [n for part in (node.body, node.orelse) for n in numbers(part)] if isinstance(node, ast.IfExp) else []


def measured(number: Fraction, unit: str) -> Iterator[Any]:
    if unit in ("%", "percent"):
        yield "%", number
    elif unit in UNITS:
        yield Quantity.of(number, unit)
        if UNITS[unit].dimension == "temperature" and unit != "K":
            yield Quantity.of(number, f"{unit} apart")


def unmarked(source: str) -> list[str]:
    """The rows that a text of ours repeats without a mark, with the line of each."""
    tree, lines, known = ast.parse(source), source.splitlines(), rows()
    for node in ast.walk(tree):
        for child in ast.iter_child_nodes(node):
            child.statement = child if isinstance(child, ast.stmt) else getattr(node, "statement", None)  # type: ignore[attr-defined]
    found = []
    for node, figure in figures(tree):
        statement = getattr(node, "statement", None)
        ends = {getattr(node, "lineno", 0), getattr(node, "end_lineno", 0), statement.lineno if statement else 0}
        if figure in known and not any(MARK in lines[number - 1] for number in ends):
            found.append(f"{getattr(node, 'lineno', 0)}: {known[figure]}")
    return found


@pytest.mark.parametrize("file", sorted(FOLDER.rglob("*.py")), ids=lambda f: str(f.relative_to(FOLDER)))
def test_no_figure_of_a_calculation_equals_a_row_of_the_limits_unless_it_is_the_methods_own(file: Path) -> None:
    assert unmarked(file.read_text("utf-8")) == []


# Lines that a calculation might hold, and whether they repeat a row.
LINES = [
    ('LEFT = Quantity.of("3/4", "in")', True),
    ("LEFT = Quantity.of(0.75, 'in')", True),
    ('LEFT = Quantity.of("3/4", "in")  # method\'s own: a trial', False),
    ('LEFT = Quantity.of("19.05", "mm")', True),
    ('LEFT = Quantity.of("0.7", "in")', False),
    ('key = Key("oversize", "percent", "rod over the width", "25%")', True),
    ('x = given_input("o", "rod over the width", "percent", default=25)', True),
    ('x = given_input(  # method\'s own: a trial\n    "o", "rod", "percent", default=25\n)', False),
    ('MARGIN = {"F": 5.0, "C": 7.0}', True),
    ('MARGIN = {"F": 6.0, "C": 7.0}', False),
    ('row = InputRow("r", "step", 0.25, "in")', True),
    ('row = InputRow("r", "step", 0.3, "in")', False),
    ('limit = "165 F"', True),
    ('hours = Quantity.of(24, "h")', True),
    ('note = "Rules differ from 1/2 in to 1 in of width."', False),
]


@pytest.mark.parametrize(("source", "repeats"), LINES)
def test_a_figure_that_repeats_a_row_would_be_found(source: str, repeats: bool) -> None:
    assert bool(unmarked(source)) is repeats


def test_every_mark_says_why_and_marks_something() -> None:
    for file in sorted(FOLDER.rglob("*.py")):
        lines = file.read_text("utf-8").splitlines()
        for line in lines:
            if MARK in line:
                assert len(line.split(MARK)[1].split()) > 2, line
        plain = "\n".join(line.split(f"  # {MARK}")[0] for line in lines)
        marks = sum(MARK in line for line in lines)
        assert (len(unmarked(plain)) > 0) is (marks > 0), file


def test_no_source_of_a_calculation_rewords_a_row_of_the_sources() -> None:
    """A text that stands among the sources is asked for by the name of its row."""
    known = {(row.kind.name, named(row.reference)) for row in load_standards().sources.values() if row.reference}
    literals = [
        (call.args[0].attr, named(str(call.args[1].value)))
        for file in FOLDER.rglob("*.py")
        for call in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(call, ast.Call) and getattr(call.func, "id", "") == "Source" and len(call.args) == 2
        if isinstance(call.args[0], ast.Attribute) and isinstance(call.args[1], ast.Constant)
    ]
    assert len(literals) > 10
    assert [literal for literal in literals if literal in known] == []


def named(reference: str) -> str:
    """The designation a reference begins with: `ASTM E1980` of `ASTM E1980-11(2019), solar reflectance index`."""
    return re.split(r"[:,(-]", reference)[0].strip()
