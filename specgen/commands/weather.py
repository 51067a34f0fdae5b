"""`specgen weather`: fit hours of a step in hourly weather data, by month and elevation, with what takes the others."""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from specgen.commands import DONE, NOT_DONE, Outcome, read_file_name
from specgen.commands._elevation import find_elevation
from specgen.commands._project_file import FILE_HELP, find_project_file
from specgen.model.absence import Absent
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.value_text import count
from specgen.output.disk import refuse_unfit_folder
from specgen.pipeline import make_resolver, read, told_from_here
from specgen.standards import load_standards
from specgen.terminal.progress import Tell, show_progress
from specgen.terminal.screen import find_screen, show_lines
from specgen.terminal.weather_data import weather_to_data
from specgen.terminal.weather_text import FaceSummary, WeatherReport, format_weather
from specgen.weather.faces import Asked, Judged, Surface, judge_faces
from specgen.weather.hours import HourlyData
from specgen.weather.judging import tell_missing
from specgen.weather.limits import STEPS, find_limits
from specgen.weather.reading import read_hours
from specgen.weather.summary import join_faces, summarize
from specgen.weather.surfaces import STATED_ERROR

HELP = "fit hours in hourly weather, by month and elevation"
ORDER = 44
EXAMPLES = (
    ("weather project.yaml --hours year.epw", "the fit hours of the gloss on each elevation, in shift and shade"),
    ("weather project.yaml --hours week.csv --step boards --all-hours", "every hour of the day, whatever the shift"),
    ("weather project.yaml --hours year.epw --surface model --out strips", "the wall modeled; the year drawn"),
)
ENDS = {DONE: "judged", NOT_DONE: "not judged; one line says why"}
READ_ON = "specgen go, for the readings of now; specgen fields weather; specgen fields shade"
_HOURS = (
    "hourly data as EPW, or as CSV whose head names its columns in any order, each with its unit: time (or date and "
    "hour), air F or C, humidity %%, wind mph or m/s, gust, rain in or mm or yes/no, surface F or C, direct W/m2, "
    "diffuse W/m2; air and humidity must be there, and wind for a sprayed coat"
)
_SURFACE = (
    "the wall: as warm as the air, by the column surface of the file, or by the heat balance of its face; by the "
    "column where the file has one, else air"
)
_JSON = (
    "json has fit_hours, by_month, windows (start, end, hours, ended_by), unknown_hours, the same by_elevation, and "
    "lost_by_month by cause"
)


def arguments(parser: ArgumentParser) -> None:
    """Declare the project, the hourly data, the step, what counts, and the form of the answer."""
    parser.add_argument("file", metavar="FILE", nargs="?", help=FILE_HELP)
    parser.add_argument("--hours", metavar="FILE", required=True, help=_HOURS)
    parser.add_argument("--step", metavar="STEP", default="gloss", help=f"gloss unless told; one of {', '.join(STEPS)}")
    parser.add_argument("--surface", choices=["air", "reading", "model"], help=_SURFACE)
    parser.add_argument("--all-hours", action="store_true", help="every hour, without shift, daylight, shade and tents")
    parser.add_argument("--elevation", metavar="E", help="only this elevation")
    parser.add_argument("-o", "--out", metavar="DIR", help="the folder that the year is drawn into, as SVG and PNG")
    parser.add_argument("--format", choices=["text", "json"], default="text", help=_JSON)


def run(args: Namespace) -> Outcome:
    """Judge the hours; raises Refused where file, step or project do not allow it."""
    with show_progress(args.quiet) as tell:
        report = _judge(args, tell)
        messages = _draw(report, Path(args.out), tell) if args.out is not None else ()
    if args.format == "json":
        return Outcome(DONE, data=weather_to_data(report), messages=messages)
    screen = find_screen()
    return Outcome(DONE, show_lines(format_weather(report), screen), messages=messages, painted=screen.painted)


def _judge(args: Namespace, tell: Tell) -> WeatherReport:
    if args.out is not None:
        refuse_unfit_folder(Path(args.out))
    file = find_project_file(args.file)
    with told_from_here(file):
        project = read(file)
    find_limits(project, load_standards(), args.step)  # a step that is not there is told before a file is read
    elevation = find_elevation(project, args.elevation)
    tell("reading the hours")
    data = read_hours(read_file_name(args.hours))
    _refuse_lacking(data, project, args.step)
    surface: Surface = args.surface or ("reading" if "surface" in data.columns else "air")
    tell("judging the hours")
    asked = Asked(args.step, surface, args.all_hours, _find_thin_air(project), elevation)
    return _report(project, data, asked, judge_faces(project, load_standards(), data, asked))


def _report(project: Project, data: HourlyData, asked: Asked, judged: Judged) -> WeatherReport:
    faces = tuple(
        FaceSummary(one.elevation, _name(project, one.elevation), one.limits, one.causes, summarize(data, one.causes))
        for one in judged.faces
    )
    whole = faces[0].summary if len(faces) == 1 else summarize(data, join_faces([one.causes for one in faces]))
    stated = (STATED_ERROR,) if asked.surface == "model" else ()
    notes = (*data.notes, *tell_missing(data), *judged.notes, *stated)
    return WeatherReport(
        project, data, asked.step, asked.surface, asked.all_hours, faces, whole, judged.left_out, notes
    )


def _refuse_lacking(data: HourlyData, project: Project, step: str) -> None:
    """Raise Refused where the file lacks a column without which the step is never fit."""
    limits = find_limits(project, load_standards(), step)
    if limits.reads("wind") and "wind" not in data.columns:
        raise refuse(f"{data.name} has no column wind, which {step} needs", "name one wind mph or wind m/s")


def _find_thin_air(project: Project) -> float:
    """The pressure of the air at the site over that at sea level; 1 where the altitude is not given."""
    try:
        pressure = make_resolver(project)((), "air-pressure")
    except Absent:
        return 1.0
    return next(float(step.value) for step in pressure.steps if step.symbol == "x")


def _name(project: Project, mark: str) -> str:
    name = project.get(("elevations", mark, "name")) if mark else None
    return f"{mark} {name}" if name else mark


def _draw(report: WeatherReport, folder: Path, tell: Tell) -> tuple[str, ...]:
    from specgen.output.weather_files import write_weather  # imported here: hours alone need no drawing

    tell("drawing")
    written = write_weather(report, folder)
    return (*written.notes, f"wrote {count(len(written.names), 'file')} to {folder}")
