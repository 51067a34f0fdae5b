"""Checks on reading that each value an answer is said to have given is there, and that one answer alone gave it."""

from collections.abc import Iterator

from specgen.model.field import Path, dotted_path
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.suggest import suggest

ANSWERS = "answers"


def answer_problems(project: Project) -> Iterator[Problem]:
    """The fields listed by an answer that the project does not give, or that another answer lists too."""
    first: dict[str, str] = {}
    given: dict[str, Path] = {}
    for mark in project.members.get((ANSWERS,), ()):
        given = given or {dotted_path(path): path for path in project.values}
        listed = (ANSWERS, mark, "fields")
        for number, name in enumerate(project.values.get(listed, ())):
            place = project.places.get((*listed, str(number))) or project.place(listed)
            if name not in given:
                message, hint = f"{name!r} is no value that the project gives", "give it, or take it out of the list"
                if project.schema.field_at(tuple(name.split("."))) is None:
                    hint = suggest(name, given)
                yield Problem(message, hint, place.path, place.file, place.line, place.column)
            elif first.setdefault(name, mark) != mark:
                message = f"{name} is listed by the answer {first[name]} too"
                yield Problem(message, "list it once", place.path, place.file, place.line, place.column)
