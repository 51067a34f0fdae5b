"""`specgen status`: where the work stands by the site record, what comes next, and who owes what."""

from argparse import ArgumentParser, Namespace
from collections.abc import Iterable
from dataclasses import asdict
from datetime import date, datetime

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome, read_file_name
from specgen.commands._elevation import find_elevation, list_panels_of
from specgen.commands._project_file import FILE_HELP, find_project_file
from specgen.computing.calendars import find_calendar
from specgen.model.absence import Absent
from specgen.model.problem import Refused, refuse
from specgen.model.project import Project
from specgen.model.record_judgment import RecordJudgment
from specgen.model.status import END_OF_DAY, ProjectStatus
from specgen.model.suggest import suggest
from specgen.model.typed_views import root_of
from specgen.pipeline import judge_entries, read_with_records
from specgen.reading.conversion import InvalidValue
from specgen.reading.moment_texts import read_moment
from specgen.recording.next_step import NextStart, by_the_clock
from specgen.recording.panel_history import find_history, list_panels
from specgen.recording.status import Asked, find_status
from specgen.standards import load_standards
from specgen.terminal.screen import Line, Screen, find_screen, show_lines
from specgen.terminal.status_data import KEYS, PANEL_KEYS, history_to_data, status_to_data
from specgen.terminal.status_face import list_face_lines
from specgen.terminal.status_panel import list_panel_lines
from specgen.terminal.status_text import list_status_lines

HELP = "where each face stands, what is next, and who owes what"
ORDER = 43
EXAMPLES = (
    ("status project.yaml log.csv", "each step on each elevation, what is next, who owes what"),
    ("status project.yaml log.csv --elevation E1", "one elevation: dates, crews, areas, releases"),
    ("status project.yaml log.csv --panel E1-A3", "the history of one panel"),
    ("status project.yaml log.csv --at 2027-06-15T10:00", "the same as it was at that moment"),
)
ENDS = {
    DONE: "told",
    AGAINST: "told, and something failed or was begun too early",
    NOT_DONE: "not told; one line says why",
}
READ_ON = "specgen fields log, specgen fields release, specgen fields inspection"
_AT_HELP = (
    "the moment, in local time of the site: 2027-06-15T10:00, or a day for its end; without it, the last one recorded"
)
_LOGS_HELP = "record files beside those that the project names: YAML, CSV, XLSX, or filled PDF forms"
_FORMAT_HELP = f"text, or json: {KEYS}; with --panel: {PANEL_KEYS}"


def arguments(parser: ArgumentParser) -> None:
    """Declare the project, its records, what is asked about, the moment, and the form of the answer."""
    parser.add_argument("file", metavar="FILE", nargs="?", help=FILE_HELP)
    parser.add_argument("logs", metavar="LOG", nargs="*", help=_LOGS_HELP)
    parser.add_argument("--elevation", metavar="E", help="the steps of this elevation alone")
    parser.add_argument("--panel", metavar="P", help="the history of this panel")
    parser.add_argument("--at", metavar="TIME", help=_AT_HELP)
    parser.add_argument("--format", choices=["text", "json"], default="text", help=_FORMAT_HELP)
    parser.add_argument("--color", choices=["auto", "always", "never"], default="auto", help="auto is on a terminal")


def run(args: Namespace) -> Outcome:
    """Tell where the work stands; a program that reads the data gets its object also where that is refused."""
    try:
        return _tell(args)
    except Refused as refused:
        errors = map(asdict, refused.problems)
        data = status_to_data(None, (), errors) if args.format == "json" else None
        return Outcome(NOT_DONE, data=data, problems=refused.problems)


def _tell(args: Namespace) -> Outcome:
    if args.elevation is not None and args.panel is not None:
        raise refuse("--elevation and --panel ask two questions", "ask one at a time")
    at = _read_moment(args.at)
    file = find_project_file(args.file)
    project = read_with_records(file, [read_file_name(log) for log in args.logs])
    judgment = judge_entries(project)
    if args.panel is not None:
        outcome = _tell_panel(args, project, judgment, at)
    else:
        asked = Asked(judgment, at, list_panels_of(project), find_next_start(project))
        outcome = _tell_faces(args, project, find_status(project, load_standards(), asked))
    return outcome._replace(messages=tuple(map(str, project.records.remarks)))


def _read_moment(text: str | None) -> datetime | None:
    """The moment that is asked about; of a day its end. Raises Refused."""
    if text is None:
        return None
    try:
        return datetime.combine(date.fromisoformat(text), END_OF_DAY) if len(text) == _OF_DAY else read_moment(text)
    except InvalidValue as wrong:
        raise refuse(f"--at: {wrong}", wrong.hint) from None
    except ValueError:
        raise refuse(f"--at: {text!r} is not a day", "write year-month-day, such as 2027-06-15") from None


_OF_DAY = len("2027-06-15")


def find_next_start(project: Project) -> NextStart:
    """The first moment of work at or after one, by the calendar; by the clock where no shift is given."""
    try:
        return find_calendar(root_of(project.root())).find_start
    except Absent:
        return by_the_clock


def _tell_faces(args: Namespace, project: Project, status: ProjectStatus) -> Outcome:
    """The answer on all elevations, or on one of them."""
    mark = find_elevation(project, args.elevation)
    faces = tuple(face for face in status.faces if mark in ("", face.elevation))
    one = faces[0] if mark else None
    outcome = Outcome(DONE if status.is_sound_on(faces) else AGAINST)
    if args.format == "json":
        return outcome._replace(data=status_to_data(status, faces))
    screen = find_screen(args.color)
    return _show(outcome, list_status_lines(status, screen) if one is None else list_face_lines(status, one), screen)


def _tell_panel(args: Namespace, project: Project, judgment: RecordJudgment, at: datetime | None) -> Outcome:
    list_marks = list_panels_of(project)
    layouts = {mark: list_marks(mark) for mark in project.members.get(("elevations",), ())}
    panels = list_panels(project, layouts)
    if args.panel not in panels:
        hint = suggest(args.panel, panels) or "no elevation is laid out, and no entry names a panel"
        raise refuse(f"there is no panel {args.panel!r}", hint)
    elevation = panels[args.panel]
    in_layout = args.panel in layouts.get(elevation, ())
    history = find_history(project, load_standards(), judgment, at, args.panel, elevation, in_layout=in_layout)
    outcome = Outcome(AGAINST if history.failed else DONE)
    if args.format == "json":
        return outcome._replace(data=history_to_data(project, history))
    return _show(outcome, list_panel_lines(project, history), find_screen(args.color))


def _show(outcome: Outcome, lines: Iterable[Line], screen: Screen) -> Outcome:
    return outcome._replace(text=show_lines(lines, screen), painted=screen.painted)
