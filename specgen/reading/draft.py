"""A project that is told answer by answer: each text is typed and checked as the same words in a file are."""

from collections.abc import Iterable, Mapping
from typing import Any

from specgen.model.field import Path, Schema, dotted_path
from specgen.model.finding import Place
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.reading.leaves import read_values
from specgen.reading.positions import Text
from specgen.reading.project import defaults_of
from specgen.reading.ranges import range_problems
from specgen.reading.rules import Rules
from specgen.reading.structure import build_structure

Told = str | tuple[str, ...]  # what is told of a field: a text, or the texts of a list


def read_draft(told: Mapping[Path, Told], walls: tuple[str, ...], schema: Schema) -> Project:
    """The project with these texts and walls; raises Refused with the faults a file with them would have.

    What a file must give may still be absent here.
    """
    text = Text("", places={(): Place("")})
    for path, said in told.items():
        _put(text, path, said)
    structure = build_structure(text, schema.root)
    values = read_values(text, structure.records, Rules())
    problems = [*text.problems, *_tell_upside_down(text, values, schema)]
    if problems:
        raise Refused(*problems)
    members = {("walls",): walls} | structure.members
    return Project(schema, values, members, defaults=defaults_of(values, schema))


def _put(text: Text, path: Path, said: Told) -> None:
    """Put what is told in its place in the text; a character that cannot be printed is noted."""
    inside = text.data
    for depth, name in enumerate(path[:-1], 1):
        inside = inside.setdefault(name, {})
        text.places[path[:depth]] = Place(dotted_path(path[:depth]))
    text.places[path] = Place(dotted_path(path))
    fault = next(filter(None, map(find_forbidden, (said,) if isinstance(said, str) else said)), None)
    if fault is not None:
        text.problem(path, *fault[1:])
        return
    inside[path[-1]] = said if isinstance(said, str) else list(said)


def _tell_upside_down(text: Text, values: Mapping[Path, Any], schema: Schema) -> Iterable[Problem]:
    """The ranges that are upside down, without lines, as there are none."""
    for problem in range_problems(values, text.places, schema):
        yield Problem(problem.message, "correct one of the two", problem.path)
