"""Reads the project file and its side files to one frozen Project; reports all problems of all files at once."""

import dataclasses
import os
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path as FilePath
from typing import Any

from specgen.model.field import Field, Path, Schema, dotted_path
from specgen.model.problem import Problem, Refused, refuse
from specgen.model.project import InputFile, Project
from specgen.reading.answers import match_answers
from specgen.reading.attached_file import list_unfound
from specgen.reading.conversion import convert
from specgen.reading.dangling import find_dangling, find_unmet
from specgen.reading.demands import demand_problems
from specgen.reading.file_content import NONE_UNWRITTEN, FileContent, Unwritten, read_content
from specgen.reading.geometry import geometry_problems
from specgen.reading.given_file import name_file
from specgen.reading.positions import Text
from specgen.reading.ranges import range_problems
from specgen.reading.records.given import RecordGiven, read_given, take_entries
from specgen.reading.rules import Rules
from specgen.reading.side_file import SideFileGiven
from specgen.reading.side_files import (
    ATTACHMENTS,
    SIDE_FILES,
    check_given_once,
    check_home,
    find_home,
    keep_attachments_apart,
)
from specgen.reading.stated_figures import stated_problems
from specgen.reading.working_days import calendar_problems
from specgen.standards import load_limits, load_standards

# What is said of the few required fields that are absent.
MISSING = "this must be given"


def read_project(file: FilePath, schema: Schema) -> Project:
    """The project described in `file`; raises Refused with every fault of every file it names.

    A side file that is given in its place is refused as a SideFileGiven.
    """
    project, problems = survey_project(file, schema)
    if problems:
        raise Refused(*problems)
    return project


def survey_project(
    file: FilePath, schema: Schema, unwritten: Unwritten = NONE_UNWRITTEN
) -> tuple[Project, list[Problem]]:
    """The project described in `file` as far as it can be read, and every fault of every file it names.

    `unwritten` are contents that are read in place of what stands in these files. Raises Refused where the file itself
    is no YAML mapping, or a side file.
    """
    main = read_content(file, name_file(file), schema, Rules(), unwritten)
    home = find_home(main.text.data, schema)
    if home:
        raise SideFileGiven(file, home, main)
    named = {home: main.values[(home,)] for home in SIDE_FILES if (home,) in main.values}
    sides = {home: _side(file, name, (home,), home, schema, main) for home, name in named.items()}
    keep_attachments_apart(main, sides, schema)
    entries = take_entries(main)
    project = _join(main, sides, schema)
    records = tuple(_name_records(file, main))
    if entries.members or records:
        from specgen.reading.records.reading import survey_records  # imported here: most projects have none yet

        project = survey_records(project, records, entries)
    project = dataclasses.replace(project, unfound=list_unfound(project, file.resolve().parent))
    dangling = list(find_dangling(project))
    project = _leave_open(project, find_unmet(dangling, sides.values()))
    files = (main, *sides.values())
    problems = [problem for content in files for problem in content.text.problems]
    # A misspelled name makes a section missing as well: report that only when the names are right.
    problems += [] if problems else _find_missing(project, main)
    if ("site", "time_zone") in project.values:
        from specgen.reading.time_zones import zone_problems  # imported here: few projects name one

        problems += zone_problems(project)
    problems += [one.problem for one in dangling if one.path not in project.unmet] + demand_problems(project)
    problems += stated_problems(project, load_standards().limits)
    project = dataclasses.replace(project, answered=match_answers(project))
    problems += _find_upside_down(project, files) + geometry_problems(project) + calendar_problems(project)
    problems = sorted(problems, key=lambda p: (p.file != name_file(file), p.file, p.line, p.column))
    return project, [*problems, *project.records.faults]


def defaults(schema: Schema, system: str) -> dict[Path, Any]:
    """The typed default of each field that has one; in SI that of the limit that bounds it, where it has its own."""
    usual = {path: convert(field, field.default) for path, field in schema.fields.items() if field.default}
    for limit in load_limits().values():
        if limit.bounds is not None and usual.get(limit.bounds) == limit.value:
            usual[limit.bounds] = limit.figure(system)
    return usual


def _side(file: FilePath, name: str, at: Path, home: str, schema: Schema, main: FileContent) -> FileContent:
    """The content of a side file named at `at`: only fields at home there."""
    try:
        side = read_content(_find_side_file(file, name, main), name, schema, main.rules, main.unwritten)
    except Refused as refused:
        place = main.text.places[at]
        for problem in refused.problems:
            about = f"{dotted_path(at)}: {name}" if problem.file else dotted_path(at)
            hint = (problem.file and _tell_beginning(file, name, home)) or problem.hint
            placed = Problem(problem.message, hint, about, place.file, place.line, place.column)
            main.text.add(problem if problem.line else placed)
        return FileContent(Text(name), {}, {}, main.rules)
    side.values.pop(("format",), None)
    check_home(side, home, schema)
    check_given_once(side, home, schema, main)
    return side


def _tell_beginning(file: FilePath, name: str, home: str) -> str:
    """How a firm or coating system file that is named and not there is begun; empty where it is there."""
    begun = home in SIDE_FILES and not os.path.lexists(file.resolve().parent / name)
    return f"check name and folder, or begin it by: specgen new {name} --file {home}" if begun else ""


def _find_side_file(file: FilePath, name: str, main: FileContent) -> FilePath:
    """The path of a side file; raises Refused outside the project folder and for a file that is already named.

    Of a project that is named by a link, the folder is that of the file itself: there its side files stand.
    """
    folder = file.resolve().parent
    try:
        path = (folder / name).resolve()
    except (OSError, ValueError, RuntimeError):
        raise refuse(f"{name!r} cannot be followed: links lead in a circle", "check the links in the folder") from None
    if not path.is_relative_to(folder):
        raise refuse(f"{name!r} points outside the project folder", "keep the file beside the project file")
    if path == file.resolve():
        raise refuse(f"{name!r} is the project file itself", "name another file, or leave this line out")
    if file.is_symlink() and not os.path.exists(path):  # noqa: PTH110 (no error for a name too long)
        raise refuse(f"{name!r} does not exist", f"the project is a link; its side files stand in {folder}")
    if path in main.named:
        raise refuse(f"{name!r} is already named", "name each file once")
    main.named.add(path)
    return path


def _name_records(file: FilePath, main: FileContent) -> Iterator[RecordGiven]:
    """The record files that the project names; one that may not be read is noted where it is named."""
    for number, name in enumerate(main.values.get(("records",), ())):
        at = ("records", str(number))
        try:
            yield read_given(_find_side_file(file, name, main), name, main.unwritten)
        except Refused as refused:
            place = main.text.places[at]
            for problem in refused.problems:
                about = f"{dotted_path(at)}: {name}" if problem.file else dotted_path(at)
                main.text.add(Problem(problem.message, problem.hint, about, place.file, place.line, place.column))


def _join(main: FileContent, sides: Mapping[str, FileContent], schema: Schema) -> Project:
    values, members, places = dict(main.values), dict(main.members), dict(main.text.places)
    maker = (
        {p: v for p, v in sides["coating_system"].values.items() if p[0] != ATTACHMENTS}
        if "coating_system" in sides
        else {}
    )
    for side in sides.values():
        for path, value in side.values.items():
            values.setdefault(path, value)
        for path, marks in side.members.items():
            members[path] = members.get(path, ()) + marks
        for path, place in side.text.places.items():
            places.setdefault(path, place)
    values |= _count_ages(values, members)
    members |= _find_used(values, members, (main, *sides.values()), schema)
    # A figure written in the plan is the project's own, even if it equals the manufacturer's.
    from_maker = frozenset(path for path in maker if path not in main.values)
    usual = defaults_of(values, schema)
    uses = [("project", main), *sides.items()]
    inputs = tuple(InputFile(use, content.text.file, content.text.digest) for use, content in uses)
    return Project(schema, values, members, places, maker, usual, from_maker, inputs=inputs)


def _count_ages(values: Mapping[Path, Any], members: Mapping[Path, Any]) -> dict[Path, int]:
    """The ages of concrete, masonry and stucco of which only the completion is told, at the start of work.

    Without a start they are those on the date of the package, from which on they only grow.
    """
    on = values.get(("schedule", "work_start")) or values.get(("package", "date"))
    walls = [("walls", mark, "substrate") for mark in members.get(("walls",), ())]
    told = {(*wall, "age_days"): values.get((*wall, "completed_on")) for wall in walls}
    return {path: (on - day).days for path, day in told.items() if on and day and on >= day and path not in values}


def _find_used(
    values: Mapping[Path, Any], members: Mapping[Path, Any], files: Iterable[FileContent], schema: Schema
) -> dict[Path, tuple[str, ...]]:
    """The collections with those members that have no value yet and whose marks are used elsewhere."""
    unfilled = [(path, marks) for one in files for path, marks in one.unfilled.items()]
    if not unfilled:
        return {}
    used = {
        (field.to, mark)
        for path in values
        if (field := schema.field_at(path)) and field.to
        for mark in _list_marks(values[path])
    }
    found: dict[Path, tuple[str, ...]] = {}
    for path, marks in unfilled:
        more = tuple(mark for mark in marks if (*path, mark) in used)
        if more:
            found[path] = found.get(path, members.get(path, ())) + more
    return found


def _list_marks(value: Any) -> tuple[Any, ...]:
    return value if isinstance(value, tuple) else (value,)


def _leave_open(project: Project, unmet: dict[Path, str]) -> Project:
    """The project without the values at these paths; their open items tell what is wrong with each."""
    if not unmet:
        return project
    values, maker = ({path: v for path, v in d.items() if path not in unmet} for d in (project.values, project.maker))
    return dataclasses.replace(project, values=values, maker=maker, unmet=unmet)


def defaults_of(values: Mapping[Path, Any], schema: Schema) -> dict[Path, Any]:
    """The typed defaults of a project with these values: in its unit system, and by the edition of its code."""
    return defaults(schema, values.get(("package", "units"), "ip")) | _by_edition(values)


def _by_edition(values: Mapping[Path, Any]) -> dict[Path, Any]:
    """The wind standard that the adopted edition of the code names; the plan may say another."""
    if values.get(("code", "model")) != "ibc":
        return {}
    edition = load_standards().editions.get(str(values.get(("code", "edition"))), {})
    return {("code", "wind_standard"): edition["wind_standard"]} if "wind_standard" in edition else {}


def _find_missing(project: Project, main: FileContent) -> list[Problem]:
    """Problems with the few required fields; any other absent field is an open item."""
    head = main.rules.of(project.schema.root)
    wanted = head.missing(_values_at(project, (), head.required))
    walls = project.members.get(("walls",), ()) or ("W1",)
    rules = main.rules.of(project.schema.node(("walls", "*")))
    lacks = {wall: rules.missing(_values_at(project, ("walls", wall), rules.required)) for wall in walls}
    if all(lacks.values()):
        wanted += [("walls", walls[0], *place) for place in lacks[walls[0]]]
    noted = Text(main.text.file, places=main.text.places)
    for path in wanted:
        if not any(p.path == dotted_path(path) for p in main.text.problems):
            noted.problem(path, MISSING, _tell_form(project.schema.field_at(path)))
    return noted.problems


def _tell_form(field: Field | None) -> str:
    """What is written for a field that must be given: one of its choices, or such a value as its example."""
    if field is None:
        return ""
    name = field.path[-1]
    return f"write one of {', '.join(field.values)}" if field.values else f"write {name}: {field.example}"


def _values_at(project: Project, member: Path, places: tuple[Path, ...]) -> dict[Path, Any]:
    """The given values of a member by place."""
    paths = {place: member + place for place in places}
    return {place: project.values[path] for place, path in paths.items() if path in project.values}


def _find_upside_down(project: Project, files: Iterable[FileContent]) -> list[Problem]:
    """Ranges upside down in one file, or between what two files together say; each told once."""
    schema = project.schema
    problems = [problem for one in files for problem in range_problems(one.values, one.text.places, schema)]
    return list(dict.fromkeys([*problems, *range_problems(project.values, project.places, schema)]))
