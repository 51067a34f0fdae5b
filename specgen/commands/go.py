"""`specgen go`: may this step go on now, by the readings at the wall."""

from argparse import ArgumentParser, Namespace
from typing import Any

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome
from specgen.commands._project_file import FILE_HELP, find_project_file
from specgen.model.problem import Problem, Refused, refuse
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.pipeline import read, told_from_here
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import InvalidValue, convert
from specgen.standards import load_standards
from specgen.terminal.go_text import SCREEN, format_go, go_to_data
from specgen.terminal.screen import find_screen, show_lines
from specgen.weather.going import SiteReadings, judge_go
from specgen.weather.limits import STEPS, find_limits

HELP = "may this step go on now: GO or NO-GO by the readings"
ORDER = 46
EXAMPLES = (
    (
        "go project.yaml --step gloss --air 62F --surface 70F --rh 60 --wind 6mph",
        "GO or NO-GO, the limit that fails and by how much, the dew point, what would change it",
    ),
    (
        "go project.yaml --air 62F --surface 70F --rh 60 --wind 6mph --rain no --sun no --forecast-low 54F",
        "with what the sky and the forecast say",
    ),
)
ENDS = {DONE: "GO", AGAINST: "NO-GO", NOT_DONE: "not judged; one line says why"}
READ_ON = "specgen weather, for the hours of a week or a year"
_JSON = "json has go, fails, held, not_told, look_first, to_go, dew_point, above_dew_point"
# The option of each reading, the field of the site record that it is, what it takes, and its help.
_READINGS = (
    ("air", "air", "T", "air at the wall, such as 62F or 17C"),
    ("surface", "surface", "T", "the wall, such as 70F or 21C"),
    ("wind", "wind", "SPEED", "wind, such as 6mph or 2.7m/s"),
    ("gust", "gust", "SPEED", "peak gust"),
    ("rain", "rain", "yes|no", "rain now"),
    ("sun", "sun_on_wall", "yes|no", "direct sun on the wall"),
    ("forecast-low", "forecast_low", "T", "lowest air forecast for the next 24 h"),
    ("forecast-rain", "forecast_rain", "yes|no", "rain forecast for the next 24 h"),
)
_HUMIDITY = "relative humidity at the wall in percent, such as 60"


def arguments(parser: ArgumentParser) -> None:
    """Declare the project, the step, the readings, and the form of the answer."""
    parser.add_argument("file", metavar="FILE", nargs="?", help=FILE_HELP)
    parser.add_argument("--step", metavar="STEP", default="gloss", help=f"gloss unless told; one of {', '.join(STEPS)}")
    parser.add_argument("--humidity", "--rh", metavar="PERCENT", help=_HUMIDITY)
    for option, _, takes, about in _READINGS:
        parser.add_argument(f"--{option}", metavar=takes, help=about)
    parser.add_argument("--elevation", metavar="E", help="the elevation, for its wall, shade and tent")
    parser.add_argument("--format", choices=["text", "json"], default="text", help=_JSON)


def run(args: Namespace) -> Outcome:
    """Judge the readings; raises Refused where step or reading is none."""
    file = find_project_file(args.file)
    with told_from_here(file):
        project = read(file)
    if args.elevation is not None:
        _refuse_unknown(project, args.elevation)
    limits = find_limits(project, load_standards(), args.step, args.elevation or "")
    readings = _read(project, args)
    answer = judge_go(limits, readings)
    code = DONE if answer.goes else AGAINST
    if args.format == "json":
        return Outcome(code, data=go_to_data(project, answer, args.elevation or ""))
    screen = SCREEN._replace(painted=find_screen().painted)
    return Outcome(code, show_lines(format_go(project, answer, args.elevation or ""), screen), painted=screen.painted)


def _refuse_unknown(project: Project, elevation: str) -> None:
    marks = project.members.get(("elevations",), ())
    if elevation not in marks:
        raise refuse(f"there is no elevation {elevation!r}", suggest(elevation, marks))


def _read(project: Project, args: Namespace) -> SiteReadings:
    """The readings of the command line, each as its field in the site record takes it; raises Refused."""
    values: dict[str, Any] = {}
    faults: list[Problem] = []
    for option, name in (*((one[0], one[1]) for one in _READINGS), ("humidity", "humidity")):
        text = getattr(args, option.replace("-", "_"))
        if text is not None:
            try:
                values[option.replace("-", "_")] = _convert(project, option, name, text)
            except InvalidValue as invalid:
                faults.append(Problem(f"--{option}: {invalid.message}", invalid.hint))
    if faults:
        raise Refused(*faults)
    readings = SiteReadings(**values)
    if readings.gust is not None and readings.wind is not None and readings.gust < readings.wind:
        raise refuse("--gust lies below --wind", "a gust is at least the wind: read again")
    return readings


def _convert(project: Project, option: str, name: str, text: str) -> Any:
    """A reading within what its field takes; raises InvalidValue."""
    field = project.schema.fields[("log", name)]
    value = convert(field, _in_capitals(text) if field.dimension == "temperature" else text)
    if not isinstance(value, Quantity) and field.kind != "percent":
        return value
    least, most = (convert(field, bound) for bound in (field.least, field.most))
    if not least <= value <= most:
        unit = " %" if field.kind == "percent" else ""
        raise InvalidValue(f"{text!r} is not possible", f"it lies from {field.least} to {field.most}{unit}")
    if field.kind == "percent" and not value:
        raise InvalidValue(f"{text!r} is not possible", "air is never without humidity: read again")
    return value


def _in_capitals(text: str) -> str:
    """A temperature with its unit in capitals: `62f` can mean nothing else here."""
    return f"{text[:-1]}{text[-1].upper()}" if text[-1:] in ("f", "c") else text
