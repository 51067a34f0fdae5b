"""The story: read, resolve, judge, write."""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from . import computing
from .judging.engine import Bench
from .judging.judge import judge
from .judging.registry import load_rules
from .judging.rule import Rule
from .reading.project import read_project
from .reading.schema import load_schema
from .standards import load_standards
from .vocabulary.field import Schema
from .vocabulary.finding import Judgment
from .vocabulary.project import Project
from .vocabulary.provider import Resolver


@dataclass(frozen=True)
class Case:
    """A project that has been read and judged, with the resolver that served it."""

    bench: Bench
    judgment: Judgment
    rules: tuple[Rule, ...]

    @property
    def project(self) -> Project:
        """The facts."""
        return self.bench.project


@lru_cache(maxsize=1)
def schema() -> Schema:
    """The catalogue of fields with the names of steps and criteria in place."""
    rows = load_standards()
    return load_schema((("steps", tuple(rows.steps)), ("criteria", tuple(rows.criteria))))


def bench_of(project: Project) -> Bench:
    """What judging and writing work with."""
    return Bench(project, load_standards(), Resolver(project, computing.find))


def check(file: Path) -> Case:
    """The project of a file, judged; raises Refused with every fault of its files."""
    return judged(read_project(file, schema()))


def judged(project: Project) -> Case:
    """A project, judged by every rule there is."""
    bench, rules = bench_of(project), load_rules()
    return Case(bench, judge(bench, rules), rules)


def value(project: Project, path: tuple[str, ...], name: str) -> Any:
    """One computed value of a project by name, such as `joint-width` of `joints.J1`."""
    return Resolver(project, computing.find)(path, name)
