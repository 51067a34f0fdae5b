"""The names of members in findings, and those of several in one breath."""

from collections.abc import Sequence
from functools import cache

from specgen.model.field import Path
from specgen.model.project import Project
from specgen.model.value_text import value_text, words
from specgen.reading.schema import project_schema

# By the end of a noun, which takes an s else.
_PLURALS = {"criterion": "criteria", "y": "ies", "": "s"}


def name_subject(project: Project, subject: Path) -> str:
    """The name of a subject in messages: its mark, `E1 opening A`, `W1 mesh layer 2`, `July`, else `project`."""
    if not subject:
        return "project"
    node = project.schema.node(subject[:-1])
    nested = len(subject) > 2 and project.schema.node(subject[:1]).collection is not None
    if node.collection is None or (node.collection.kind == "mapping" and not nested):
        return subject[-1]
    if node.collection.one == "month" and project.is_given((*subject, "month")):
        return words(project.values[(*subject, "month")])
    for name in ("paragraph", "name"):
        at = (*subject, name)
        if name in project.schema.node(subject).children and project.is_given(at):
            return f"{node.collection.one} {value_text(project.values[at], project.schema.field_at(at))}"
    mark = subject[-1] if node.collection.kind == "mapping" else int(subject[-1]) + 1
    return f"{f'{subject[1]} ' if nested else ''}{node.collection.one} {mark}"


def join_subjects(names: Sequence[str]) -> str:
    """`E1, E2`; members that are called by their noun share it: `acceptance criteria: gloss, smoothing build`."""
    noun = next((noun for noun in _list_nouns() if all(name.startswith(f"{noun} ") for name in names)), "")
    if len(names) < 2 or not noun:
        return ", ".join(names)
    return f"{_make_plural(noun)}: {', '.join(name.removeprefix(f'{noun} ') for name in names)}"


def _make_plural(noun: str) -> str:
    ending = next(one for one in _PLURALS if noun.endswith(one))
    return f"{noun.removesuffix(ending)}{_PLURALS[ending]}"


@cache
def _list_nouns() -> tuple[str, ...]:
    """The nouns of the members of lists, which have no mark of their own."""
    return tuple(one.one for one in project_schema().collections.values() if one.kind == "items")
