"""The comparisons of the calculations of a project: demand, limit, ratio and status for each member."""

from dataclasses import dataclass
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.members import mark
from specgen.documents.origins import follow
from specgen.documents.page_figures import SIGNS, demand_and_limit, measure, tell_ratio
from specgen.model.absence import Absent
from specgen.model.block import Strong, Text, Value
from specgen.model.capacity import Check, Comparison
from specgen.model.field import Path
from specgen.model.source import Kind, Source
from specgen.quantities.comparison import Outcome, Sense
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Provider

OK, EXCEEDS, FALLS_SHORT, NOT_COMPARED = "OK", "Exceeds", "Falls short", "Not compared"
# No clause judges these, so that no verdict rests on them.
UNJUDGED = "outside the verdict in D02"


@dataclass(frozen=True)
class Conclusion:
    """A comparison of one member; without it the limit is still to be given, and `pending` asks for it."""

    check: Check
    member: Path
    comparison: Comparison | None
    pending: DisplayValue | None = None
    lifted_by: str = ""  # the deviation that lifts a stop
    source: Source | None = None  # of the limit, where it is not the project's own
    row: str = ""  # of the limits, where the limit is one of the trade
    codes: tuple[str, ...] = ()  # the clauses that find fault with it

    @property
    def status(self) -> str:
        """OK, what it is not, or that nothing is compared."""
        if self.comparison is None:
            return NOT_COMPARED
        if self.comparison.outcome is Outcome.WITHIN:
            return OK
        word = EXCEEDS if self.comparison.sense is Sense.AT_MOST else FALLS_SHORT
        if not self.check.codes:
            return f"{word}; {UNJUDGED}"
        return f"{word}; deviation {self.lifted_by}" if self.lifted_by else word

    @property
    def use(self) -> float:
        """How much of the limit is used; what is not compared comes first of all."""
        return float(self.comparison.use) if self.comparison is not None else float("inf")

    def sides(self, system: str) -> tuple[str, str, str]:
        """Demand, limit and ratio as they print."""
        if self.comparison is None:
            return "", self.pending.text if self.pending is not None else "", ""
        return *demand_and_limit(self.comparison, system), tell_ratio(self.comparison)


def conclude(context: DocumentContext, provider: Provider, member: Path) -> tuple[Conclusion, ...]:
    """The comparisons of a member; those that do not apply to it are left out."""
    found = (_conclude(context, provider, member, check) for check in provider.checks)
    return tuple(one for one in found if one is not None)


def _conclude(context: DocumentContext, provider: Provider, member: Path, check: Check) -> Conclusion | None:
    at = context.resolve.member(member, provider.name)
    try:
        comparison = check.make(context.project.view(member), lambda name: context.resolve(at, name))
    except Absent as absent:
        # A limit that does not apply here is not waited for.
        if not context.project.applies(absent.path):
            return None
        return Conclusion(check, member, None, context.ask(absent.path))
    if comparison is None:
        return None
    source, row = _find_source(context, check, member), _find_row(context, check)
    lifted, codes = _find_deviation(context, check, member), _find_codes(context, check, member)
    return Conclusion(check, member, comparison, lifted_by=lifted, source=source, row=row, codes=codes)


def _find_source(context: DocumentContext, check: Check, member: Path) -> Source | None:
    """The source of the limit of a check, where it is not the project's own."""
    if not check.limit_from:
        return None
    path = follow(context.project, check.limit_from, member)
    if path is not None:
        return context.display(path).source
    found = find_limit(check.limit_from, context.project).source
    return None if found.kind is Kind.PROJECT else found


def _find_row(context: DocumentContext, check: Check) -> str:
    """The row of the limits that a check is held against; empty where it is held against a field."""
    return check.limit_from if check.limit_from in context.standards.limits else ""


def _find_codes(context: DocumentContext, check: Check, member: Path) -> tuple[str, ...]:
    """The clauses of a check that are raised: where a stop says the same, the caution beside it is silent."""
    about = {member[-1] if member else "project", "project"}
    raised = {f.code for f in context.judgment.findings if not f.subjects or about & set(f.subjects)}
    return tuple(code for code in check.codes if code in raised) or check.codes


def _find_deviation(context: DocumentContext, check: Check, member: Path) -> str:
    """The deviation that lifts the stop of a check."""
    marks = (member[-1] if member else "project", "project")
    found = (f for f in context.judgment.findings if f.code in check.codes and f.lifted_by)
    return next((f.lifted_by or "" for f in found if not f.subjects or set(f.subjects) & set(marks)), "")


def state(context: DocumentContext, conclusion: Conclusion, of_several: bool = False) -> list[Any]:
    """`E1: outward wind pressure 24.3 psf ≤ 60 psf (180 psf / 3), ratio 0.41, OK.`

    The clause that finds fault with it is named, as D05 tells the rest.
    """
    check, comparison = conclusion.check, conclusion.comparison
    codes = f" ({', '.join(conclusion.codes)} in D05)" if conclusion.codes and conclusion.status != OK else ""
    name = f"{mark(conclusion.member)}: {check.demand}" if of_several else check.demand[:1].upper() + check.demand[1:]
    if comparison is None:
        return [f"{name} against {check.limit}, ", conclusion.pending, "; ", _strong(NOT_COMPARED), "."]
    demand, limit, ratio = conclusion.sides(context.first)
    sign = _sign(comparison)
    ratio = f"{'ratio' if comparison.ratio is not None else 'margin'} {ratio}"
    reached = _tell_capacity(comparison, check.limit)
    return [
        f"{name} {demand} {sign} ",
        Value(limit, conclusion.source, about=check.limit, row=conclusion.row),
        f" {check.limit}{reached}; {ratio}; ",
        _strong(conclusion.status),
        f"{codes}.",
    ]


def _sign(comparison: Comparison) -> str:
    """The sign of what is found: the wanted one where it holds, else its opposite."""
    wanted = SIGNS[comparison.sense, comparison.strict]
    return wanted if comparison.outcome is Outcome.WITHIN else {"≤": ">", "<": "≥", "≥": "<"}[wanted]


def _tell_capacity(comparison: Comparison, limit: str) -> str:
    """How a capacity is reached, by its figures: ` (180 psf tested strength / 3 safety factor)`."""
    if comparison.capacity is None:
        return ""
    given = {row.symbol: row for row in comparison.capacity.inputs}
    parts = [
        f"{measure(given[part].value, given[part].unit)} {given[part].name}".removesuffix(f" {limit}")
        if part in given
        else part
        for part in comparison.capacity.steps[-1].expression.replace("*", "×").split()
    ]
    return f" ({' '.join(parts)})"


def _strong(text: str) -> Strong:
    return Strong((Text(text),))
