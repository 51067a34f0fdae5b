"""Runs the clauses: which fired, on which subjects, at which line, and which could not be judged."""

from collections.abc import Callable, Iterator, Mapping
from functools import partial
from typing import Any, NamedTuple

from specgen.judging.applies import is_waited_for, subjects, walls_of, walls_of_all
from specgen.judging.context import JudgingContext
from specgen.judging.rule import ARGUMENTS, Clause, Rule, Violation
from specgen.judging.subject_names import name_subject
from specgen.model.absence import Absent
from specgen.model.field import Path, bind_path, dotted_path
from specgen.model.finding import Finding, LimitCheck, NotJudged, Place, ToAdd, Told
from specgen.model.project import Project, View
from specgen.model.source import MEMORY, Basis
from specgen.model.standard import Standards
from specgen.model.value_text import Listed, write_units
from specgen.quantities.comparison import Outcome
from specgen.recording.history import history_of
from specgen.resolving.limits_in_force import limit_in_force

_NOTHING = (None, ())


class ClauseOutcome(NamedTuple):
    """The outcome of a clause for one subject: its violations, or the absent fields it waits for."""

    subject: Path
    violations: tuple[Violation, ...] = ()
    waits_for: tuple[str, ...] = ()


class Hit(NamedTuple):
    """A violation of a clause, and the subject it was found at."""

    subject: Path
    violation: Violation


def run_rules(
    context: JudgingContext, rules: tuple[Rule, ...], *, entries: bool = True
) -> tuple[list[Finding], list[NotJudged], list[LimitCheck]]:
    """One finding for each fired clause, the clauses not judged, and the checks of computed values.

    All are in the order of the rules. Without `entries` the clauses on entries of the site record are left to
    `judge_records`.
    """
    findings, waiting, checks = [], [], []
    for clause in (c for rule in rules for c in rule.clauses if not c.of_open_items and (entries or not c.of_entries)):
        outcomes = list(run_clause(context, clause))
        waiting += [_note_not_judged(context.project, clause, o.subject, o.waits_for) for o in outcomes if o.waits_for]
        hits = [Hit(outcome.subject, violation) for outcome in outcomes for violation in outcome.violations]
        if hits:
            findings.append(_finding(context, clause, hits))
        checks += [c for outcome in outcomes for c in _check_limits(context, clause, outcome)]
    return findings, waiting, checks


def run_clause(context: JudgingContext, clause: Clause) -> Iterator[ClauseOutcome]:
    """The outcome of a clause for each of its subjects, an absent collection among them."""
    for subject in subjects(context.project, clause.each):
        if isinstance(subject, Absent):
            yield ClauseOutcome(subject.path, waits_for=tuple(map(dotted_path, subject.paths)))
            continue
        view = context.project.view(subject)
        yield judge_view(context, clause, subject, view, make_arguments(context, clause, subject))


def judge_view(
    context: JudgingContext, clause: Clause, subject: Path, view: View, arguments: Mapping[str, Any]
) -> ClauseOutcome:
    """The outcome of a clause for one subject, by the view of it and the further arguments of the test."""
    try:
        return ClauseOutcome(subject, tuple(clause.test(view, **arguments)))
    except Absent as absent:
        return ClauseOutcome(subject, waits_for=_list_owed(context.project, absent))


def make_arguments(context: JudgingContext, clause: Clause, subject: Path) -> dict[str, Any]:
    """The further arguments a test names: the project, its limit, other limits by name, standards, computed values."""
    if not clause.asks:
        return {}
    shared: dict[str, Callable[[], Any]] = {
        "project": context.project.root,
        "limit": lambda: context.limit(clause.limit) if clause.limit else None,
        "limits": lambda: context.limit,
        "standards": lambda: context.standards,
        "history": lambda: history_of(context.project),
    }
    computed = {name: partial(_resolve, context, subject, name) for name in clause.asks - ARGUMENTS}
    return {name: shared[name]() for name in clause.asks & ARGUMENTS} | computed


def _resolve(context: JudgingContext, subject: Path, name: str) -> Any:
    """A computed value of a subject; raises Absent with all fields it lacks."""
    try:
        return context.resolve(subject, name)
    except Absent as absent:
        # The field that stopped it comes first: if that does not apply, neither does the clause.
        raise Absent(*dict.fromkeys((*absent.paths, *context.resolve.missing(subject, name)))) from absent


def _list_owed(project: Project, absent: Absent) -> tuple[str, ...]:
    """The absent fields that are owed; none if the first does not apply, as then the clause does not either."""
    if not is_waited_for(project, absent.path):
        return ()
    return tuple(dotted_path(path) for path in absent.paths if is_waited_for(project, path))


def _check_limits(context: JudgingContext, clause: Clause, outcome: ClauseOutcome) -> Iterator[LimitCheck]:
    """The limit checks of a clause that used computed values, one for each member they belong to."""
    found = Outcome.MISSING if outcome.waits_for else Outcome.OUTSIDE if outcome.violations else Outcome.WITHIN
    for name in clause.computed if "*" not in outcome.subject else ():
        try:
            member = context.resolve.member(outcome.subject, name)
        except Absent:
            continue
        yield LimitCheck(
            name=name, member=member, code=clause.code, path=bind_path(clause.at, outcome.subject), outcome=found
        )


def _note_not_judged(project: Project, clause: Clause, subject: Path, needs: tuple[str, ...]) -> NotJudged:
    return NotJudged(
        rule=clause.rule.code,
        clause=clause.letter,
        subject=name_subject(project, subject),
        needs=needs,
        walls=walls_of(project, subject),
    )


def _finding(context: JudgingContext, clause: Clause, hits: list[Hit]) -> Finding:
    project, rule = context.project, clause.rule
    places = _find_places(project, clause, hits)
    walls = walls_of_all(project, (hit.subject for hit in hits))
    return Finding(
        rule=rule.code,
        clause=clause.letter,
        severity=clause.severity,
        subjects=tuple(places),
        message=tell_found(context, clause, hits),
        found=join_values(context, clause, hits, "value"),
        wanted=join_values(context, clause, hits, "wanted"),
        place=next(iter(places.values())),
        basis=find_basis(context, clause, hits),
        remedy=tell_remedy(context, clause, hits),
        steps=rule.steps,
        documents=rule.documents,
        step=clause.step,
        walls=walls,
        told=_tell_apart(context, clause, hits),
        places=tuple(places.values()),
        to_add=tuple(dict.fromkeys(line for hit in hits for line in _list_to_add(project, clause, hit))),
    )


def _find_places(project: Project, clause: Clause, hits: list[Hit]) -> dict[str, Place]:
    """The place of the first hit of each subject, by the name of the subject."""
    found: dict[str, Place] = {}
    for hit in hits:
        name = name_subject(project, hit.subject)
        if name not in found:
            found[name] = project.place(bind_place(clause, hit))
    return found


def bind_place(clause: Clause, hit: Hit) -> Path:
    """The path of the field at which a violation stands."""
    return bind_path(hit.violation.at or clause.at, hit.subject)


def _list_to_add(project: Project, clause: Clause, hit: Hit) -> Iterator[ToAdd]:
    """The member that a test asks for, or the field that is found not to be given."""
    at = bind_place(clause, hit)
    if hit.violation.to_add is not None:
        yield hit.violation.to_add
    elif hit.violation.value in _NOTHING and "*" not in at and project.schema.field_at(at) is not None:
        yield from [ToAdd(dotted_path(at))] if not project.is_given(at) and project.get(at) in _NOTHING else []


def _tell_apart(context: JudgingContext, clause: Clause, hits: list[Hit]) -> tuple[Told, ...]:
    """Message and remedy once for all subjects of which the same is told."""
    names_by_texts: dict[tuple[str, str], list[str]] = {}
    for name, group in _group_by_subject(context, hits).items():
        message = _tell_one(context, clause, group, lambda violation: violation.say or clause.say)
        remedy = _tell_one(context, clause, group, lambda violation: violation.remedy or clause.remedy)
        names_by_texts.setdefault((message, remedy), []).append(name)
    return tuple(Told(tuple(names), *texts) for texts, names in names_by_texts.items())


def tell(context: JudgingContext, clause: Clause, hits: list[Hit], sentence: Callable[[Violation], str]) -> str:
    """A sentence of the clause with its figures: once if it is the same for all subjects, else once for each."""
    names_by_text: dict[str, list[str]] = {}
    for name, group in _group_by_subject(context, hits).items():
        names_by_text.setdefault(_tell_one(context, clause, group, sentence), []).append(name)
    if len(names_by_text) == 1 or all(name in text for text, names in names_by_text.items() for name in names):
        return " ".join(names_by_text)
    return " ".join(f"{', '.join(names)}: {text}" for text, names in names_by_text.items())


def _tell_one(context: JudgingContext, clause: Clause, group: list[Hit], sentence: Callable[[Violation], str]) -> str:
    """A sentence of the clause with the figures of one subject; each of several sentences with its own figures."""
    hits_by_text: dict[str, list[Hit]] = {}
    for hit in group:
        hits_by_text.setdefault(context.fill(sentence(hit.violation)), []).append(hit)
    told = (_fill_values(context, clause, text, hits) for text, hits in hits_by_text.items())
    return " ".join(dict.fromkeys(told))


def _fill_values(context: JudgingContext, clause: Clause, text: str, hits: list[Hit]) -> str:
    """A sentence with the values found and wanted in it."""
    found, wanted = (Listed(_print_values(context, clause, hits, part, context.text)) for part in ("value", "wanted"))
    return write_units(text.format(found=found, wanted=wanted))


def tell_found(context: JudgingContext, clause: Clause, hits: list[Hit]) -> str:
    """What the violations of a clause are, with the figures of each subject."""
    return tell(context, clause, hits, lambda violation: violation.say or clause.say)


def tell_remedy(context: JudgingContext, clause: Clause, hits: list[Hit]) -> str:
    """What to do about the violations of a clause, with the figures of each subject."""
    return tell(context, clause, hits, lambda violation: violation.remedy or clause.remedy)


def _group_by_subject(context: JudgingContext, hits: list[Hit]) -> dict[str, list[Hit]]:
    hits_by_name: dict[str, list[Hit]] = {}
    for hit in hits:
        hits_by_name.setdefault(name_subject(context.project, hit.subject), []).append(hit)
    return hits_by_name


def _print_values(context: JudgingContext, clause: Clause, hits: list[Hit], part: str, text: Any) -> list[str]:
    """The printed values of the hits of one subject, each once; those of a tuple apart."""
    texts = []
    for hit in hits:
        value = getattr(hit.violation, part)
        if value is not None:
            field = context.project.schema.field_at(bind_place(clause, hit))
            values = value if isinstance(value, tuple) and value else (value,)
            texts += [context.print_if_limit(one) or text(one, field) for one in values]
    return list(dict.fromkeys(texts))


def join_values(context: JudgingContext, clause: Clause, hits: list[Hit], part: str) -> str:
    """The value of all subjects: once if it is the same, else one for each with its name."""
    texts = {
        name: ", ".join(_print_values(context, clause, group, part, context.data_text))
        for name, group in _group_by_subject(context, hits).items()
    }
    if len(set(texts.values())) == 1:
        return next(iter(texts.values()))
    return "; ".join(text if text == name else f"{text} ({name})" for name, text in texts.items())


def find_basis(context: JudgingContext, clause: Clause, hits: list[Hit]) -> Basis:
    """The sources of the violations themselves where they name any, else those of the clause."""
    own = dict.fromkeys(source for hit in hits for source in hit.violation.sources)
    return Basis(tuple(own)) if own else basis_of(context, clause)


def clause_basis(clause: Clause, standards: Standards) -> Basis:
    """The basis of a clause, apart from any manufacturer's figure."""
    keys = tuple(standards.sources[key] for key in clause.basis)
    own = (standards.limits[clause.limit].source,) if clause.limit else ()
    return Basis(tuple(dict.fromkeys((*own, *keys))) or (MEMORY,))


def basis_of(context: JudgingContext, clause: Clause) -> Basis:
    """The basis of a clause in a project: the manufacturer's document if its figure is in force."""
    basis = clause_basis(clause, context.standards)
    if not clause.limit:
        return basis
    source = limit_in_force(context.project, context.standards.limits[clause.limit])[1]
    return Basis((source, *basis.sources[1:]))
