"""`specgen layout`: panels and joints of each elevation, drawn and listed in a folder."""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from specgen.commands import DONE, NOT_DONE, Outcome
from specgen.commands._project_file import FILE_HELP, find_project_file
from specgen.judging.applies import applicable
from specgen.model.absence import Absent
from specgen.model.field import dotted_path
from specgen.model.layout import ElevationLayout
from specgen.model.problem import Problem, Refused, refuse
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.model.value_text import count
from specgen.output.disk import refuse_unfit_folder, write_package
from specgen.output.layout_files import make_layout_files
from specgen.output.removal import tell_removed
from specgen.pipeline import make_resolver, read, told_from_here
from specgen.resolving.provider import Resolver
from specgen.terminal.progress import Tell, show_progress

HELP = "panels and joints: drawings and lists"
ORDER = 35
EXAMPLES = (
    ("layout project.yaml --out panels", "every elevation drawn, with its list of panels and joints"),
    ("layout project.yaml --out panels --elevation E1 --sheet a3", "one elevation, on sheets of one size"),
)
ENDS = {DONE: "written", NOT_DONE: "not written; one line says why"}
READ_ON = "specgen fields elevations, specgen fields panel_limits"
SHEETS = ("letter", "tabloid", "a4", "a3")


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, the folder, the elevation, and the size of the sheets."""
    parser.add_argument("file", metavar="FILE", nargs="?", help=FILE_HELP)
    parser.add_argument("-o", "--out", metavar="DIR", required=True, help="the folder that they are written to")
    parser.add_argument("--elevation", metavar="E", help="only this elevation")
    parser.add_argument("--sheet", choices=SHEETS, help="size of the sheets; else the smallest that serves")


def run(args: Namespace) -> Outcome:
    """Write drawings and lists; raises Refused where no elevation can be laid out."""
    with show_progress(args.quiet) as tell:
        return _draw(args, tell)


def _draw(args: Namespace, tell: Tell) -> Outcome:
    refuse_unfit_folder(Path(args.out))
    file = find_project_file(args.file)
    with told_from_here(file):
        project = read(file)
    resolve, missing = make_resolver(project), dict[str, Problem]()
    layouts = []
    for mark in _choose(project, args.elevation):
        tell(f"laying out {mark}")
        try:
            layouts.append(_lay_out(project, resolve, mark))
        except Absent as absent:
            missing[mark] = _describe_absent(project, resolve, mark, absent)
    if not layouts:
        raise Refused(*missing.values())
    tell("drawing")
    made = make_layout_files(project, resolve, layouts, args.sheet)
    marks = [layout.elevation for layout in layouts]
    about = {"format": 1, "project": project.get(("project", "name")), "elevations": marks}
    removed = tell_removed(Path(args.out), made.files)
    write_package(Path(args.out), made.files, about)
    left_out = list(map(str, missing.values()))
    told = [*made.notes, *left_out, *removed, f"wrote {count(len(made.files), 'file')} to {args.out}"]
    return Outcome(DONE, messages=tuple(told))


def _choose(project: Project, wanted: str | None) -> tuple[str, ...]:
    """The marks of the elevations to lay out; raises Refused where there is none of them."""
    marks = project.members.get(("elevations",), ())
    if wanted is not None and wanted not in marks:
        raise refuse(f"there is no elevation {wanted!r}", suggest(wanted, list(marks)))
    if not marks:
        raise refuse("the project has no elevations", "give them under elevations")
    return (wanted,) if wanted is not None else marks


def _lay_out(project: Project, resolve: Resolver, mark: str) -> ElevationLayout:
    layout: ElevationLayout = resolve(("elevations", mark), "layout")
    return layout


def _describe_absent(project: Project, resolve: Resolver, mark: str, absent: Absent) -> Problem:
    """Which fields an elevation lacks, and where they belong."""
    place = project.place(("elevations", mark))
    owed = (path for path in resolve.missing(("elevations", mark), "layouts") if applicable(project, path))
    fields = ", ".join(dict.fromkeys(map(dotted_path, (*absent.paths, *owed))))
    return Problem(f"{mark} is not laid out", f"give {fields}", "", place.file, place.line, place.column)
