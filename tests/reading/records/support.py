"""A small site for the tests of this folder: three faces, two crews, a cup, and what is read of a record of it."""

from pathlib import Path
from typing import Any

from specgen import pipeline
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import Records
from specgen.reading.records.given import read_given
from specgen.reading.records.reading import survey_records
from tests.support import SMALL, merged, written

SITE = merged(
    SMALL,
    {
        "elevations": {"E1": {"name": "South face"}, "E2": {}, "E3": {}},
        "crews": {"red": {}, "blue": {}},
        "instruments": {"CUP-1": {"kind": "iso_cup"}},
    },
)


def site_of(folder: Path, change: Any = None) -> Project:
    """The project of the site, with a change laid over it."""
    return pipeline.read(written(folder, merged(SITE, change or {})))


def read(folder: Path, content: str | bytes, name: str = "log.csv", change: Any = None) -> Records:
    """What is read of a record of these contents."""
    return survey(folder, {name: content}, change).records


def survey(folder: Path, files: dict[str, str | bytes], change: Any = None) -> Project:
    """The project with the entries of some files."""
    project = site_of(folder, change)
    for name, content in files.items():
        (folder / name).write_bytes(content if isinstance(content, bytes) else content.encode())
    return survey_records(project, [read_given(folder / name, name) for name in files])


def told(problems: tuple[Problem, ...]) -> list[tuple[str, str, str]]:
    """Place, field, and message of each problem."""
    return [(problem.file, problem.path, problem.message) for problem in problems]
