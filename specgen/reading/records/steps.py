"""Entries of steps that no wall of the project takes: told once for each step."""

from collections.abc import Iterator, Mapping, Sequence

from specgen.model.evaluation import evaluate
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.model.value_text import words
from specgen.reading.records.gathering import tell_place
from specgen.standards import load_standards


def tell_steps(project: Project, entries: Mapping[str, Sequence[Entry]]) -> Iterator[Problem]:
    """What is told of the first entry of each step that no wall takes."""
    first: dict[str, Entry] = {}
    for some in entries.values():
        for entry in some:
            step = entry.values.get("step")
            if step is not None and step not in first:
                first[step] = entry
    for step, entry in first.items():
        if not _is_taken(project, step):
            hint = "check the step, or what the project says of its walls"
            yield Problem(f"no wall of this project takes the step {words(step)}", hint, file=tell_place(entry.place))


def _is_taken(project: Project, step: str) -> bool:
    row = load_standards().steps.get(step)
    walls = project.members.get(("walls",), ())
    return row is None or not row.when or any(evaluate(row.when, project, ("walls", wall)) for wall in walls)
