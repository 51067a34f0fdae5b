"""What a rule file is written with: `Rule`, its `clause` decorator, and `found`."""

import inspect
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import Any

from specgen.model.field import Path
from specgen.model.finding import Severity

STOP, CAUTION, NOTE = Severity.STOP, Severity.CAUTION, Severity.NOTE


@dataclass(frozen=True, slots=True)
class Found:
    """One thing a clause fired on: the value met, the limit, and where if not at the last need."""

    value: Any = None
    wanted: Any = None
    at: str | Path = ""


def found(value: Any = None, wanted: Any = None, at: str | Path = "") -> Found:
    """What a clause yields; `at` is the path (stars bound to the subject) the finding stands at."""
    return Found(value, wanted, at)


@dataclass(frozen=True, slots=True)
class Clause:
    """One test of a rule, run for each member of `each` (the project itself where it is empty).

    `needs` are the paths and `calc.` names of its condition; the last is where a finding stands.
    """

    rule: "Rule"
    letter: str
    severity: Severity
    say: str
    needs: tuple[str, ...]
    test: Callable[..., Iterator[Found]]
    each: Path
    basis: tuple[str, ...]
    limit: str
    lift: str
    at: str
    step: str
    asks: frozenset[str]

    @property
    def code(self) -> str:
        """`SLT-03e`."""
        return self.rule.code + self.letter


@dataclass(slots=True)
class Rule:
    """A rule of the trade: remedy, the steps and documents it prints in, and its clauses.

    Of a clause `basis` names rows of the sources, and is that of the limit where it is left out; `lift` is
    `deviation` for a stop unless it says `never`; `step` is the one of the rule's steps at which a procedure
    prints it, the first where it is left out.
    """

    code: str
    title: str
    remedy: str
    steps: tuple[str, ...]
    documents: tuple[str, ...]
    manual: str = ""
    clauses: list[Clause] = field(default_factory=list)

    def __init__(self, code: str, title: str, *, remedy: str, steps: str, documents: str, manual: str | None) -> None:
        self.code, self.title, self.remedy, self.manual = code, title, remedy, manual or ""
        self.steps, self.documents, self.clauses = tuple(steps.split()), tuple(documents.split()), []

    def clause(
        self,
        letter: str,
        severity: Severity,
        say: str,
        *,
        needs: str,
        basis: str = "",
        each: str = "",
        limit: str = "",
        lift: str = "",
        at: str = "",
        step: str = "",
    ) -> Callable[[Any], Any]:
        """Register a test as a clause of this rule; see the class for what each word says."""

        def register(test: Callable[..., Iterator[Found]]) -> Callable[..., Iterator[Found]]:
            self.clauses.append(
                Clause(
                    rule=self,
                    letter=letter,
                    severity=severity,
                    say=say,
                    needs=tuple(needs.split()),
                    test=test,
                    each=tuple(each.split(".")) if each else (),
                    basis=tuple(basis.split()),
                    limit=limit,
                    lift=lift or ("deviation" if severity is STOP else "none"),
                    at=at or needs.split()[-1],
                    step=step or self.steps[0],
                    asks=frozenset(list(inspect.signature(test).parameters)[1:]),
                )
            )
            return test

        return register


def lacks(has: Any, wanted: tuple[str, ...]) -> tuple[str, ...]:
    """Those of `wanted` that a list does not hold, in their order."""
    return tuple(word for word in wanted if word not in has)


def draft(project: Any) -> bool:
    """Whether papers are not owed yet: clauses on papers judge nothing in a design draft."""
    return bool(project.package.purpose == "design_draft")
