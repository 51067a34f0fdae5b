"""All of one calculation in a project: its values, and the answers that their declarations make of them."""

from collections.abc import Iterator
from typing import NamedTuple

from specgen.documents.page_figures import demand_and_limit, settle, tell_ratio, vapor_pressure, vapor_unit
from specgen.model.absence import Absent
from specgen.model.capacity import Check
from specgen.model.field import Path, dotted_path
from specgen.model.problem import Refused
from specgen.model.project import Project
from specgen.model.value_text import value_text
from specgen.model.working import Lookup, Step, Working
from specgen.resolving.provider import Provider, Resolver
from specgen.terminal.answers import Answer, AnswerTable, Held
from specgen.terminal.working import MemberResult

WHOLE = "project"


class Computed(NamedTuple):
    """The values of a calculation by the mark of its member, and what they answer."""

    values: dict[str, MemberResult]
    table: AnswerTable


def compute_members(resolver: Resolver, provider: Provider) -> Computed:
    """All of one calculation in a project; a member that lacks a field, or has an unfit one, says so."""
    members = {path[-1] if path else WHOLE: path for path in provider.members(resolver.project)}
    values = {mark: _compute(resolver, path, provider.name) for mark, path in members.items()}
    answers = [_answer(resolver, provider, members[mark], mark, value) for mark, value in values.items()]
    absent = _find_absent(resolver, provider) if not members else ()
    answers += [Answer(WHOLE, waits=absent)] if absent else []
    table = AnswerTable(provider.name, provider.title, _name_members(resolver.project, provider), tuple(answers))
    return Computed(values, table)


def _compute(resolver: Resolver, path: Path, name: str) -> MemberResult:
    try:
        value: MemberResult = resolver(path, name)
    except Refused as refused:
        return refused
    except Absent as absent:
        # A sum may wait for a value that it reads only where another way is barred.
        return list(dict.fromkeys([*resolver.missing(path, name), absent.path]))
    return value


def _find_absent(resolver: Resolver, provider: Provider) -> tuple[str, ...]:
    """The collection whose members a calculation is made for, where the project does not give it."""
    try:
        resolver.members(provider)
    except Absent as absent:
        return tuple(map(dotted_path, absent.paths))
    return ()


def _name_members(project: Project, provider: Provider) -> str:
    """What a member is called at the head of its column."""
    if provider.sections:
        return "section"
    collection = project.schema.node(provider.each).collection if provider.each else None
    return collection.one if collection is not None else "for"


def _answer(resolver: Resolver, provider: Provider, path: Path, mark: str, value: MemberResult) -> Answer:
    if isinstance(value, Refused):
        return Answer(mark, problems=value.problems)
    if isinstance(value, list):
        return Answer(mark, waits=tuple(map(dotted_path, value)))
    if isinstance(value, Lookup):
        answer = "yes" if value.result else "no"
        return Answer(mark, answer, figures={"answer": answer, "why": value.why})
    if value is None:
        return Answer(mark)
    held = tuple(_hold(resolver, provider, path, value))
    result = " ".join([*(step.name for step in _find_result(value)), _figure(value.result, value.unit, resolver)])
    figures = dict(_tell(resolver, provider, path, value, held))
    return Answer(mark, result, dict(_refer(resolver.project, provider, path)), held, figures)


def _refer(project: Project, provider: Provider, path: Path) -> Iterator[tuple[str, str]]:
    """The mark of what a member refers to, and what the calculation takes from there: sealant and class."""
    depth = len(provider.each) + 1
    for pattern in provider.patterns() if provider.each else ():
        link = project.schema.field_at(pattern[: depth + 1])
        if len(pattern) <= depth + 1 or link is None or link.kind != "reference":
            continue
        target = project.get((*path, pattern[depth]))
        field = project.schema.field_at((link.to, "*", *pattern[depth + 1 :]))
        if target is None or field is None:
            continue
        yield link.label.lower(), target.mark
        yield field.label.lower(), _plain(value_text(project.get((*target.path, *pattern[depth + 1 :])), field))


def _tell(
    resolver: Resolver, provider: Provider, path: Path, working: Working, held: tuple[Held, ...]
) -> Iterator[tuple[str, str]]:
    """What a working tells besides its comparisons: the steps declared as columns, or those wanted with the result.

    What a comparison shows is not told again.
    """
    shown = {name: text for one in held for name, text in ((one.demand, one.found), ("margin", one.use))}
    columns = [step for step in working.steps if step.symbol in provider.columns]
    for step in columns or [*_find_result(working), *working.secondary_steps]:
        text = _figure(step.value, step.unit, resolver)
        is_result = step.value == working.result and text in shown.values()
        repeated = is_result or step.name in shown or text == shown.get("margin")
        if not repeated:
            yield step.name.partition(", ")[0], text
    for name in provider.beside:
        try:
            other = resolver(path, name)
        except (Absent, Refused):
            continue
        yield resolver.find(name).title.lower(), _figure(other.result, other.unit, resolver)


def _find_result(working: Working) -> tuple[Step, ...]:
    """The step that reaches the result."""
    return tuple(step for step in working.steps if step.value == working.result)[-1:]


def _figure(value: float, unit: str, resolver: Resolver) -> str:
    system = resolver.project.system
    if unit == "Pa":
        return _plain(f"{vapor_pressure(value, system)} {vapor_unit(system)}")
    return _plain(settle(value, unit, system))


def _hold(resolver: Resolver, provider: Provider, path: Path, working: Working) -> Iterator[Held]:
    """The comparisons of a member; one that does not apply is left out."""
    for check in provider.checks:
        try:
            comparison = check.make(resolver.project.view(path), lambda name: resolver(path, name))
        except Absent as absent:
            if resolver.project.applies(absent.path):
                yield _wait(check, _figure(working.result, working.unit, resolver), absent)
            continue
        if comparison is None:
            continue
        found, wanted = map(_plain, demand_and_limit(comparison, resolver.project.system))
        use, weight = _plain(tell_ratio(comparison)), float(comparison.use)
        sense, outcome = comparison.sense, comparison.outcome
        yield Held(check.demand, found, check.limit, wanted, use, sense, outcome, check.codes, weight=weight)


def _wait(check: Check, found: str, absent: Absent) -> Held:
    waits = tuple(map(dotted_path, absent.paths))
    return Held(check.demand, found, check.limit, "", "", clauses=check.codes, waits=waits)


def _plain(text: str) -> str:
    """A figure of a page as a terminal shows it, where blanks may be broken at."""
    return text.replace("\N{NO-BREAK SPACE}", " ").replace("\N{MINUS SIGN}", "-")
