"""What `compare` prints: text for a person, plain data for a program."""

from collections.abc import Iterable, Iterator
from typing import Any

from specgen.model.changes import (
    Changes,
    DocumentChange,
    FieldChange,
    FigureChange,
    ItemChange,
    RuleChange,
    VerdictChange,
)
from specgen.model.forbidden_characters import show_unseen
from specgen.model.state import OwedDocument, Said
from specgen.model.value_text import words
from specgen.terminal.changes_words import NONE, FieldLine, list_fields, name_article, tell_article, tell_said


def format_changes(changes: Changes, first: str) -> str:
    """The changes in groups, a line each; one line where nothing differs but the issue itself."""
    if changes.none:
        return f"{_tell_none(changes.issue)}\n"
    fields = list(list_fields(changes, first))
    raised = [rule for rule in changes.rules if rule.new is not None]
    groups = (
        ("Issue", [f"{one.label}: {_tell_two(one.old, one.new, first)}" for one in changes.issue]),
        ("Data", map(_format_field, fields)),
        ("Limits in force", [_format_figure(one, one.name, f" ({one.about})", first) for one in changes.limits]),
        ("Verdicts", map(_format_verdict, changes.verdicts)),
        ("Rules raised", map(_format_rule, raised)),
        ("Rules cleared", [f"{r.code} {r.old}, {r.subject}" for r in changes.rules if r.new is None]),
        ("Results", [_format_figure(one, one.about, "", first) for one in changes.results]),
        ("Time", [_format_figure(one, one.about, "", first) for one in changes.times]),
        ("Open items, new", [_format_item(item) for item in changes.items if item.is_new]),
        ("Open items closed", [_format_item(item) for item in changes.items if not item.is_new]),
        ("Documents newly required", map(_format_owed, changes.owed)),
        ("Documents required no longer", map(_format_owed, changes.settled)),
        ("Documents of the set", [line for one in changes.documents for line in _format_document(one)]),
    )
    return "\n".join(_set_groups(groups)) + "\n"


def _tell_none(issue: tuple[FieldChange, ...]) -> str:
    """One line that says that nothing changed, or nothing but the issue."""
    told = (f"{one.path} {_tell_two(one.old, one.new, 'ip')}" for one in issue)
    return show_unseen(f"Nothing changed but the issue: {', '.join(told)}." if issue else "Nothing changed.")


def _set_groups(groups: Iterable[tuple[str, Iterable[str]]]) -> Iterator[str]:
    above = False
    for title, lines in groups:
        told = list(lines)
        if told:
            yield from ([""] if above else [])
            yield f"{title} ({sum(not line.startswith('  ') for line in told)})"
            # What the user wrote stands inside a line and never makes one.
            yield from (show_unseen(f"  {line}") for line in told)
            above = True


def _format_field(line: FieldLine) -> str:
    label = f", {line.label}" if line.label else ""
    owed = f" ({words(line.owed_by)})" if line.owed_by else ""
    return f"{line.path}{label}: {line.old} -> {line.new}{owed}"


def _format_figure(one: FigureChange, name: str, behind: str, first: str) -> str:
    member = f", {one.member}" if one.member else ""
    return f"{name}{member}: {_tell_two(one.old, one.new, first)}{behind}"


def _tell_two(old: Said | None, new: Said | None, first: str) -> str:
    return f"{tell_said(old, first)} -> {tell_said(new, first)}"


def _format_verdict(one: VerdictChange) -> str:
    return f"{one.wall}: {words(one.old or NONE)} -> {words(one.new or NONE)}"


def _format_rule(rule: RuleChange) -> str:
    before = f", was {rule.old}" if rule.old else ""
    return f"{rule.code} {rule.new}, {rule.subject}{before}: {rule.message}"


def _format_item(item: ItemChange) -> str:
    return f"{item.path}, {item.label} ({words(item.owed_by)})"


def _format_owed(one: OwedDocument) -> str:
    return f"{one.name}, {', '.join(one.subjects)} ({words(one.owed_by)})"


def _format_document(one: DocumentChange) -> list[str]:
    kind = {"added": ": added", "dropped": ": no longer in the set"}.get(one.kind, "")
    return [
        f"{one.id} {one.title}{kind}",
        *(f"  {name_article(article)}: {tell_article(article)}" for article in one.articles),
    ]


def changes_to_data(old: str, new: str, changes: Changes | None, errors: Iterable[Any] = ()) -> dict[str, Any]:
    """The object of `compare --format json`; `errors` is filled where the two could not be compared."""
    found = changes or Changes(was=("", ""), now=("", ""))
    return {
        "format": 1,
        "old": old,
        "new": new,
        "errors": list(errors),
        "changed": changes is not None and not found.none,
        "issue": [_field_to_data(one) for one in found.issue],
        "fields": [_field_to_data(one) for one in found.fields],
        "limits": [{"row": f.name, "source": f.about, **_two(f.old, f.new)} for f in found.limits],
        "verdicts": [one._asdict() for one in found.verdicts],
        "rules": [
            {"code": r.code, "subject": r.subject, "old": r.old, "new": r.new, "message": r.message}
            for r in found.rules
        ],
        "results": [
            {"calculation": f.name, "member": f.member, "title": f.about, **_two(f.old, f.new)} for f in found.results
        ],
        "times": [{"what": f.name, "member": f.member, "title": f.about, **_two(f.old, f.new)} for f in found.times],
        "open": {
            "added": [_item_to_data(item) for item in found.items if item.is_new],
            "closed": [_item_to_data(item) for item in found.items if not item.is_new],
        },
        "documents_required": {
            "added": [_owed_to_data(one) for one in found.owed],
            "dropped": [_owed_to_data(one) for one in found.settled],
        },
        "documents": [_document_to_data(one) for one in found.documents],
    }


def _field_to_data(change: FieldChange) -> dict[str, Any]:
    about = {"path": change.path, "label": change.label, "owed_by": change.owed_by}
    return about | _two(change.old, change.new)


def _two(old: Said | None, new: Said | None) -> dict[str, Any]:
    return {"old": old and old._asdict(), "new": new and new._asdict()}


def _item_to_data(item: ItemChange) -> dict[str, Any]:
    return {"path": item.path, "label": item.label, "owed_by": item.owed_by}


def _owed_to_data(one: OwedDocument) -> dict[str, Any]:
    return {"document": one.name, "owed_by": one.owed_by, "subjects": list(one.subjects)}


def _document_to_data(one: DocumentChange) -> dict[str, Any]:
    articles = [
        {
            "number": article.number,
            "title": article.title,
            "changed": dict(article.changed),
            "added": dict(article.added),
            "removed": dict(article.removed),
        }
        for article in one.articles
    ]
    return {"document": one.id, "title": one.title, "kind": one.kind, "articles": articles}
