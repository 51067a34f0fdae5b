"""Reads the project file and its side files to one frozen Project; reports all problems of all files at once."""

import dataclasses
import os
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any

from specgen.model.field import Field, Path, Schema, dotted_path
from specgen.model.problem import Problem, Refused, refuse
from specgen.model.project import InputFile, Project
from specgen.model.suggest import suggest
from specgen.reading.attached_file import list_unfound
from specgen.reading.conversion import convert
from specgen.reading.demands import demand_problems
from specgen.reading.geometry import geometry_problems
from specgen.reading.given_file import name_file
from specgen.reading.leaves import read_values
from specgen.reading.positions import Text, read_text
from specgen.reading.ranges import range_problems
from specgen.reading.rules import Rules
from specgen.reading.structure import build_structure
from specgen.standards import load_limits, load_standards

SIDE_FILES = {"firm": "firm", "coating_system": "coating"}
_ATTACHMENTS = "attachments"


@dataclass
class _FileContent:
    """The content of one file: its text, typed values, members, rules, and the side files it names."""

    text: Text
    values: dict[Path, Any]
    members: dict[Path, tuple[str, ...]]
    rules: Rules
    named: set[FilePath] = dataclasses.field(default_factory=set)


def read_project(file: FilePath, schema: Schema) -> Project:
    """The project described in `file`; raises Refused with every fault of every file it names."""
    main = _read(file, name_file(file), schema, Rules())
    named = {home: main.values[(home,)] for home in SIDE_FILES if (home,) in main.values}
    sides = {home: _side(file, name, (home,), home, schema, main) for home, name in named.items()}
    _keep_attachments_apart(main, sides, schema)
    # Site records are only validated here; no clause uses them yet.
    records = [
        _side(file, name, ("records", str(number)), "record", schema, main)
        for number, name in enumerate(main.values.get(("records",), ()))
    ]
    project = _join(main, sides, records, schema)
    project = dataclasses.replace(project, unfound=list_unfound(project, file.resolve().parent))
    files = (main, *sides.values(), *records)
    problems = [problem for content in files for problem in content.text.problems]
    # A misspelled name makes a section missing as well: report that only when the names are right.
    problems += [] if problems else _find_missing(project, main)
    problems += _find_dangling(project) + demand_problems(project)
    problems += _find_upside_down(project, files) + geometry_problems(project)
    if problems:
        raise Refused(*sorted(problems, key=lambda p: (p.file != name_file(file), p.file, p.line, p.column)))
    return project


def defaults(schema: Schema, system: str) -> dict[Path, Any]:
    """The typed default of each field that has one; in SI that of the limit that bounds it, where it has its own."""
    usual = {path: convert(field, field.default) for path, field in schema.fields.items() if field.default}
    for limit in load_limits().values():
        if limit.bounds is not None and usual.get(limit.bounds) == limit.value:
            usual[limit.bounds] = limit.figure(system)
    return usual


def _read(path: FilePath, shown: str, schema: Schema, rules: Rules) -> _FileContent:
    text = read_text(path, shown)
    structure = build_structure(text, schema.root)
    values = read_values(text, structure.records, rules)
    if values.get(("format",), 1) != 1:
        text.problem(("format",), "this format is not known", "write format: 1")
    return _FileContent(text, values, structure.members, rules)


def _side(file: FilePath, name: str, at: Path, home: str, schema: Schema, main: _FileContent) -> _FileContent:
    """The content of a side file named at `at`: only fields at home there."""
    try:
        side = _read(_find_side_file(file, name, main), name, schema, main.rules)
    except Refused as refused:
        place = main.text.places[at]
        for problem in refused.problems:
            about = f"{dotted_path(at)}: {name}" if problem.file else dotted_path(at)
            placed = Problem(problem.message, problem.hint, about, place.file, place.line, place.column)
            main.text.add(problem if problem.line else placed)
        return _FileContent(Text(name), {}, {}, main.rules)
    side.values.pop(("format",), None)
    _check_home(side, home, schema)
    _check_given_once(side, home, schema, main)
    return side


def _keep_attachments_apart(main: _FileContent, sides: Mapping[str, _FileContent], schema: Schema) -> None:
    """Mark the papers of side files whose mark another file has too: A30 of the firm file becomes `firm A30`."""
    files = (main, *sides.values())
    given = Counter(mark.casefold() for content in files for mark in content.members.get((_ATTACHMENTS,), ()))
    for home, side in sides.items():
        own = side.members.get((_ATTACHMENTS,), ())
        _mark_attachments(side, SIDE_FILES[home], {mark for mark in own if given[mark.casefold()] > 1}, schema)
        _check_apart(side, main)


def _check_apart(side: _FileContent, main: _FileContent) -> None:
    """Note a paper of a side file that the project file has given its mark."""
    taken = {mark.casefold(): mark for mark in main.members.get((_ATTACHMENTS,), ())}
    for mark in side.members.get((_ATTACHMENTS,), ()):
        if mark.casefold() in taken:
            other = main.text.places[_ATTACHMENTS, taken[mark.casefold()]]
            message = f"{mark!r} is also a mark in {other.file}, line {other.line}"
            side.text.problem((_ATTACHMENTS, mark), message, "give that one another mark")


def _find_side_file(file: FilePath, name: str, main: _FileContent) -> FilePath:
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


def _check_home(side: _FileContent, home: str, schema: Schema) -> None:
    for path in [*side.values, *side.members]:
        owner = _home(path, schema)
        if owner != home and path[0] != _ATTACHMENTS:
            side.text.problem(path, f"this belongs in the {owner.replace('_', ' ')} file, not here", "move it there")


def _home(path: Path, schema: Schema) -> str:
    field = schema.field_at(path)
    if field is not None:
        return field.home
    return next(f.home for p, f in schema.fields.items() if p[0] == path[0])


def _check_given_once(side: _FileContent, home: str, schema: Schema, main: _FileContent) -> None:
    """Note a firm section given in two files; figures of the coating manufacturer may differ from the plan's."""
    if home != "firm":
        return
    mixed = {p[0] for p, f in schema.fields.items() if f.home != "firm"}
    for path in [*side.values, *side.members]:
        section = path if path[0] in mixed else path[:1]
        if path[0] != _ATTACHMENTS and section in main.text.places:
            first = main.text.places[section]
            side.text.problem(
                section, f"this stands also in {first.file}, line {first.line}", "keep it in one file only"
            )
            return


def _mark_attachments(side: _FileContent, word: str, shared: set[str], schema: Schema) -> None:
    """Put a word before these marks of a side file's attachments, and before what refers to them."""

    def marked(mark: str) -> str:
        return f"{word} {mark}" if mark in shared else mark

    def rename(path: Path) -> Path:
        return (_ATTACHMENTS, marked(path[1]), *path[2:]) if path[0] == _ATTACHMENTS and len(path) > 1 else path

    def link(path: Path, value: Any) -> Any:
        field = schema.field_at(path)
        if field is None or field.to != _ATTACHMENTS:
            return value
        return tuple(map(marked, value)) if isinstance(value, tuple) else marked(value)

    for path, value in list(side.values.items()):
        del side.values[path]
        side.values[rename(path)] = link(path, value)
    for path in list(side.text.places):
        if path[:1] == (_ATTACHMENTS,):
            side.text.places[rename(path)] = side.text.places[path]
    if (_ATTACHMENTS,) in side.members:
        side.members[(_ATTACHMENTS,)] = tuple(map(marked, side.members[(_ATTACHMENTS,)]))


def _join(
    main: _FileContent, sides: Mapping[str, _FileContent], records: Iterable[_FileContent], schema: Schema
) -> Project:
    values, members, places = dict(main.values), dict(main.members), dict(main.text.places)
    maker = (
        {p: v for p, v in sides["coating_system"].values.items() if p[0] != _ATTACHMENTS}
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
    # A figure written in the plan is the project's own, even if it equals the manufacturer's.
    from_maker = frozenset(path for path in maker if path not in main.values)
    usual = defaults_of(values, schema)
    uses = [("project", main), *sides.items(), *(("records", record) for record in records)]
    inputs = tuple(InputFile(use, content.text.file, content.text.digest) for use, content in uses)
    return Project(schema, values, members, places, maker, usual, from_maker, inputs=inputs)


def defaults_of(values: Mapping[Path, Any], schema: Schema) -> dict[Path, Any]:
    """The typed defaults of a project with these values: in its unit system, and by the edition of its code."""
    return defaults(schema, values.get(("package", "units"), "ip")) | _by_edition(values)


def _by_edition(values: Mapping[Path, Any]) -> dict[Path, Any]:
    """The wind standard that the adopted edition of the code names; the plan may say another."""
    if values.get(("code", "model")) != "ibc":
        return {}
    edition = load_standards().editions.get(str(values.get(("code", "edition"))), {})
    return {("code", "wind_standard"): edition["wind_standard"]} if "wind_standard" in edition else {}


def _find_missing(project: Project, main: _FileContent) -> list[Problem]:
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
            field = project.schema.field_at(path)
            example = f"write {path[-1]}: {field.example}" if field else ""
            noted.problem(path, "this must be given", example)
    return noted.problems


def _values_at(project: Project, member: Path, places: tuple[Path, ...]) -> dict[Path, Any]:
    """The given values of a member by place."""
    paths = {place: member + place for place in places}
    return {place: project.values[path] for place, path in paths.items() if path in project.values}


def _find_dangling(project: Project) -> list[Problem]:
    problems = []
    marks: dict[str, dict[str, None]] = {}
    for path, value in project.values.items():
        field = project.schema.field_at(path)
        if field is not None and field.to:
            known = marks.setdefault(field.to, dict.fromkeys(project.members.get((field.to,), ())))
            for mark in value if isinstance(value, tuple) else (value,):
                if mark not in known:
                    problems.append(_describe_dangling(project, field, path, mark, known))
    return problems


def _find_upside_down(project: Project, files: Iterable[_FileContent]) -> list[Problem]:
    """Ranges upside down in one file, or between what two files together say; each told once."""
    schema = project.schema
    problems = [problem for one in files for problem in range_problems(one.values, one.text.places, schema)]
    return list(dict.fromkeys([*problems, *range_problems(project.values, project.places, schema)]))


def _describe_dangling(project: Project, field: Field, path: Path, mark: str, known: Iterable[str]) -> Problem:
    collection = project.schema.collections[(field.to, "*")]
    place = project.place(path)
    hint = suggest(mark, known) if known else f"no {collection.label.lower()} are given"
    return Problem(
        f"{mark!r} is the mark of no {collection.one}", hint, place.path, place.file, place.line, place.column
    )
