"""Conditions of clauses: bound to the schema once, then evaluated for each subject."""

import re
from collections.abc import Callable, Iterator
from functools import partial
from typing import Any, NamedTuple

from specgen.judging.choice_groups import GROUPS
from specgen.judging.rule import ClauseDeclaration, Compare, Test, Violation
from specgen.judging.scope import ClauseError, Operand, Scope
from specgen.judging.site_limits import sources_of
from specgen.model.absence import Absent, if_given, read_all
from specgen.model.condition import Condition, Joined, Term, open_terms, parse_condition, terms, truth
from specgen.model.evaluation import WORDS_OR_LISTS, compare, holds_of_word
from specgen.model.field import Field, Path
from specgen.model.project import View
from specgen.model.record import COLLECTIONS
from specgen.model.suggest import suggest
from specgen.quantities.number import parse_number
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import find_dimension

_STATES = ("is given", "is not given", "is empty", "is not empty")
_TIMES = re.compile(r"(\S+) x (\S+)")
_PATH = re.compile(r"[a-z_]+(\.[a-z_]+)+")


class Frame(NamedTuple):
    """What the operands of a condition are read from, for one subject: views, and limits in force."""

    subject: View
    project: View
    limit: Any
    limits: Callable[[str], Any]


Value = Callable[[Frame], Any]


class Question(NamedTuple):
    """A bound term: its field, and the value it is compared with (None if the term is complete without)."""

    term: Term
    left: Operand
    right: Value | None

    def answer(self, frame: Frame) -> bool:
        """Whether the term holds; raises Absent."""
        if self.term.relation in ("is given", "is not given"):
            return self._is_given(frame) == (self.term.relation == "is given")
        if self.right is None:
            return holds_of_word(self.left.value(frame), self.term)
        try:
            value, limit = self.left.value(frame), self.right(frame)
        except Absent:
            value, limit = read_all(lambda: self.left.value(frame), partial(self.right, frame))
        return compare(value, self.term.relation, limit)

    def _is_given(self, frame: Frame) -> bool:
        return if_given(lambda: self.left.value(frame)) is not None

    def would_settle(self, frame: Frame) -> tuple[Path, ...]:
        """The absent field of an `is not given` term: giving it would settle a clause left open."""
        if self.term.relation != "is not given":
            return ()
        try:
            self.left.value(frame)
        except Absent as absent:
            return absent.paths
        return ()


class ClauseCondition(NamedTuple):
    """The test of a clause with a condition, the path of its findings, and the fields it reads."""

    test: Test
    at: Path
    reads: tuple[str, ...]
    compare: Compare | None = None  # the value that is compared last, with the relation and what it is compared with


def bind_condition(clause: ClauseDeclaration, scope: Scope) -> ClauseCondition:
    """The condition of a clause with every path, choice and unit known; raises ClauseError or ConditionError."""
    condition = clause_condition(clause)
    questions = {term: _question(term, scope) for term in terms(condition)}
    last = questions[list(terms(parse_condition(clause.when)))[-1]]
    found, at = _found_value(clause.found, last, scope)
    wanted = _wanted_value(clause.wanted, last, scope)
    figure = _figure_path(last, scope)

    def test(subject: View, project: View, limit: Any, limits: Callable[[str], Any]) -> Iterator[Violation]:
        frame = Frame(subject, project, limit, limits)
        if _holds(condition, questions, frame):
            sources = sources_of(project.project, figure) if figure else ()
            yield Violation(found(frame), wanted(frame), sources=sources)

    def compare(subject: View, project: View, limit: Any, limits: Callable[[str], Any]) -> tuple[Any, str, Any] | None:
        frame = Frame(subject, project, limit, limits)
        return None if last.right is None else (last.left.value(frame), last.term.relation, last.right(frame))

    reads = dict.fromkeys(path for question in questions.values() for path in _fields_of(question, scope))
    return ClauseCondition(test, scope.pattern(clause.at) if clause.at else at, tuple(reads), compare)


def clause_condition(clause: ClauseDeclaration) -> Condition:
    """The condition of a clause: `when` together with `under`, if given; raises ConditionError."""
    condition = parse_condition(clause.when)
    return Joined("all", (condition, parse_condition(clause.under))) if clause.under else condition


def _holds(condition: Condition, questions: dict[Term, Question], frame: Frame) -> bool:
    """Whether a condition holds for a frame; raises Absent with every field that leaves it open."""
    missing: dict[Term, tuple[Path, ...]] = {}

    def answer(term: Term) -> bool | None:
        try:
            return questions[term].answer(frame)
        except Absent as absent:
            missing[term] = absent.paths
            return None

    found = truth(condition, answer)
    if found is None:
        waits = [path for term in open_terms(condition, answer) for path in missing[term]]
        waits += [path for question in questions.values() for path in question.would_settle(frame)]
        raise Absent(*dict.fromkeys(waits))
    return found


def _question(term: Term, scope: Scope) -> Question:
    left = scope.operand(".".join(term.path))
    field = left.field
    if term.relation in _STATES:
        return Question(term, left, None)
    if field is None:
        raise ClauseError(f"{left.text} is no field")
    if term.relation in ("in", "not in") and term.right[0] in GROUPS and term.right[0] not in field.values:
        term = term._replace(right=GROUPS[term.right[0]])
    text = term.right[0]
    right = None if term.relation in WORDS_OR_LISTS else _right(text, field, scope)
    if right is None:
        _refuse_unknown_choice(term, field)
    return Question(term, left, right)


def _right(text: str, field: Field, scope: Scope) -> Value | None:
    """What a value is compared with: a limit, another field, a multiple of one, a figure; None for a word."""
    times = _TIMES.fullmatch(text)
    if times:
        factor, other = _right(times[1], field, scope), scope.operand(times[2])
        assert factor is not None
        return lambda frame: factor(frame) * other.value(frame)
    if text == "limit":
        return lambda frame: frame.limit
    if text.startswith("limit("):
        row = text[len("limit(") : -1]
        return lambda frame: frame.limits(row)
    if _PATH.fullmatch(text):
        return scope.operand(text).value
    return _figure(text, field)


def _figure(text: str, field: Field) -> Value | None:
    figure: Any = None
    if field.kind == "quantity":
        figure = parse_quantity(text, find_dimension(field.dimension, field.unit_ip))
    elif field.kind in ("integer", "number", "percent"):
        figure = parse_number(text)
    return None if figure is None else lambda frame: figure


def _refuse_unknown_choice(term: Term, field: Field) -> None:
    known = ("yes", "no") if field.kind == "yes_no" else field.values
    for word in term.right:
        if known and word not in known:
            raise ClauseError(f"{word!r} is not a choice for {'.'.join(term.path)}: {suggest(word, known)}")


def _found_value(found: str | None, last: Question, scope: Scope) -> tuple[Value, Path]:
    """How to read the found value of a finding, and the path of the finding; no value if it is not given."""
    if found is None and last.term.relation != "is not given":
        return last.left.value, last.left.pattern
    if found is not None and _PATH.fullmatch(found):
        operand = scope.operand(found)
        return operand.value, operand.pattern
    return lambda frame: found or None, last.left.pattern


def _figure_path(last: Question, scope: Scope) -> Path:
    """The field of the plan that a value on site is held against; none where it is no such figure."""
    text = last.term.right[0]
    if not scope.each or scope.each[0] not in COLLECTIONS or last.right is None or not _PATH.fullmatch(text):
        return ()
    figure = scope.operand(text)
    planned = not figure.of_subject and figure.field is not None and figure.field.home != "record"
    return figure.pattern if planned else ()


def _wanted_value(wanted: str | None, last: Question, scope: Scope) -> Value:
    if wanted is None:
        compared = last.right is not None and (last.term.right[0].startswith("limit") or "." in last.term.right[0])
        return last.right if compared and last.right is not None else lambda frame: None
    if wanted == "limit":
        return lambda frame: frame.limit
    return scope.operand(wanted).value if _PATH.fullmatch(wanted) else lambda frame: wanted or None


def _fields_of(question: Question, scope: Scope) -> Iterator[str]:
    """The fields that a question reads, as dotted patterns."""
    yield ".".join(question.left.pattern)
    for text in question.term.right:
        for word in text.split(" x "):
            if _PATH.fullmatch(word):
                yield ".".join(scope.operand(word).pattern)
