"""The tables of a sheet of calculation: what is given, the steps, and all members with their results."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from functools import partial
from typing import Any

from specgen.documents.calculations import Instances, equal_in_all
from specgen.documents.comparisons import Conclusion
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.expression_text import shorten, spell_figures, spell_formula
from specgen.documents.layer_table import of_layers
from specgen.documents.members import mark, marks, name_sheets
from specgen.documents.origins import find_origin, is_of_method
from specgen.documents.page_figures import DIGITS, figure, measure, name_unit, settle
from specgen.model.block import Value
from specgen.model.field import Path
from specgen.model.source import Kind
from specgen.model.working import InputRow, Step, Working
from specgen.quantities.units import UNITS
from specgen.resolving.provider import Provider

# More columns than these go to a table of their own.
ABREAST = 8
_FIGURES = re.compile(r"[\d.,/-]+")

Column = tuple[Any, Callable[[Path, Working], Any], int]
Numbers = dict[str, int]


def given(
    context: DocumentContext, member: Path, rows: Sequence[InputRow], said: Sequence[tuple[str, str]], numbers: Numbers
) -> TableView:
    """What is given, two inputs abreast: name and symbol, and value with the mark of its source, or words."""
    return set_abreast("Given", [*(_given_cells(context, member, row, numbers) for row in rows), *said])


def set_abreast(head: str, cells: Sequence[tuple[Any, Any]]) -> TableView:
    """Names and values, down two pairs of columns."""
    height = -(-len(cells) // 2)
    beside = [*cells[height:], *([("", "")] if len(cells) % 2 else [])]
    lines = tuple((*left, *right) for left, right in zip(cells[:height], beside, strict=True))
    return TableView((head, "Value") * 2, lines, (36, 14) * 2)


def given_in_line(
    context: DocumentContext,
    member: Path,
    rows: Sequence[InputRow],
    said: Sequence[tuple[str, str]],
    numbers: Numbers,
    digits: int = DIGITS,
) -> list[Any]:
    """What is given for all members, on one line."""
    told: list[Any] = []
    for row in rows:
        name, value = _given_cells(context, member, row, numbers, digits)
        told += ["; " if told else "", *name, "\u00a0= ", replace(value, lettered=True)]
    for head, text in said:
        told += ["; " if told else "", f"{head}: {text}"]
    return told[1:]


def _given_cells(
    context: DocumentContext, member: Path, row: InputRow, numbers: Numbers, digits: int = DIGITS
) -> tuple[Any, Any]:
    origin = find_origin(context, member, row)
    number = numbers.get(origin.calculation)
    behind = f" (calculation {number})" if number else ", default" if origin.default else ""
    behind += f" ({origin.words})" if origin.words else ""
    return [f"{_capital(row.name)}{behind}, ", *spell_formula(row.symbol)], value_cell(context, member, row, digits)


def value_cell(context: DocumentContext, member: Path, row: InputRow, digits: int = DIGITS) -> Value:
    """The value of an input with the mark of its source."""
    source, text = find_origin(context, member, row).source, measure(row.value, row.unit, context.first, digits)
    source = None if source is not None and source.kind is Kind.COMPUTED else source
    # A source mark right behind a superscript would read as part of the exponent.
    apart = "\u00a0" if source is not None and text[-1:] in "⁰¹²³⁴⁵⁶⁷⁸⁹" else ""
    return Value(text + apart, source, about=row.name, row=row.limit)


def constants(workings: Instances) -> list[InputRow]:
    """The inputs that the method sets, the same for all members."""
    first = next(iter(workings.values()))
    return [row for row in first.inputs if is_of_method(row) and equal_in_all(workings, row)]


def formulas(steps: Iterable[Step]) -> list[Any]:
    """The formulas of steps whose figures stand in a table of the members, on one line."""
    told: list[Any] = []
    for step in steps:
        told += ["; " if told else "", f"{step.name} ", *spell_formula(step.symbol), " = ", *_formula(step)]
    return told[1:]


def _formula(step: Step) -> list[Any]:
    short = shorten(step.expression)
    return [*spell_formula(short), *([" + …"] if short != step.expression else [])]


def steps_in_full(context: DocumentContext, steps: Sequence[Step], known: dict[Any, int], layered: bool) -> TableView:
    """Each step as formula, with its figures, and its value; those worked on an earlier sheet by their values."""
    fresh = [step for step in steps if step_key(step) not in known]
    repeated = [step for step in steps if step_key(step) in known]
    lines = [_repeated(context, repeated, known)] if repeated else []
    lines += [_step_cells(context, step, layered) for step in fresh]
    return TableView(("Step", "Formula, with figures", "Value"), tuple(lines), (24, 62, 14))


def step_key(step: Step) -> Any:
    """What two steps share that are worked by the same formula."""
    return step.symbol, step.name, step.expression, step.unit


def _step_cells(context: DocumentContext, step: Step, layered: bool) -> tuple[Any, ...]:
    formula = [*spell_formula(step.symbol), " = ", *spell_formula(step.expression)]
    if step.values and not (layered and of_layers(step)):
        formula.append(f" = {spell_figures(step.expression, dict(step.values))}")
    return _capital(step.name), formula, measure(step.value, step.unit, context.first)


def _repeated(context: DocumentContext, steps: list[Step], known: dict[Any, int]) -> tuple[Any, ...]:
    numbers = sorted({known[step_key(step)] for step in steps})
    told: list[Any] = []
    for step in steps:
        told += [
            *(["; "] if told else []),
            *spell_formula(step.symbol),
            f" = {measure(step.value, step.unit, context.first)}",
        ]
    last = measure(steps[-1].value, steps[-1].unit, context.first)
    return f"By the formulas of {name_sheets(numbers)}", told, last


def members(
    context: DocumentContext, provider: Provider, workings: Instances, concluded: dict[Path, tuple[Conclusion, ...]]
) -> tuple[TableView, ...]:
    """All members: the inputs that vary, the result, and each comparison with its ratio and status."""
    columns = [
        *_said(workings),
        *(_input_column(context, row) for row in in_columns(provider, workings)),
        *_stepped(context, provider, workings),
    ]
    columns += [*_results(context, provider, workings), *_checks(context, provider, concluded)]
    columns += _remarks(context, workings)
    parts = [columns[at : at + ABREAST] for at in range(0, len(columns), ABREAST)]
    return tuple(_table(workings, part) for part in parts)


def _table(workings: Instances, columns: list[Column]) -> TableView:
    """Members whose cells are the same share a row."""
    alike: dict[tuple[Any, ...], list[str]] = {}
    for member, working in workings.items():
        alike.setdefault(tuple(cell(member, working) for _, cell, _ in columns), []).append(mark(member))
    rows = tuple((marks(names), *cells) for cells, names in alike.items())
    shares = [9, *(share for *_, share in columns)]
    widths = [100 * share // sum(shares) for share in shares]
    widths[-1] += 100 - sum(widths)
    return TableView(("For", *(head for head, *_ in columns)), rows, tuple(widths))


def in_columns(provider: Provider, workings: Instances) -> list[InputRow]:
    """The inputs that vary between members, which columns show; of too many to read, those that the table names."""
    named: dict[tuple[str, str], InputRow] = {}
    for working in workings.values():
        for row in working.inputs:
            named.setdefault((row.symbol, row.unit), row)
    varying = [row for row in named.values() if not equal_in_all(workings, row)]
    return varying if len(varying) <= ABREAST else [row for row in varying if row.symbol in provider.columns]


def said_by_all(workings: Instances) -> list[tuple[str, str]]:
    """What every working rests on in the same words."""
    first = next(iter(workings.values()))
    return [one for one in first.said if all(one in working.said for working in workings.values())]


def _said(workings: Instances) -> Iterable[Column]:
    """A column for what the workings rest on in words of their own."""
    heads = {head: None for working in workings.values() for head, _ in working.said}
    shared = {head for head, _ in said_by_all(workings)}
    for head in heads:
        if head not in shared:
            yield head, partial(_find_said, head), 24


def _find_said(head: str, member: Path, working: Working) -> str:
    return dict(working.said).get(head, "")


def _input_column(context: DocumentContext, row: InputRow) -> Column:
    def cell(member: Path, working: Working) -> Any:
        own = next((r for r in working.inputs if (r.symbol, r.unit) == (row.symbol, row.unit)), None)
        if own is None:
            return ""
        whole = measure(own.value, own.unit, context.first)
        source = find_origin(context, member, own).source
        return Value(bare(own.value, own.unit), source, about=own.name, row=own.limit, full=whole)

    return _head(row.symbol, row.unit, context.first), cell, 10


def bare(value: float, unit: str) -> str:
    """The number alone, as a column of its unit shows it: a trade fraction of inches, an R-value."""
    return measure(value, unit).removesuffix("\u00a0in") if unit in ("in", "R") else figure(value)


def _stepped(context: DocumentContext, provider: Provider, workings: Instances) -> list[Column]:
    """A column for each step that the table shows in place of a working in full."""
    shown: dict[str, Step] = {}
    for working in workings.values():
        for step in working.steps:
            if step.symbol in provider.columns:
                shown.setdefault(step.symbol, step)
    return [_step_column(context, step) for step in shown.values()]


def _step_column(context: DocumentContext, step: Step) -> Column:
    def cell(member: Path, working: Working) -> str:
        return next((bare(s.value, s.unit) for s in working.steps if s.symbol == step.symbol), "")

    return _head(step.symbol, step.unit, context.first), cell, 11


def _results(context: DocumentContext, provider: Provider, workings: Instances) -> Iterable[Column]:
    if not provider.columns:
        symbols = {_result_symbol(working) for working in workings.values()}
        of = ["Result ", *spell_formula(symbols.pop())] if len(symbols) == 1 else "Result"
        yield of, lambda m, w: result(context, provider, w), 15
    if len({working.governing_case for working in workings.values()}) > 1:
        yield "Governed by", lambda m, w: w.governing_case, 15


def _result_symbol(working: Working) -> str:
    return [step.symbol for step in working.steps if (step.value, step.unit) == (working.result, working.unit)][-1]


def _checks(
    context: DocumentContext, provider: Provider, concluded: dict[Path, tuple[Conclusion, ...]]
) -> Iterable[Column]:
    for check in provider.checks:
        if any(one.check is check for each in concluded.values() for one in each):

            def cell(member: Path, working: Working, check: Any = check) -> str:
                found = next((one for one in concluded[member] if one.check is check), None)
                return (
                    "" if found is None else ", ".join(p for p in (*found.sides(context.first)[1:], found.status) if p)
                )

            made = [one.comparison for each in concluded.values() for one in each if one.check is check]
            is_margin = any(made) and all(one.ratio is None for one in made if one is not None)
            yield f"{_capital(check.limit)}, {'margin' if is_margin else 'ratio'}, status", cell, 18


def _remarks(context: DocumentContext, workings: Instances) -> Iterable[Column]:
    """A column of the notes that differ in more than their figures."""
    alike = [{_FIGURES.sub("#", note) for note in working.notes} for working in workings.values()]
    common = set.intersection(*alike)
    if any(each - common for each in alike):
        yield (
            "Remark",
            lambda m, w: " ".join(context.tell(note) for note in w.notes if _FIGURES.sub("#", note) not in common),
            24,
        )


def _head(symbol: str, unit: str, system: str) -> list[Any]:
    # An R-value bears its unit before its figure.
    return [*spell_formula(symbol), f", {name_unit(unit, system)}" if unit and unit != "R" else ""]


def result(context: DocumentContext, provider: Provider, working: Working) -> str:
    """The result, and what is bought for it."""
    told = settle(working.result, working.unit, context.first)
    more = {step.symbol: step for step in working.secondary_steps}
    if provider.upper in more:
        return f"{told} to {settle(more[provider.upper].value, working.unit, context.first)}"
    bought = more.get(provider.buy)
    if bought is None:
        return told
    word = "" if bought.unit in UNITS else f" {bought.name.removesuffix('s') if bought.value == 1 else bought.name}"
    use = f"{measure(bought.value, bought.unit, context.first)}{word}"
    return told if use == told else f"{told}, use {use}"


def total(context: DocumentContext, workings: Instances) -> str:
    """The sum of the results of all members."""
    first = next(iter(workings.values()))
    return f"total {settle(sum(float(working.result) for working in workings.values()), first.unit, context.first)}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
