"""Runs the clauses: what fired, on which subjects, at which line, and what could not be judged."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from specgen.judging.applies import subjects, waited_for, walls_of
from specgen.judging.rule import Clause, Found, Rule
from specgen.model.field import Path, bound, dotted
from specgen.model.finding import Compared, Finding, NotJudged
from specgen.model.project import Absent, Project
from specgen.model.source import MEMORY, Basis
from specgen.model.standard import Standards
from specgen.model.value_text import raw_text, value_text
from specgen.quantities.comparison import Outcome
from specgen.resolving.limits_in_force import limit_in_force
from specgen.resolving.provider import Resolver


@dataclass(frozen=True)
class Bench:
    """What judging works with: facts, rows of the trade, and the one resolver for computed values."""

    project: Project
    standards: Standards
    resolve: Resolver

    @property
    def first(self) -> str:
        """The unit system printed first, `ip` or `si`."""
        return self.project.system

    def limit(self, name: str) -> Any:
        """The figure in force of a row of the limits."""
        return limit_in_force(self.project, self.standards.limits[name])[0]

    def look(self, name: str) -> Any:
        """The answer of a look-up for the whole project, or None where a field it needs is absent."""
        try:
            return self.resolve((), name).result
        except Absent:
            return None


@dataclass(frozen=True, slots=True)
class Tried:
    """What a clause came to for one subject: what it fired on, or the absent fields it waits for."""

    subject: Path
    hits: tuple[Found, ...] = ()
    waits_for: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Hit:
    subject: Path
    found: Found


def judged(bench: Bench, rules: tuple[Rule, ...]) -> tuple[list[Finding], list[NotJudged], list[Compared]]:
    """Findings, one for each fired clause, what was not judged, and what was held against a computed value, in the
    order of the rules."""
    findings, waiting, against = [], [], []
    for clause in (c for rule in rules for c in rule.clauses if c.each != ("field",)):
        outcomes = list(tried(bench, clause))
        waiting += [_not_judged(bench.project, clause, o.subject, o.waits_for) for o in outcomes if o.waits_for]
        hits = [_Hit(outcome.subject, hit) for outcome in outcomes for hit in outcome.hits]
        if hits:
            findings.append(_finding(bench, clause, hits))
        against += [c for outcome in outcomes for c in _compared(bench, clause, outcome)]
    return findings, waiting, against


def tried(bench: Bench, clause: Clause) -> Iterator[Tried]:
    """The outcome of a clause for each of its subjects, an absent collection among them."""
    for subject in subjects(bench.project, clause.each):
        if isinstance(subject, Absent):
            yield Tried(subject.path, waits_for=(dotted(subject.path),))
            continue
        try:
            hits = tuple(clause.test(bench.project.view(subject), **_asked(bench, clause, subject)))
        except Absent as absent:
            yield Tried(subject, waits_for=_owed_needs(bench, clause, subject, absent.path))
        else:
            yield Tried(subject, hits)


def _asked(bench: Bench, clause: Clause, subject: Path) -> dict[str, Any]:
    """The further arguments a test names: the project, its limit, other limits by name, the trade's rows, and
    the resolver for its subject."""
    asked: dict[str, Any] = {}
    if "project" in clause.asks:
        asked["project"] = bench.project.root()
    if "limit" in clause.asks:
        asked["limit"] = bench.limit(clause.limit)
    if "limits" in clause.asks:
        asked["limits"] = bench.limit
    if "standards" in clause.asks:
        asked["standards"] = bench.standards
    if "resolve" in clause.asks:
        asked["resolve"] = lambda name: bench.resolve(subject, name)
    return asked


def _owed_needs(bench: Bench, clause: Clause, subject: Path, missing: Path) -> tuple[str, ...]:
    """The absent needs that someone owes; none where the field does not apply, and so neither the clause."""
    project, absent = bench.project, []
    if not waited_for(project, missing):
        return ()
    for need in clause.needs:
        if need.startswith("calc."):
            absent += bench.resolve.missing(subject, need.removeprefix("calc."))
            continue
        path = bound(need, subject)
        if "*" not in path and project.get_or_members(path) is None:
            absent.append(path)
    return tuple(dotted(path) for path in dict.fromkeys([*absent, missing]) if waited_for(project, path))


def _compared(bench: Bench, clause: Clause, tried_one: Tried) -> Iterator[Compared]:
    """What a clause that needs computed values says of the members they belong to."""
    outcome = Outcome.MISSING if tried_one.waits_for else Outcome.OUTSIDE if tried_one.hits else Outcome.WITHIN
    for need in clause.needs:
        if need.startswith("calc.") and "*" not in tried_one.subject:
            name = bench.resolve.find(need.removeprefix("calc.")).name
            try:
                member = bench.resolve.member(tried_one.subject, name)
            except Absent:
                continue
            yield Compared(name, member, clause.code, bound(clause.at, tried_one.subject), outcome)


def _not_judged(project: Project, clause: Clause, subject: Path, needs: tuple[str, ...]) -> NotJudged:
    return NotJudged(clause.rule.code, clause.letter, named(project, subject), needs, walls_of(project, subject))


def named(project: Project, subject: Path) -> str:
    """A subject as a reader names it: its mark, `W1 mesh layer 2` for an item, else `project`."""
    if not subject:
        return "project"
    node = project.schema.node(subject[:-1])
    if node.collection is None or node.collection.kind == "mapping":
        return subject[-1]
    for name in ("paragraph", "name"):
        if name in project.schema.node(subject).children and project.given((*subject, name)):
            return f"{node.collection.one} {project.values[(*subject, name)]}"
    above = f"{subject[1]} " if len(subject) > 2 and project.schema.node(subject[:1]).collection else ""
    return f"{above}{node.collection.one} {int(subject[-1]) + 1}"


def _finding(bench: Bench, clause: Clause, hits: list[_Hit]) -> Finding:
    project, rule = bench.project, clause.rule
    at = bound(hits[0].found.at or clause.at, hits[0].subject)
    subjects_named = tuple(dict.fromkeys(named(project, hit.subject) for hit in hits))
    walls = tuple(dict.fromkeys(wall for hit in hits for wall in walls_of(project, hit.subject)))
    return Finding(
        rule.code,
        clause.letter,
        clause.severity,
        subjects_named,
        _message(bench, clause, hits),
        _joined(bench, clause, hits, "value"),
        _joined(bench, clause, hits, "wanted"),
        project.place(at),
        basis_of(bench, clause),
        rule.remedy,
        rule.steps,
        rule.documents,
        clause.step,
        None,
        walls,
    )


def _message(bench: Bench, clause: Clause, hits: list[_Hit]) -> str:
    """The sentence of the clause: once where all subjects say the same, else once for each of them."""
    said: dict[str, list[str]] = {}
    for name, group in _by_subject(bench, hits).items():
        parts = {part: ", ".join(_shown(bench, clause, group, part, value_text)) for part in ("value", "wanted")}
        said.setdefault(clause.say.format(found=parts["value"], wanted=parts["wanted"]), []).append(name)
    if len(said) == 1 or all(name in text for text, names in said.items() for name in names):
        return " ".join(said)
    return " ".join(f"{', '.join(names)}: {text}" for text, names in said.items())


def _by_subject(bench: Bench, hits: list[_Hit]) -> dict[str, list[_Hit]]:
    made: dict[str, list[_Hit]] = {}
    for hit in hits:
        made.setdefault(named(bench.project, hit.subject), []).append(hit)
    return made


def _shown(bench: Bench, clause: Clause, hits: list[_Hit], part: str, text: Any) -> list[str]:
    """The printed values of the hits of one subject, each once."""
    made = []
    for hit in hits:
        value = getattr(hit.found, part)
        if value is not None:
            field = bench.project.schema.field_at(bound(hit.found.at or clause.at, hit.subject))
            made.append(text(value, field, bench.first))
    return list(dict.fromkeys(made))


def _joined(bench: Bench, clause: Clause, hits: list[_Hit], part: str) -> str:
    """The value of all subjects: once where it is the same, else behind each one's name."""
    made = {
        name: ", ".join(_shown(bench, clause, group, part, raw_text))
        for name, group in _by_subject(bench, hits).items()
    }
    if len(set(made.values())) == 1:
        return next(iter(made.values()))
    return "; ".join(shown if shown == name else f"{shown} ({name})" for name, shown in made.items())


def clause_basis(clause: Clause, standards: Standards) -> Basis:
    """What a clause rests on where no maker's figure takes its place."""
    keys = tuple(standards.sources[key] for key in clause.basis)
    own = (standards.limits[clause.limit].source,) if clause.limit else ()
    return Basis(tuple(dict.fromkeys((*own, *keys))) or (MEMORY,))


def basis_of(bench: Bench, clause: Clause) -> Basis:
    """What the clause rests on here: the paper of the maker's figure where that is in force."""
    basis = clause_basis(clause, bench.standards)
    if not clause.limit:
        return basis
    source = limit_in_force(bench.project, bench.standards.limits[clause.limit])[1]
    return Basis((source, *basis.sources[1:]))
