"""Values that others offer for fields of a project, checked as those of a project file, and sorted by what is there."""

import json
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from specgen.documents.members import span_marks
from specgen.model.field import Field, Node, Path
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.value_text import raw_text
from specgen.quantities.quantity import Quantity
from specgen.reading.answer_text import AnswerText
from specgen.reading.rules import SectionRules
from specgen.resolving.answer_sources import describe_answer


class Offer(NamedTuple):
    """A value that somebody offers for a field."""

    path: Path
    text: str  # as a project file has it
    value: Any  # typed
    place: str  # the cell, in messages
    who: str = ""  # `L. Ferrow, EIFS manufacturer, 2027-02-01`; empty for a table
    remark: str = ""
    notes: tuple[str, ...] = ()  # what is told of how it was taken
    sheet: int = 0  # the number of the workbook among those that were given


class Conflict(NamedTuple):
    """A field for which there are two values: what the project has, if anything, and what is offered."""

    path: Path
    place: str  # of the project's own value; empty where it has none
    given: str
    who: str  # who gave that one; empty for the project's own
    offers: tuple[Offer, ...]


@dataclass
class SortedOffers:
    """Offers by what the project has: nothing yet, the same, or another value."""

    fresh: list[Offer] = field(default_factory=list)
    same: list[Offer] = field(default_factory=list)
    conflicts: list[Conflict] = field(default_factory=list)


@dataclass
class Offered:
    """What a workbook or a table offers, what of it is faulty, and what is told of how it was taken."""

    offers: list[Offer] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


class Converter:
    """Converts the texts of answers by the rules of their fields, each made once."""

    def __init__(self) -> None:
        self._rules: dict[Path, SectionRules] = {}

    def convert(self, entry: Field, answer: AnswerText) -> tuple[str, Any]:
        """The text as a project file has it, and the typed value; raises InvalidValue."""
        if entry.path not in self._rules:
            self._rules[entry.path] = SectionRules(Node(entry.path, field=entry))
        rules = self._rules[entry.path]
        values = tuple(rules.value((), text) for text in answer.entries)
        texts = [_spell(entry, *pair) for pair in zip(answer.entries, values, strict=True)]
        if answer.listed:
            return f"[{', '.join(map(quote_entry, texts))}]", values
        return texts[0], values[0]


def _spell(entry: Field, text: str, value: Any) -> str:
    """A choice as the schema spells it, any other text as it was written."""
    return str(value) if (entry.of or entry.kind) == "choice" else text


def quote_entry(text: str) -> str:
    """An entry of a list in quotes where a sign in it would end it, or mean something."""
    if not text.isprintable():
        return json.dumps(text, ensure_ascii=False)
    plain = not set(text) & set(",[]{}#:&*!|>'\"%@`") and not text.startswith(("-", "?"))
    return text if plain else "'{}'".format(text.replace("'", "''"))


def sort_offers(project: Project, offers: Iterable[Offer]) -> SortedOffers:
    """The offers by what the project has; of two unlike ones for a field neither is fresh."""
    by_path: dict[Path, list[Offer]] = {}
    for offer in offers:
        by_path.setdefault(offer.path, []).append(offer)
    done = SortedOffers()
    for path, each in by_path.items():
        if path in project.values:
            unlike = [offer for offer in each if offer.value != project.values[path]]
            done.same += [offer for offer in each if offer not in unlike]
            if unlike:
                done.conflicts.append(_tell_given(project, path, unlike))
        elif path in project.members:
            _sort_none(project, path, each, done)
        elif any(offer.value != each[0].value for offer in each):
            done.conflicts.append(Conflict(path, "", "", "", tuple(each)))
        else:
            done.fresh.append(each[0])
            done.same += each[1:]
    return done


def _sort_none(project: Project, path: Path, offers: list[Offer], done: SortedOffers) -> None:
    """Sort offers that say that a collection has no members."""
    marks = project.members[path]
    if not marks:
        done.same += offers
        return
    place = project.place(path)
    done.conflicts.append(Conflict(path, f"{place.file}:{place.line}", span_marks(marks), "", tuple(offers)))


def _tell_given(project: Project, path: Path, offers: list[Offer]) -> Conflict:
    """A conflict with what the project has at a path, by its line and by who gave it."""
    place, entry = project.place(path), project.schema.node(path).field
    value = project.values[path]
    given = (value.text if isinstance(value, Quantity) else "") or raw_text(value, entry, project.system)
    told = project.answered.get(path)
    giver = describe_answer(project, told.answer) if told is not None and told.stands else ""
    return Conflict(path, f"{place.file}:{place.line}", given, giver, tuple(offers))
