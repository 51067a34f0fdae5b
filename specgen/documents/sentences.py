"""Sentences about the members of a project: each is said of those it holds for, and once where it says the same."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, NamedTuple

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.cup_method import name_cup_method
from specgen.documents.display_values import Record
from specgen.documents.template_functions import Function, check_words, figure_functions
from specgen.documents.template_views import Page, Pages
from specgen.judging.scope import noun_of
from specgen.model.block import Ref
from specgen.model.evaluation import evaluate
from specgen.model.field import Path
from specgen.model.standard import Sentence

_TAG = re.compile(r"\{[{%].*?[%}]\}", re.DOTALL)
_COMPUTED = r"computed\('([\w-]+)', {noun}\)"
# Members without a name of their own on the drawings: the elevation they serve names them.
_NAMED_BY_ELEVATION = ("access", "shade")
# Members that are single places: they are always named, with the place.
_NAMED_BY_PLACE = ("details",)


@dataclass(frozen=True, kw_only=True)
class Said(Record):
    """A sentence as it prints, and the members it holds for, in words; no words where it holds for all."""

    text: str
    of: str


class _Subject(NamedTuple):
    """A member that a sentence is said of."""

    path: Path
    name: str  # in words, such as `E1 South face`
    again: str  # where its place was told before


class _Spoken(NamedTuple):
    """What a sentence tells of a member."""

    names: frozenset[str]  # the first name behind its noun, with its point; empty for the member itself
    computed: frozenset[str]  # the calculations it prints the result of


class Sentences:
    """Renders sentences for the members of a project."""

    def __init__(self, context: DocumentContext, composer: Composer) -> None:
        self.context, self.composer = context, composer
        self.placed = set[Path]()  # the members whose place was told
        root = Page(context, context.project.schema.root, ())
        self.names: dict[str, Any] = {name: getattr(root, name) for name in context.project.schema.root.children}
        self.names |= figure_functions(context)
        self.names["article"] = Function("article", ("a heading",), run=_refer, example="article('Field conditions')")
        self.names["cup_method"] = name_cup_method(context)

    def lines(self, place: str, sentence: Sentence, walls: list[str]) -> list[str]:
        """A sentence as it prints for the walls that take it, the members it holds for named before it."""
        return [f"{said.of}: {said.text}" if said.of else said.text for said in self.said(place, sentence, walls)]

    def said(self, place: str, sentence: Sentence, walls: list[str]) -> list[Said]:
        """A sentence for the members it holds for: once if the wording is the same for all, else once per wording.

        Each line of its text is a sentence of its own.
        """
        members = self._members(sentence.each, frozenset(walls))
        if not members:
            # What is said of a member in either wording is said of none.
            spoken = "" if self._speaks_of_member(sentence.each, sentence.otherwise) else sentence.otherwise
            return [Said(text=text, of="") for _, text in self._render(place, spoken, {})] if spoken else []
        spoken_of = self._spoken_of(sentence)
        wordings: dict[str, tuple[str, list[_Subject]]] = {}
        rendered: dict[Any, list[tuple[str, str]]] = {}
        for member in members:
            if not sentence.when or evaluate(sentence.when, self.context.project, member.path):
                same = self._facts(spoken_of, member)
                if same not in rendered:
                    rendered[same] = list(self._lines(place, sentence, member))
                for plain, text in rendered[same]:
                    wordings.setdefault(plain, (text, []))[1].append(member)
        everyone = self._everyone(sentence.each, members)
        itself = sentence.each != "walls" and not {".mark", ".name"}.isdisjoint(spoken_of.names)
        return [
            Said(text=text, of="" if itself else self._name(sentence.each, taking, everyone))
            for text, taking in wordings.values()
        ]

    def _members(self, collection: str, walls: frozenset[str]) -> list[_Subject]:
        """The members of a collection, without those on an elevation whose wall is none of these."""
        project = self.context.project
        found = []
        for mark in project.members.get((collection,), ()):
            path = (collection, mark)
            face = self._face(path)
            wall = mark if collection == "walls" else face and project.values.get((*face, "wall"))
            if not wall or wall in walls:
                title = self._title(path, face)
                again = ", ".join((mark, *([self.context.name_member(face)] if face else [])))
                found.append(_Subject(path, title, again))
        return found

    def _face(self, path: Path) -> Path:
        """The elevation that a member is, or is on; empty for none."""
        mark = self.context.project.values.get((*path, "elevation"))
        return path if path[0] == "elevations" else ("elevations", mark) if mark else ()

    def _title(self, path: Path, face: Path) -> str:
        """How a member is named: by the elevation it serves, or by its mark, and where it has them name and place."""
        if face and path[0] in _NAMED_BY_ELEVATION:
            return self.context.name_member(face)
        place = self.context.project.get((*path, "at")) if path[0] in _NAMED_BY_PLACE else None
        if not place:
            return self.context.name_member(path)
        return ", ".join((path[1], *([self.context.name_member(face)] if face else []), str(place)))

    def _everyone(self, collection: str, members: list[_Subject]) -> set[str]:
        """The names of all that a sentence can be said of: of what serves elevations, all elevations."""
        names = {member.name for member in members}
        if collection in _NAMED_BY_ELEVATION:
            names |= {self.context.name_member(("elevations", m)) for m in self.names["elevations"].names_within()}
        return names

    def _name(self, collection: str, taking: list[_Subject], everyone: set[str]) -> str:
        """The members in words; no words for all of them."""
        names = list(dict.fromkeys(member.name for member in taking))
        if collection in _NAMED_BY_PLACE:
            return self.composer.token("; ".join(self._name_once(member) for member in taking))
        if len(names) == len(everyone):
            return ""
        listed = ", ".join(names)
        if collection == "elevations" or collection in _NAMED_BY_ELEVATION:
            return self.composer.token(listed)
        noun = self._noun(collection).replace("_", " ").capitalize()
        return self.composer.token(f"{noun}{'s' if len(names) > 1 else ''} {listed}")

    def _name_once(self, member: _Subject) -> str:
        """A single place in words, which are told once."""
        told = member.again if member.path in self.placed else member.name
        self.placed.add(member.path)
        return told

    def _lines(self, place: str, sentence: Sentence, member: _Subject) -> Iterator[tuple[str, str]]:
        """Each line of a sentence for a member, or of what stands in its place: its plain words, and its text."""
        names = self._names_of(member)
        lines = list(self._render(place, sentence.text, names))
        if sentence.otherwise and any(self.composer.is_open(text) for _, text in lines):
            lines = list(self._render(place, sentence.otherwise, names))
        yield from lines

    def _render(self, place: str, words: str, names: dict[str, Any]) -> Iterator[tuple[str, str]]:
        for text in filter(None, self.composer.text(words, self.names | names, place).split("\n")):
            yield self.composer.plain(text), text

    def _names_of(self, member: _Subject) -> dict[str, Any]:
        """The noun by which a sentence speaks of a member, and the member."""
        pages = self.names[member.path[0]]
        assert isinstance(pages, Pages)
        return {self._noun(member.path[0]): pages[member.path[1]]}

    def _noun(self, collection: str) -> str:
        return noun_of(self.context.project.schema.collections[(collection, "*")])

    def _speaks_of_member(self, collection: str, text: str) -> bool:
        """Whether a text asks for anything of the member that it is said of."""
        return any(re.search(rf"\b{self._noun(collection)}\b", tag) for tag in _TAG.findall(text))

    def _spoken_of(self, sentence: Sentence) -> _Spoken:
        """What a sentence speaks of, at each place where it names the member."""
        noun = self._noun(sentence.each)
        tags = [tag for text in (sentence.text, sentence.otherwise) for tag in _TAG.findall(text)]
        computed = re.compile(_COMPUTED.replace("{noun}", noun))
        names = [name for tag in tags for name in re.findall(rf"\b{noun}\b(\.\w+)?", computed.sub("", tag))]
        return _Spoken(frozenset(names), frozenset(name for tag in tags for name in computed.findall(tag)))

    def _facts(self, spoken_of: _Spoken, member: _Subject) -> Any:
        """All that a sentence can tell of a member: members of which it is the same share its words."""
        names = spoken_of.names
        if not {"", ".mark"}.isdisjoint(names):
            return member.path
        given = self.context.remember(_list_given).get(member.path, {})
        # What a wall is not given may follow from any other of its fields.
        named = given if names and member.path[0] == "walls" else {part[1:] for part in names}
        told = tuple((name, tuple(given.get(name, ()))) for name in sorted(named))
        return told, tuple(self.context.computed(name, member.path).text for name in sorted(spoken_of.computed))


def _list_given(context: DocumentContext) -> dict[Path, dict[str, list[Any]]]:
    """What is given of each member, by the first name behind its mark."""
    given: dict[Path, dict[str, list[Any]]] = {}
    for path, value in (*context.project.values.items(), *context.project.members.items()):
        if len(path) > 2:
            given.setdefault(path[:2], {}).setdefault(path[2], []).append((path[3:], value))
    return given


def _refer(heading: Any) -> Ref:
    """A reference to an article of a procedure; any other document names it."""
    return Ref(check_words(heading, "a heading"), else_named=True)
