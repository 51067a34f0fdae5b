"""What rule files use: `Rule`, its clauses by condition or by test, and `violation`."""

import inspect
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import partial
from typing import Any, NamedTuple, TypedDict, Unpack

from specgen.model.field import Path
from specgen.model.finding import Severity, ToAdd
from specgen.model.layout import ElevationLayout
from specgen.model.record import COLLECTIONS
from specgen.model.source import Source
from specgen.model.typed_views import Description
from specgen.model.working import Lookup, Working

STOP, CAUTION, NOTE = Severity.STOP, Severity.CAUTION, Severity.NOTE
OF_OPEN_ITEMS: Path = ("field",)
# Who settles what a federal rule says where it is no law.
GUIDE = "The U.S. rule cited is a guide only: the competent person confirms the local rule before work starts."


class Violation(NamedTuple):
    """One violation of a clause: the value found, the limit, and path, sources, remedy and words if not of the clause.

    `to_add` is the member that would answer it.
    """

    value: Any = None
    wanted: Any = None
    at: Path = ()
    sources: tuple[Source, ...] = ()
    remedy: str = ""
    to_add: ToAdd | None = None
    say: str = ""


def violation(
    value: Any = None,
    wanted: Any = None,
    at: Path = (),
    sources: tuple[Source, ...] = (),
    remedy: str = "",
    to_add: ToAdd | None = None,
    say: str = "",
) -> Violation:
    """What a test yields; `at` is the path of the finding, `sources`, `remedy` and what it says are its own."""
    return Violation(value, wanted, at, sources, remedy, to_add, say)


Violations = Iterator[Violation]
Test = Callable[..., Violations]
# Of a condition: the value compared, the relation at which the clause fires, and what it is compared with.
Compare = Callable[..., tuple[Any, str, Any] | None]
# A computed value or a look-up, which a test takes by an argument of its name (`face_heat`) and asks for by calling it.
Computed = Callable[[], Working]
LookedUp = Callable[[], Lookup]
LaidOut = Callable[[], ElevationLayout]
# What a test takes as `limits`: the figure in force of a row of the limits, by its name.
Limits = Callable[[str], Any]
# The other arguments a test may take beside its subject; one that takes `history` looks beyond its own entry.
ARGUMENTS = frozenset(("project", "limit", "limits", "standards", "history"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Clause:
    """One question of a rule, asked of each member of `each`, or of the project itself if that is empty."""

    rule: "Rule"
    letter: str
    severity: Severity
    # The sentence of a finding, with {found} and {wanted}; several of these are joined by {found:and} or {found:or}.
    say: str
    each: Path
    # Rows of the sources the clause rests on, beside that of its limit.
    basis: tuple[str, ...]
    # The row of the limits it holds a value against.
    limit: str
    # What lifts a stop: `deviation`, or `never`.
    lift: str
    # The document it looks for, if any: without it a wall is not yet known, and the package is stopped.
    document: str
    # The path of the field at which a finding is placed, stars for the marks of the subject.
    at: Path
    # The step of the work at which a procedure prints a finding.
    step: str
    # What to do about it: its own words, else those of the rule.
    remedy: str
    # Why it is asked, where the reason of the rule is that of another clause.
    why: str
    # What asks the question, and the arguments it takes beside its subject: some of ARGUMENTS, and computed values.
    test: Test
    asks: frozenset[str]
    # The fields and computed values of a condition, in its order; those of a test are recorded as it runs.
    reads: tuple[str, ...] = ()
    compare: Compare | None = None

    @property
    def computed(self) -> tuple[str, ...]:
        """The names of the computed values it asks for."""
        return tuple(sorted(name.replace("_", "-") for name in self.asks - ARGUMENTS))

    @property
    def code(self) -> str:
        """`SLT-03e`."""
        return self.rule.code + self.letter

    @property
    def of_entries(self) -> bool:
        """Whether its subjects are entries of the site record, which are judged apart from the walls."""
        return len(self.each) == 1 and self.each[0] in COLLECTIONS

    @property
    def of_open_items(self) -> bool:
        """Whether its subjects are the open items, which are found apart from the clauses."""
        return self.each == OF_OPEN_ITEMS


class Words(TypedDict, total=False):
    """Keywords allowed for every clause; see Clause for their meaning."""

    basis: str
    limit: str
    lift: str
    step: str
    document: str
    remedy: str
    why: str


class TestWords(Words, total=False):
    """Keywords allowed for a clause with a test: also its collection, if `at` does not name it."""

    each: str


class ConditionWords(TestWords, total=False):
    """Keywords allowed for a clause with a condition: also place, values found and wanted, and a further condition."""

    at: str
    found: str
    wanted: str
    under: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ClauseDeclaration:
    """A clause as its rule file declares it, before its paths are looked up: with a condition `when`, or a `test`."""

    letter: str
    severity: Severity
    say: str
    each: str = ""
    at: str = ""
    basis: str = ""
    limit: str = ""
    lift: str = ""
    step: str = ""
    document: str = ""
    remedy: str = ""
    why: str = ""
    when: str = ""
    under: str = ""
    found: str | None = None
    wanted: str | None = None
    test: Test | None = None

    @property
    def asks(self) -> frozenset[str]:
        """The arguments that the test takes beside its subject."""
        if self.test is None:
            return frozenset(("project", "limits", "limit"))
        return frozenset(list(inspect.signature(self.test).parameters)[1:])


class Rule:
    """A rule of the trade: what it asks, the remedy, the steps and documents it prints in, and its clauses."""

    def __init__(self, code: str, title: str, *, remedy: str, steps: str, documents: str) -> None:
        self.code, self.title, self.remedy = code, title, remedy
        self.steps, self.documents = tuple(steps.split()), tuple(documents.split())
        self.declared: list[ClauseDeclaration] = []
        # Filled in when the file is loaded: its docstring, its group, and what was declared with every path looked up.
        self.manual, self.group = "", ""
        self.clauses: tuple[Clause, ...] = ()

    def clause(self, letter: str, severity: Severity, say: str, *, when: str, **words: Unpack[ConditionWords]) -> None:
        """Declare a clause that fires if the condition `when` holds, and `under` as well if given.

        A field of a member is named by its noun (`wall.insulation.kind`): the clause is asked of each of them. What it
        found is the field compared last, and what was wanted the limit or field it was compared with; `found` and
        `wanted` name another field or a word, or nothing: "".
        """
        self.declared.append(ClauseDeclaration(letter=letter, severity=severity, say=say, when=when, **words))

    def safety_clauses(self, letters: tuple[str, str], say: str, *, when: str, **words: Unpack[ConditionWords]) -> None:
        """Declare a stop that nothing lifts under federal safety rules, and a caution under other rules."""
        federal, other = (words | {"under": f"safety.rules = {rules}"} for rules in ("us_osha", "other"))
        self.clause(letters[0], STOP, say, when=when, **(federal | {"lift": "never"}))
        self.clause(letters[1], CAUTION, say, when=when, **(other | {"remedy": self._guide(words)}))

    def _guide(self, words: Words) -> str:
        """The remedy of a clause where a federal rule is no law."""
        return f"{words.get('remedy') or self.remedy} {GUIDE}"

    def test(
        self, letter: str, severity: Severity, say: str, *, at: str, **words: Unpack[TestWords]
    ) -> Callable[[Test], Test]:
        """Declare a clause with a test: a function of the subject, and by name of what else it needs, that yields
        violations. A finding is placed at `at`, named as in a condition."""

        def register(test: Test) -> Test:
            self.declared.append(
                ClauseDeclaration(letter=letter, severity=severity, say=say, at=at, test=test, **words)
            )
            return test

        return register

    def safety_tests(
        self, letters: tuple[str, str], say: str, *, at: str, **words: Unpack[TestWords]
    ) -> Callable[[Test], Test]:
        """As `safety_clauses`, for a function that takes the safety rules in question before its subject."""

        def register(test: Test) -> Test:
            federal: TestWords = words | {"lift": "never"}
            other: TestWords = words | {"remedy": self._guide(words)}
            self.test(letters[0], STOP, say, at=at, **federal)(partial(test, "us_osha"))
            self.test(letters[1], CAUTION, say, at=at, **other)(partial(test, "other"))
            return test

        return register

    def open_items(self, letter: str, severity: Severity, say: str, **words: Unpack[Words]) -> None:
        """Declare a clause on every owed field that is absent."""
        each = ".".join(OF_OPEN_ITEMS)
        self.declared.append(ClauseDeclaration(letter=letter, severity=severity, say=say, each=each, **words))


def lacks(has: Iterable[str], wanted: tuple[str, ...]) -> tuple[str, ...]:
    """The words of `wanted` that are not in `has`, in their order."""
    held = set(has)
    return tuple(word for word in wanted if word not in held)


def is_draft(project: Description) -> bool:
    """Whether the package is a design draft, in which no documents are owed yet."""
    return project.package.purpose == "design_draft"
