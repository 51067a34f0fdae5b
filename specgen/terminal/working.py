"""Computed values as text for a terminal, and as data for a program."""

from collections.abc import Mapping
from typing import Any

from specgen.model.field import Path, dotted_path
from specgen.model.problem import Refused
from specgen.model.working import Lookup, Working
from specgen.quantities.format import format_decimal, format_unit
from specgen.quantities.two_systems import tell_in
from specgen.quantities.units import APART
from specgen.terminal.answers import AnswerTable, held_to_data

# The result for one member of a project: a value, a refusal, the absent fields it waits for, or None if it has none.
MemberResult = Working | Lookup | Refused | list[Path] | None

_LEAST_NAME = 34  # columns of the name of a given figure


def format_working(working: Working) -> str:
    """A calculation with its inputs, steps, result, governing case, sources and limits of use."""
    lines = [f"{working.name}", ""]
    width = max(_LEAST_NAME, *(len(given.name) + 1 for given in working.inputs), 0)
    lines += [
        f"  {g.symbol:<8} {g.name:<{width}} {format_decimal(g.value, 6)} {format_unit(g.unit)}".rstrip()
        for g in working.inputs
    ]
    lines.append("")
    for step in working.steps:
        lines.append(f"  {step.symbol:<8} {step.name}")
        lines.append(f"           = {step.expression}")
        lines.append(
            f"           = {step.substitution} = {format_decimal(step.value, 6)} {format_unit(step.unit)}".rstrip()
        )
    governs = f"  (governed by {working.governing_case})" if working.governing_case else ""
    result = working.moment or f"{format_decimal(working.result, 6)} {working.printed_unit}"
    lines += ["", f"  result   {result}{governs}"]
    lines += [
        f"  {s.name}: {format_decimal(s.value, 6)} {format_unit(s.unit)}".rstrip() for s in working.secondary_steps
    ]
    lines.append("")
    lines += [f"  source: {tell_in(source.legend)}" for source in working.source]
    lines += [f"  note: {tell_in(note)}" for note in working.notes]
    return "\n".join(lines) + "\n"


def working_to_data(working: Working) -> dict[str, Any]:
    """The object of `calc --format json`."""
    return {
        "name": working.name,
        "given": {g.name: {"symbol": g.symbol, "value": g.value, "unit": _bare_unit(g.unit)} for g in working.inputs},
        "result": working.moment or float(working.result),
        "unit": "" if working.moment else _bare_unit(working.unit),
        "steps": [
            {
                "symbol": s.symbol,
                "name": s.name,
                "expression": s.expression,
                "substitution": s.substitution,
                "value": float(s.value),
                "unit": _bare_unit(s.unit),
            }
            for s in working.steps
        ],
        "source": "; ".join(tell_in(s.legend) for s in working.source),
        "notes": [*map(tell_in, working.notes), *_note_governing(working)],
    }


def _bare_unit(unit: str) -> str:
    """The unit by its plain name: a temperature difference is given in F or C."""
    return unit.removesuffix(APART)


def _note_governing(working: Working) -> list[str]:
    return [f"Governed by {working.governing_case}."] if working.governing_case else []


def format_lookup(lookup: Lookup) -> str:
    """The answer of a look-up."""
    source = "; ".join(s.legend for s in lookup.source)
    answer = "yes" if lookup.result else "no"
    return f"{lookup.name.replace('-', ' ')}: {answer}, {lookup.why}\n  source: {source}\n"


def format_members(results: Mapping[str, MemberResult]) -> str:
    """The result of each member."""
    return "\n".join(_format_member(mark, value) for mark, value in results.items())


def _format_member(mark: str, value: MemberResult) -> str:
    if isinstance(value, Working):
        return f"{mark}: {format_working(value)}"
    if isinstance(value, Lookup):
        return f"{mark}: {format_lookup(value)}"
    if isinstance(value, Refused):
        return f"{mark}: {'; '.join(str(problem) for problem in value.problems)}\n"
    if value is None:
        return f"{mark}: does not apply\n"
    return f"{mark}: pending {', '.join(dotted_path(path) for path in value)}\n"


def members_to_data(name: str, results: Mapping[str, MemberResult]) -> dict[str, Any]:
    """All values of one calculation in a project as data; `needs` are absent fields, `problems` are refusals."""
    rows: list[dict[str, Any]] = []
    for mark, value in results.items():
        if isinstance(value, Working):
            rows.append({"subject": mark} | working_to_data(value))
        elif isinstance(value, Lookup):
            rows.append({"subject": mark, "name": name, "result": value.result, "why": value.why})
        elif isinstance(value, Refused):
            rows.append({"subject": mark, "name": name, "result": None, "problems": [str(p) for p in value.problems]})
        elif value is None:
            rows.append({"subject": mark, "name": name, "result": None, "applies": False})
        else:
            rows.append({"subject": mark, "name": name, "result": None, "needs": [dotted_path(path) for path in value]})
    return {"name": name, "instances": rows}


def answers_to_data(results: Mapping[str, MemberResult], table: AnswerTable) -> dict[str, Any]:
    """The same with `checks`, what the value of each member is held against."""
    data = members_to_data(table.name, results)
    held = {answer.member: [held_to_data(one) for one in answer.held] for answer in table.answers}
    data["instances"] = [
        row | ({"checks": held[row["subject"]]} if held[row["subject"]] else {}) for row in data["instances"]
    ]
    return data
