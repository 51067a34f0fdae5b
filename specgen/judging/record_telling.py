"""What is told of a clause that fired on an entry of the site record: once of all on which the same is found."""

from collections.abc import Hashable, Iterator
from datetime import date
from typing import Any, NamedTuple

from specgen.judging.context import JudgingContext
from specgen.judging.deviations import Lifted, weigh
from specgen.judging.engine import ClauseOutcome, Hit, find_basis, join_values, tell_found, tell_remedy
from specgen.judging.record_group import tell_apart
from specgen.judging.record_readings import name_field
from specgen.judging.rule import Clause, Violation
from specgen.model.record import Entry
from specgen.model.record_judgment import Nonconformance
from specgen.model.source import Basis, Source
from specgen.model.value_text import long_date, part_twins
from specgen.resolving.limits_in_force import plan_source


class _Texts(NamedTuple):
    """What is told of a violation, whichever entry it stands in."""

    message: str
    found: str
    wanted: str
    basis: Basis
    remedy: str


class Teller:
    """Makes nonconformances; what is told of the same violation of a clause is put into words once."""

    def __init__(self, context: JudgingContext) -> None:
        self.context = context
        self._known: dict[Hashable, _Texts] = {}
        self._weights: dict[str, Lifted] = {}

    def tell(self, clause: Clause, entry: Entry, outcome: ClauseOutcome, number: int) -> Iterator[Nonconformance]:
        """The nonconformances of an outcome, numbered from `number` on."""
        lifted = self._weigh(clause)
        for place, violation in enumerate(outcome.violations):
            texts = self._find_texts(clause, Hit(outcome.subject, violation))
            yield Nonconformance(
                number=number + place,
                code=clause.code,
                severity=lifted.severity,
                entry=entry,
                field=name_field(clause, violation),
                message=f"{texts.message} {lifted.why_not}".rstrip(),
                found=texts.found,
                wanted=texts.wanted,
                basis=texts.basis,
                remedy=texts.remedy,
                documents=clause.rule.documents,
                steps=clause.rule.steps,
                lifted_by=lifted.by,
            )

    def _weigh(self, clause: Clause) -> Lifted:
        """The weight of a clause in this project."""
        if clause.code not in self._weights:
            self._weights[clause.code] = weigh(self.context.project, clause.code, clause.severity, clause.lift)
        return self._weights[clause.code]

    def _find_texts(self, clause: Clause, hit: Hit) -> _Texts:
        found = hit.violation
        key = (clause.code, *map(_mark, (found.value, found.wanted)), found.at[-1:], found.sources, found.remedy)
        if key not in self._known:
            self._known[key] = self._make_texts(clause, hit)
        return self._known[key]

    def _make_texts(self, clause: Clause, hit: Hit) -> _Texts:
        context, hits = self.context, [hit]
        limit = self._find_limit_source(clause, hit.violation)
        basis = find_basis(context, clause, hits)
        told = (join_values(context, clause, hits, part) for part in ("value", "wanted"))
        found, wanted = part_twins(*told)
        if isinstance(hit.violation.wanted, date):
            wanted = long_date(hit.violation.wanted)
        return _Texts(
            message=tell_found(context, clause, hits),
            found=found,
            wanted=wanted,
            basis=basis if limit is None else Basis(tuple(dict.fromkeys((limit, *basis.sources)))),
            remedy=tell_remedy(context, clause, hits),
        )

    def _find_limit_source(self, clause: Clause, found: Violation) -> Source | None:
        """Where a limit comes from that the project sets: its own file, its coating source, or what is usual."""
        if clause.limit or found.sources or found.wanted is None:
            return None
        project = self.context.project
        for name in clause.reads:
            path = tuple(name.split("."))
            field = project.schema.field_at(path)
            if "*" not in path and field is not None and project.get(path) == found.wanted:
                return plan_source(project, path, field, self.context.standards)
        return None


def _mark(value: Any) -> Hashable:
    """What two values share that are told alike; each value that cannot be looked up stands for itself."""
    try:
        hash(value)
    except TypeError:
        return id(value)
    mark: Hashable = tell_apart(value)
    return mark
