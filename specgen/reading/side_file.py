"""A side file by itself: a firm, coating system, or record file that is looked through without its project."""

from pathlib import Path as FilePath
from typing import NamedTuple

from specgen.model.field import Path, Schema
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.reading.dangling import find_dangling, find_unmet
from specgen.reading.file_content import FileContent
from specgen.reading.ranges import range_problems
from specgen.reading.side_files import check_home


class SideFileGiven(Refused):
    """A side file was given where a project file is wanted."""

    def __init__(self, file: FilePath, home: str, content: FileContent) -> None:
        shown = content.text.file
        hint = "name the project file; specgen check looks through this one by itself"
        super().__init__(Problem(f"this is a {home.replace('_', ' ')} file, not a project file", hint, file=shown))
        self.file, self.home, self.content = file, home, content


class SideFile(NamedTuple):
    """A side file without faults: its kind, what it gives, and its marks that the files of a project must have."""

    name: str
    home: str  # firm, coating_system or record
    given: Project
    sought: dict[Path, str]


def look_through(given: SideFileGiven, schema: Schema) -> SideFile:
    """What a side file gives; raises Refused with every fault that shows without its project."""
    content = given.content
    content.values.pop(("format",), None)
    check_home(content, given.home, schema)
    project = Project(schema, content.values, content.members | content.unfilled, content.text.places)
    dangling = list(find_dangling(project))
    sought = find_unmet(dangling, [content])
    problems = [*content.text.problems, *(one.problem for one in dangling if one.path not in sought)]
    problems += range_problems(content.values, content.text.places, schema)
    if problems:
        raise Refused(*sorted(problems, key=lambda problem: (problem.line, problem.column)))
    marks = {path: _tell_marks(content.values[path]) for path in sought}
    return SideFile(content.text.file, given.home, project, marks)


def _tell_marks(value: object) -> str:
    return ", ".join(value) if isinstance(value, tuple) else str(value)
