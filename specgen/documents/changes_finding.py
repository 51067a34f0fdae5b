"""What differs between two states of a project."""

import re
from collections.abc import Iterator, Mapping
from typing import TypeVar

from specgen.documents.changes_blocks import compare_document
from specgen.model.changes import (
    Changes,
    DocumentChange,
    FieldChange,
    FigureChange,
    ItemChange,
    RuleChange,
    VerdictChange,
)
from specgen.model.field import Schema
from specgen.model.finding import Severity
from specgen.model.state import Figure, OpenField, OwedDocument, Said, State, Told

# What names an issue and says nothing of the walls.
_OF_THE_ISSUE = re.compile(r"package\.(revision|date|purpose|changes|review\.\w+)")
_DIGITS = 12  # of the digest of a file, as it is told
Value = TypeVar("Value")
Key = TypeVar("Key")


def find_changes(old: State, new: State, schema: Schema) -> Changes:
    """All that differs in the new state; labels and owners of fields are those of the schema."""
    fields = [_name_field(path, was, now, schema) for path, was, now in _differing(old.fields, new.fields)]
    fields += _compare_attached(old, new, schema)
    kept, were = set(new.owed), set(old.owed)
    before, after = (_list_members(state, schema) for state in (old, new))
    return Changes(
        was=(old.revision, old.date),
        now=(new.revision, new.date),
        issue=tuple(change for change in fields if _OF_THE_ISSUE.fullmatch(change.path)),
        fields=tuple(change for change in fields if not _OF_THE_ISSUE.fullmatch(change.path)),
        come=_list_new(after, before),
        gone=_list_new(before, after),
        limits=tuple(_compare_limits(old.limits, new.limits)),
        rules=tuple(_compare_rules(old.findings, new.findings)),
        verdicts=tuple(VerdictChange(*told) for told in _differing(old.verdicts, new.verdicts)),
        results=tuple(_compare_results(old.results, new.results)),
        times=tuple(one for one in _compare_results(old.times, new.times) if one.old and one.new),
        items=tuple(_compare_items(old.open, new.open)),
        owed=_without(new.owed, were),
        settled=_without(old.owed, kept),
        documents=tuple(_compare_documents(old, new)),
    )


def _compare_documents(old: State, new: State) -> Iterator[DocumentChange]:
    """The documents that differ, by id; of a set that is not whole, those that it has."""
    names = {*old.documents, *new.documents}
    names &= {*(names if old.whole else old.documents)} & {*(names if new.whole else new.documents)}
    for name in sorted(names):
        change = compare_document(name, old.documents.get(name), new.documents.get(name))
        if change is not None:
            yield change


def _differing(old: Mapping[Key, Value], new: Mapping[Key, Value]) -> Iterator[tuple[Key, Value | None, Value | None]]:
    """Each key of which the value differs, with both values: first those that there were, in their order."""
    for key in dict.fromkeys((*old, *new)):
        if old.get(key) != new.get(key):
            yield key, old.get(key), new.get(key)


def _list_members(state: State, schema: Schema) -> dict[str, None]:
    """The dotted paths of the members of which anything is given, in their order: `elevations.E2.openings.WD7`."""
    found: dict[str, None] = {}
    for path in state.fields:
        node, names = schema.root, path.split(".")
        for depth, name in enumerate(names[:-1], 1):
            if node.star is not None:
                found[".".join(names[:depth])] = None
            below = node.below(name)
            if below is None:
                break
            node = below
    return found


def _list_new(members: Mapping[str, None], others: Mapping[str, None]) -> tuple[str, ...]:
    """The members that the others lack, save those within another of them."""
    told: list[str] = []
    for member in members:
        if member not in others and not member.startswith(tuple(f"{above}." for above in told[-1:])):
            told.append(member)
    return tuple(told)


def _name_field(path: str, was: Said | None, now: Said | None, schema: Schema) -> FieldChange:
    field = schema.field_at(tuple(path.split(".")))
    return FieldChange(path, field.label if field else "", field.owed_by if field else "", was, now)


def _compare_attached(old: State, new: State, schema: Schema) -> Iterator[FieldChange]:
    """The attachments that go by the same name and are another file, or none any more."""
    for path, was in old.attached.items():
        now = new.attached.get(path, "")
        if now != was and path in old.fields and old.fields[path] == new.fields.get(path):
            field = _name_field(path, _say_digest(was), _say_digest(now), schema)
            yield field._replace(label="Content of the file")


def _say_digest(digest: str) -> Said:
    told = f"SHA-256 {digest[:_DIGITS]}" if digest else "missing"
    return Said(told, told)


def _compare_limits(old: Mapping[str, Figure], new: Mapping[str, Figure]) -> Iterator[FigureChange]:
    """The limits used in both states whose figure in force is another, or rests on another source."""
    for row, was, now in _differing(old, new):
        if was is not None and now is not None:
            yield FigureChange(row, "", now.about, was.said, now.said)


def _compare_results(old: Mapping[Told, Figure], new: Mapping[Told, Figure]) -> Iterator[FigureChange]:
    for (name, member), was, now in _differing(old, new):
        said, there = (None if one is None else one.said for one in (was, now)), now or was
        if there is not None and (was is None or now is None or was.said != now.said):
            yield FigureChange(name, member, there.about, *said)


def _compare_rules(
    old: Mapping[Told, tuple[Severity, str]], new: Mapping[Told, tuple[Severity, str]]
) -> Iterator[RuleChange]:
    """The clauses that are raised, cleared, or of another severity; what a message says may change with a figure."""
    for (code, subject), was, now in _differing(old, new):
        before, after = (None if one is None else one[0] for one in (was, now))
        there = now or was
        if before != after and there is not None:
            yield RuleChange(code, subject, there[1], before, after)


def _compare_items(old: Mapping[str, OpenField], new: Mapping[str, OpenField]) -> Iterator[ItemChange]:
    """The open items that are new, and those that are closed."""
    for path in dict.fromkeys((*old, *new)):
        if (path in old) != (path in new):
            yield ItemChange(path, *(new.get(path) or old[path]), path in new)


def _without(documents: tuple[OwedDocument, ...], others: set[OwedDocument]) -> tuple[OwedDocument, ...]:
    return tuple(document for document in documents if document not in others)
