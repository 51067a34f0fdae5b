"""Rules, workings and the matrix of substrates as text for a terminal."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from specgen.model.field import dotted
from specgen.model.problem import Refused
from specgen.model.working import Lookup, Working
from specgen.quantities.format import decimal, printed_unit
from specgen.quantities.units import APART


def columns(rows: Iterable[Sequence[str]]) -> str:
    """Rows as left-aligned columns, two spaces apart; the last column is as long as it is."""
    table = [list(row) for row in rows]
    widths = [max(len(row[n]) for row in table) for n in range(len(table[0]) - 1)] if table else []
    return "".join(
        "  ".join([*(f"{c:<{w}}" for c, w in zip(row, widths, strict=False)), row[-1]]).rstrip() + "\n" for row in table
    )


def working_text(working: Working, unit: str = "") -> str:
    """A calculation with its inputs, steps, result, what governs, source and limits of use."""
    lines = [f"{working.name}", ""]
    lines += [
        f"  {g.symbol:<8} {g.name:<34} {decimal(g.value, 6)} {printed_unit(g.unit)}".rstrip() for g in working.inputs
    ]
    lines.append("")
    for step in working.steps:
        lines.append(f"  {step.symbol:<8} {step.name}")
        lines.append(f"           = {step.expression}")
        lines.append(f"           = {step.substitution} = {decimal(step.value, 6)} {printed_unit(step.unit)}".rstrip())
    governs = f"  (governed by {working.governing_case})" if working.governing_case else ""
    lines += ["", f"  result   {decimal(working.result, 6)} {working.printed_unit}{governs}"]
    lines += [f"  {s.name}: {decimal(s.value, 6)} {printed_unit(s.unit)}".rstrip() for s in working.secondary_steps]
    lines.append("")
    lines += [f"  source: {source.legend}" for source in working.source]
    lines += [f"  note: {note}" for note in working.notes]
    return "\n".join(lines) + "\n"


def working_data(working: Working) -> dict[str, Any]:
    """The object of `calc --format json`."""
    return {
        "name": working.name,
        "given": {g.name: {"symbol": g.symbol, "value": g.value, "unit": _bare(g.unit)} for g in working.inputs},
        "result": float(working.result),
        "unit": _bare(working.unit),
        "steps": [
            {
                "symbol": s.symbol,
                "name": s.name,
                "expression": s.expression,
                "substitution": s.substitution,
                "value": float(s.value),
                "unit": _bare(s.unit),
            }
            for s in working.steps
        ],
        "source": "; ".join(s.legend for s in working.source),
        "notes": [*working.notes, *_governs(working)],
    }


def _bare(unit: str) -> str:
    """The unit by its name alone: a difference of temperatures is told in F or C."""
    return unit.removesuffix(APART)


def _governs(working: Working) -> list[str]:
    return [f"Governed by {working.governing_case}."] if working.governing_case else []


def lookup_text(lookup: Lookup) -> str:
    """The answer of a look-up."""
    source = "; ".join(s.legend for s in lookup.source)
    answer = "yes" if lookup.result else "no"
    return f"{lookup.name.replace('-', ' ')}: {answer}, {lookup.why}\n  source: {source}\n"


MATRIX_NOTE = """
The board is taken to lie on a fluid-applied weather barrier, the surface to be sound, and an old coating to stay.
yes: no attachment rule speaks against it; measure: allowed with the measure of the rule; no: a rule stops it.
specgen rules CODE tells why.
"""


def instance_text(mark: str, value: Any) -> str:
    """A value of one member, the fields it waits for, or what is unfit."""
    if isinstance(value, Working):
        return f"{mark}: {working_text(value)}"
    if isinstance(value, Lookup):
        return f"{mark}: {lookup_text(value)}"
    if isinstance(value, Refused):
        return f"{mark}: {'; '.join(str(problem) for problem in value.problems)}\n"
    return f"{mark}: waits for {', '.join(dotted(path) for path in value)}\n"


def instances_data(name: str, made: Mapping[str, Any]) -> dict[str, Any]:
    """All values of one name in a project as data; `needs` are the absent fields, `problems` what is unfit."""
    rows = []
    for mark, value in made.items():
        if isinstance(value, Working):
            rows.append({"subject": mark} | working_data(value))
        elif isinstance(value, Lookup):
            rows.append({"subject": mark, "name": name, "result": value.result, "why": value.why})
        elif isinstance(value, Refused):
            rows.append({"subject": mark, "name": name, "result": None, "problems": [str(p) for p in value.problems]})
        else:
            rows.append({"subject": mark, "name": name, "result": None, "needs": [dotted(path) for path in value]})
    return {"name": name, "instances": rows}


def rule_page(code: str, title: str, manual: str, remedy: str, clauses: Iterable[tuple[str, ...]]) -> str:
    """The manual page of a rule: reason, examples, and each clause with severity, message and basis."""
    lines = [f"{code}  {title}", "", manual.strip(), "", "clauses"]
    for letter, severity, lift, said, basis in clauses:
        lines += [f"  {code}{letter}  {severity}{lift}", f"      {said}", f"      basis: {basis}"]
    return "\n".join([*lines, "", f"measure: {remedy}"]) + "\n"


def explained_lines(code: str, title: str, remedy: str, clauses: Iterable[Any]) -> str:
    """A rule with the numbers of a project: each clause and subject, what it came to, and by which figures."""
    lines = [f"{code}  {title}", ""]
    for clause in clauses:
        lines.append(f"{clause.code} {clause.severity}, {clause.subject}: {clause.outcome}")
        lines += [f"    {name} = {text}" if name != "limit" else f"    limit: {text}" for name, text in clause.figures]
    return "\n".join([*lines, "", f"measure: {remedy}"]) + "\n"
