"""The story of a project: read, resolve, judge. `building.py` goes on to the package."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path

from specgen import computing, scheduling
from specgen.judging.context import JudgingContext
from specgen.judging.judge import judge
from specgen.judging.record_judging import judge_records
from specgen.judging.registry import load_rules
from specgen.judging.rule import Rule
from specgen.model.finding import Judgment
from specgen.model.problem import Refused
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS
from specgen.model.record_judgment import RecordJudgment
from specgen.reading.project import read_project
from specgen.reading.schema import project_schema
from specgen.resolving.provider import Resolver
from specgen.standards import load_standards


@dataclass(frozen=True)
class JudgedProject:
    """A project that has been read and judged, with all that served it."""

    context: JudgingContext
    judgment: Judgment
    rules: tuple[Rule, ...]

    @property
    def project(self) -> Project:
        """The facts."""
        return self.context.project

    @cached_property
    def records(self) -> RecordJudgment:
        """The judgment of what was written on site, made where it is first asked for; it changes no verdict."""
        return judge_records(self.context, self.rules)


def read(file: Path) -> Project:
    """The project of a file; raises Refused with every fault of its files."""
    return read_project(file, project_schema())


def check(file: Path) -> JudgedProject:
    """The project of a file, judged; raises Refused with every fault of its files."""
    return judge_project(read(file))


def read_with_records(file: Path, logs: Sequence[Path]) -> Project:
    """The project of a file with the entries of these record files behind its own; raises Refused with every fault.

    The files of the project are named as seen from here, the record files as they are given.
    """
    with told_from_here(file):
        project = read(file)
    if not logs:
        return project
    from specgen.reading.records.reading import add_records  # imported here: most projects have none yet

    return add_records(project, logs)


@contextmanager
def told_from_here(file: Path) -> Iterator[None]:
    """Names the files of a project, where they are refused, as its file is named: `jobs/firm.yaml` of `jobs/a.yaml`."""
    try:
        yield
    except Refused as refused:
        raise Refused(
            *(replace(p, file=str(file.parent / p.file)) if p.file else p for p in refused.problems)
        ) from None


def check_from_here(file: Path) -> JudgedProject:
    """The project of a file, judged; raises Refused with every fault, its files named as seen from here."""
    with told_from_here(file):
        return check(file)


def make_resolver(project: Project) -> Resolver:
    """The resolver of a project: it finds calculations, layouts and the schedule, and lists what documents print."""
    return Resolver(project, scheduling.find, computing.names())


def judge_project(project: Project) -> JudgedProject:
    """A project, judged by every rule there is."""
    context = JudgingContext(project, load_standards(), make_resolver(project))
    rules = load_rules()
    return JudgedProject(context, judge(context, rules), rules)


def judge_entries(project: Project) -> RecordJudgment:
    """The judgment of what was written on site alone; nothing where nothing was."""
    if not any(map(project.records.of, COLLECTIONS)):
        return RecordJudgment()
    return judge_records(JudgingContext(project, load_standards(), make_resolver(project)), load_rules())
