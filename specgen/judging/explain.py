"""Why a rule says what it says of this project: each clause with the numbers it was judged by."""

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.judging.engine import Bench, Tried, named, tried
from specgen.judging.rule import Clause, Rule
from specgen.model.field import Path, bound, dotted
from specgen.model.project import Absent
from specgen.model.value_text import value_text
from specgen.model.working import Lookup, Working
from specgen.resolving.limits_in_force import limit_in_force


@dataclass(frozen=True, slots=True)
class Explained:
    """One clause for one subject: `outcome` is fires, does not fire, or waits; `figures` are name and text."""

    code: str
    severity: str
    subject: str
    outcome: str
    figures: tuple[tuple[str, str], ...]


def explained(bench: Bench, rule: Rule, code: str) -> Iterator[Explained]:
    """Every clause of a rule (or the one whose code it is), for every subject of the project."""
    for clause in rule.clauses:
        if clause.each != ("field",) and code in (rule.code, clause.code):
            for outcome in tried(bench, clause):
                yield Explained(
                    clause.code,
                    str(clause.severity),
                    named(bench.project, outcome.subject),
                    _said(outcome),
                    tuple(_figures(bench, clause, outcome.subject)),
                )


def _said(outcome: Tried) -> str:
    if outcome.waits_for:
        return f"waits for {', '.join(outcome.waits_for)}"
    return "fires" if outcome.hits else "does not fire"


def _figures(bench: Bench, clause: Clause, subject: Path) -> Iterator[tuple[str, str]]:
    for need in clause.needs:
        yield need if need.startswith("calc.") else dotted(bound(need, subject)), _figure(bench, need, subject)
    if clause.limit:
        row = bench.standards.limits[clause.limit]
        value, source = limit_in_force(bench.project, row)
        field = bench.project.schema.field_at(row.field) if row.field else None
        unit = f" {row.unit}" if row.unit else ""
        yield "limit", f"{row.sense.value} {value_text(value, field, bench.first)}{unit} ({source.legend})"


def _figure(bench: Bench, need: str, subject: Path) -> str:
    try:
        if need.startswith("calc."):
            found = bench.resolve(subject, need.removeprefix("calc."))
            return _computed(found)
        path = bound(need, subject)
        if "*" in path:
            return "any"
        value = bench.project.get_or_members(path)
        return "absent" if value is None else value_text(value, bench.project.schema.field_at(path), bench.first)
    except Absent:
        return "absent"


def _computed(found: object) -> str:
    if isinstance(found, Lookup):
        return f"{'yes' if found.result else 'no'}, {found.why}"
    if isinstance(found, Working):
        return f"{found.result:.4g} {found.printed_unit}"
    return str(found)
