"""The tables of a calculation: the inputs of one member with their origins, and all members with their results."""

from collections import defaultdict
from collections.abc import Callable, Iterable
from typing import Any

from specgen.documents.calculations import Instances
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.origins import find_origin
from specgen.model.block import Formula, Value
from specgen.model.field import Path
from specgen.model.finding import LimitCheck
from specgen.model.value_text import words
from specgen.model.working import InputRow, Working
from specgen.quantities.comparison import Outcome
from specgen.quantities.format import format_decimal, format_unit, raise_power
from specgen.quantities.units import UNITS
from specgen.resolving.provider import Provider

# Up to BESIDE input columns share the table of results; more go to tables of their own, ABREAST columns each.
BESIDE, ABREAST = 4, 7
MOST_NAMED = 6
_SAID = {Outcome.WITHIN: "met", Outcome.OUTSIDE: "not met"}

Column = tuple[Any, Callable[[Path, Working], Any], int]


def inputs(context: DocumentContext, member: Path, working: Working) -> TableView:
    """One row for each input: symbol, name, figure with the mark of its source, unit, origin."""
    lines = []
    for row in working.inputs:
        value, origin_text = _input(context, member, row)
        name = row.name[:1].upper() + row.name[1:]
        lines.append((Formula(row.symbol), name, value, format_unit(row.unit), origin_text))
    return TableView(("Symbol", "Input", "Figure", "Unit", "Comes from"), tuple(lines), (9, 26, 17, 11, 37))


def members(
    context: DocumentContext, provider: Provider, workings: Instances, shared: tuple[str, ...] = ()
) -> tuple[TableView, ...]:
    """Differing inputs and results of the members of one form, in one table or several if there are many columns.

    `shared` are the notes printed elsewhere.
    """
    differing = list(_inputs(context, workings))
    results = list(_results(context, provider, workings, shared))
    parts = []
    while len(differing) > BESIDE:
        parts.append(differing[:ABREAST])
        differing = differing[ABREAST:]
    return tuple(_table(workings, columns) for columns in (*parts, differing + results))


def _table(workings: Instances, columns: list[Column]) -> TableView:
    rows = tuple((mark(m), *(cell(m, w) for _, cell, _ in columns)) for m, w in workings.items())
    shares = [10, *(share for *_, share in columns)]
    widths = [100 * share // sum(shares) for share in shares]
    widths[-1] += 100 - sum(widths)
    return TableView(("For", *(head for head, *_ in columns)), rows, tuple(widths))


def _inputs(context: DocumentContext, workings: Instances) -> Iterable[Column]:
    """A column for each input whose value differs between members."""
    first = next(iter(workings.values()))
    for number, row in enumerate(first.inputs):
        if any(working.inputs[number].value != row.value for working in workings.values()):

            def cell(member: Path, working: Working, number: int = number) -> Value:
                return _input(context, member, working.inputs[number])[0]

            yield _head(row.symbol, row.unit), cell, 10


def _results(
    context: DocumentContext, provider: Provider, workings: Instances, shared: tuple[str, ...]
) -> Iterable[Column]:
    every = list(workings.values())
    for step in every[0].secondary_steps:

        def cell(member: Path, working: Working, symbol: str = step.symbol) -> str:
            return next((figure(line.value) for line in working.secondary_steps if line.symbol == symbol), "")

        yield _head(step.symbol, step.unit), cell, 12
    yield "Result", lambda m, w: result(context, w), 18
    if any(working.governing_case for working in every):
        yield "Governed by", lambda m, w: w.governing_case, 16
    by_member = limit_checks(context, provider)
    if any(by_member[member] for member in workings):
        yield "Held against", lambda m, w: join_cells(describe_check(context, check) for check in by_member[m]), 26
    if any(set(working.notes) - set(shared) for working in every):
        yield "Remark", lambda m, w: " ".join(context.tell(note) for note in w.notes if note not in shared), 30


def _head(symbol: str, unit: str) -> list[Any]:
    return [Formula(symbol), f", {format_unit(unit)}" if unit else ""]


def _input(context: DocumentContext, member: Path, row: InputRow) -> tuple[Value, str]:
    """The figure of an input with the mark of its source, and where it comes from."""
    origin, text = find_origin(context, member, row), figure(row.value)
    # A source mark right behind a superscript would read as part of the exponent.
    apart = "\u00a0" if origin.source is not None and not text.isascii() else ""
    return Value(text + apart, origin.source, about=row.name), origin.text


def figure(value: float) -> str:
    """A number as a table shows it, with up to six digits."""
    return raise_power(format_decimal(value, 6))


def marks(names: list[str]) -> str:
    """The first few marks, and the number of the rest."""
    more = len(names) - MOST_NAMED
    return ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def mark(member: Path) -> str:
    """The member as a table names it."""
    return member[-1] if member else "the project"


def result(context: DocumentContext, working: Working) -> str:
    """The result in trade units, in both unit systems where they differ."""
    if working.unit not in UNITS:
        return f"{figure(working.result)} {working.printed_unit}".strip()
    return context.text(working.rounded, None)


def limit_checks(context: DocumentContext, provider: Provider) -> dict[Path, list[LimitCheck]]:
    """The limit checks of each member: clauses that compare the project with the result, and their outcome."""
    checks: dict[Path, list[LimitCheck]] = defaultdict(list)
    for check in context.judgment.limit_checks:
        if check.name == provider.name and not _is_idle(context, check):
            checks[check.member].append(check)
    return checks


def _is_idle(context: DocumentContext, check: LimitCheck) -> bool:
    """Whether a check passed only because it has nothing to compare: the member lacks a value it does not need."""
    absent = context.project.get_or_members(check.path) is None if "*" not in check.path else False
    return absent and check.outcome is Outcome.WITHIN


def outcome(context: DocumentContext, check: LimitCheck) -> str:
    """The outcome of a check in words: met, not met, by deviation D1."""
    lifted = [f.lifted_by for f in context.judgment.findings if f.code == check.code and f.lifted_by]
    if check.outcome is Outcome.OUTSIDE and lifted:
        return f"by deviation {lifted[0]}"
    return _SAID.get(check.outcome, "not judged yet")


def describe_check(context: DocumentContext, check: LimitCheck) -> list[Any]:
    """`Width of the joint: 5/8 in (15.9 mm), met (SLT-02a)`."""
    field, answer = context.project.schema.field_at(check.path), outcome(context, check)
    if field is None or "*" in check.path:
        return [f"{field.label if field else _label(context, check.path)}: {answer} ({check.code})"]
    return [f"{field.label}: ", context.display(check.path), f", {answer} ({check.code})"]


def _label(context: DocumentContext, path: Path) -> str:
    """The label of a collection, or its name in words."""
    collection = context.project.schema.node(path).collection if "*" not in path else None
    return collection.label if collection is not None else words(path[-1])


def join_cells(parts: Iterable[list[Any]]) -> list[Any]:
    """The content of several cells in one, separated by semicolons."""
    cells: list[Any] = []
    for part in parts:
        cells += [*(["; "] if cells else []), *part]
    return cells
