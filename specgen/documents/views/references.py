"""The published standards that this project's work refers to."""

import re
from itertools import zip_longest

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.evaluation import evaluate


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Designation and short title of the standards that apply or that the project names, by their designations.

    They stand in two halves beside each other, each read down.
    """
    project = context.project
    applying = {
        r.name: r.title for r in context.standards.references.values() if not r.when or evaluate(r.when, project)
    }
    lines = sorted((_own(context) | applying).items(), key=lambda line: _sort_key(line[0]))
    half = (len(lines) + 1) // 2
    pairs = zip_longest(lines[:half], lines[half:], fillvalue=("", ""))
    return TableView(("Standard", "Subject") * 2, tuple((*left, *right) for left, right in pairs), (14, 33, 20, 33))


def _sort_key(designation: str) -> list[tuple[bool, str, int]]:
    """The parts of a designation, so that ASTM D523 stands before ASTM D1640: words before numbers, numbers by size."""
    parts = re.findall(r"\d+|[^\d\s.]+", designation)
    return [(part.isdigit(), "" if part.isdigit() else part, int(part) if part.isdigit() else 0) for part in parts]


def _own(context: DocumentContext) -> dict[str, str]:
    """Standards the project names for its sheathing and weather barrier."""
    subjects = {}
    for mark in context.project.members[("walls",)]:
        for section, what in (("substrate", "sheathing"), ("wrb", "water-resistive barrier")):
            name = context.project.get(("walls", mark, section, "standard"))
            if name:
                subjects[str(name)] = f"{what.capitalize()} of this project"
    return subjects
