"""Binds declared clauses: looks up every field, computed value and standards row they name."""

from collections.abc import Iterable, Iterator
from functools import cached_property

from specgen import scheduling
from specgen.judging.clause_condition import ClauseCondition, bind_condition, clause_condition
from specgen.judging.rule import ARGUMENTS, OF_OPEN_ITEMS, STOP, Clause, ClauseDeclaration, Rule, Violation
from specgen.judging.scope import ClauseError, Scope, collections_by_noun
from specgen.model.condition import terms
from specgen.model.field import Path, Schema
from specgen.model.figure_text import figures_asked
from specgen.model.project import View
from specgen.model.standard import Standards
from specgen.model.suggest import suggest


class Binder:
    """Looks up the names in clauses: in the schema, among the calculations and in the standards."""

    def __init__(self, schema: Schema, standards: Standards) -> None:
        self.schema, self.standards = schema, standards

    @cached_property
    def nouns(self) -> dict[str, Path]:
        """The path of each collection by the noun of its members."""
        return collections_by_noun(self.schema)

    @cached_property
    def arguments(self) -> tuple[str, ...]:
        """What a test may take beside its subject."""
        return (*ARGUMENTS, *(name.replace("-", "_") for name in scheduling.names()))

    def bind(self, rule: Rule, clause: ClauseDeclaration) -> Clause:
        """The clause with its names looked up; raises ClauseError, or ConditionError for an invalid condition."""
        asks = clause.asks
        self._check_names(rule, clause, asks)
        each = self._each(clause)
        condition = self._bind_condition(clause, Scope(self.schema, each))
        return Clause(
            rule=rule,
            letter=clause.letter,
            severity=clause.severity,
            say=clause.say,
            each=each,
            basis=tuple(clause.basis.split()),
            limit=clause.limit,
            lift=clause.lift or ("deviation" if clause.severity is STOP else "none"),
            document=clause.document,
            at=condition.at,
            step=clause.step or rule.steps[0],
            remedy=clause.remedy or rule.remedy,
            why=clause.why,
            test=condition.test,
            asks=asks,
            reads=condition.reads,
            compare=condition.compare,
        )

    def _each(self, clause: ClauseDeclaration) -> Path:
        """The collection a clause is judged for: as declared, else that of the first noun among its fields."""
        if clause.each:
            return tuple(clause.each.split("."))
        if clause.test is not None:
            named: Iterable[str] = [clause.at.partition(".")[0]]
        else:
            named = (term.path[0] for term in terms(clause_condition(clause)))
        return next((self.nouns[noun] for noun in named if noun in self.nouns), ())

    def _bind_condition(self, clause: ClauseDeclaration, scope: Scope) -> ClauseCondition:
        if scope.each == OF_OPEN_ITEMS:
            return ClauseCondition(_run_apart, (), ())
        if clause.test is not None:
            return ClauseCondition(clause.test, scope.pattern(clause.at), ())
        return bind_condition(clause, scope)

    def _check_names(self, rule: Rule, clause: ClauseDeclaration, asks: frozenset[str]) -> None:
        """Raise ClauseError for a step, a source, a limit or an argument that there is not."""
        _check("step", [*rule.steps, *clause.step.split()], self.standards.steps)
        _check("source", clause.basis.split(), self.standards.sources)
        asked = figures_asked(f"{clause.say} {rule.remedy} {clause.remedy} {clause.why}")
        _check("limit", [*clause.limit.split(), *asked], self.standards.limits)
        _check("argument of a test", asks - ARGUMENTS, self.arguments)


def _check(kind: str, names: Iterable[str], known: Iterable[str]) -> None:
    for name in names:
        if name not in known:
            raise ClauseError(f"there is no {kind} {name!r}: {suggest(name, known)}")


def _run_apart(subject: View) -> Iterator[Violation]:
    raise AssertionError(f"open items are no members to be judged: {subject}")
