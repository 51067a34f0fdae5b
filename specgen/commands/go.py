"""`specgen go`: may this step go on now, by the readings at the wall."""

from argparse import ArgumentParser, Namespace
from typing import Any

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome
from specgen.commands._elevation import find_elevation
from specgen.commands._project_file import FILE_HELP, find_project_file
from specgen.model.problem import Problem, Refused, refuse
from specgen.model.project import Project
from specgen.pipeline import read_with_records, told_from_here
from specgen.quantities.quantity import Quantity
from specgen.reading.choices import list_meant
from specgen.reading.conversion import InvalidValue, convert
from specgen.recording.status import Asked
from specgen.recording.step_before import find_before
from specgen.standards import load_standards
from specgen.terminal.go_text import SCREEN, format_go, go_to_data
from specgen.terminal.screen import find_screen, show_lines
from specgen.weather.going import SiteReadings, judge_go
from specgen.weather.limits import SPRAYED, STEPS, find_limits

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
ENDS = {
    DONE: "GO, or GO IF what it says to look at first is right",
    AGAINST: "NO-GO",
    NOT_DONE: "not judged; one line says why",
}
READ_ON = "specgen weather, for the hours of a week or a year"
_JSON = (
    "json has go (nothing left to look at), answer, before, fails, held, not_told, look_first, no_limit, to_go, "
    "dew_point, above_dew_point"
)
# The option of each reading, the field of the site record that it is, what it takes, and its help.
_READINGS = (
    ("air", "air", "T", "air at the wall, such as 62F or 17C"),
    ("surface", "surface", "T", "the wall, such as 70F or 21C"),
    ("wind", "wind", "SPEED", "wind, such as 6mph or 2.7m/s"),
    ("gust", "gust", "SPEED", "peak gust"),
    ("rain", "rain", "yes|no", "rain now"),
    ("sun", "sun_on_wall", "yes|no", "direct sun on the wall"),
    ("forecast-low", "forecast_low", "T", "lowest air forecast for 24 h or until dry, whichever is longer"),
    ("forecast-rain", "forecast_rain", "yes|no", "rain forecast for those hours"),
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
        project = read_with_records(file, [])
    standards, elevation = load_standards(), find_elevation(project, args.elevation)
    step = _find_step(project, args.step)
    limits = find_limits(project, standards, step, elevation)
    readings = _read(project, args)
    answer = judge_go(limits, readings, find_before(project, standards, step, elevation, Asked()))
    code = DONE if answer.goes else AGAINST
    if args.format == "json":
        return Outcome(code, data=go_to_data(project, answer, elevation))
    screen = SCREEN._replace(painted=find_screen().painted)
    return Outcome(code, show_lines(format_go(project, answer, elevation), screen), painted=screen.painted)


def _find_step(project: Project, asked: str) -> str:
    """The step that a word of the trade means; of one that may mean any sprayed coat the last. Raises Refused."""
    field = project.schema.fields["log", "step"]
    choices = list_meant(field, asked)
    if len(choices) > 1 and not set(choices) <= set(SPRAYED):
        raise refuse(f"the step {asked!r} may be {' or '.join(choices)}", "write one of these")
    return choices[-1] if choices else asked


def _read(project: Project, args: Namespace) -> SiteReadings:
    """The readings of the command line, each as its field in the site record takes it; raises Refused."""
    values: dict[str, Any] = {}
    faults: list[Problem] = []
    for option, name in (*((one[0], one[1]) for one in _READINGS), ("humidity", "humidity")):
        text = getattr(args, option.replace("-", "_"))
        if text is not None:
            if option == "rain" and text.casefold() == "none":
                text = "no"
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
        unit = "%" if field.kind == "percent" else ""
        raise InvalidValue(f"{text!r} is not possible", f"it lies from {field.least} to {field.most}{unit}")
    if field.kind == "percent" and not value:
        raise InvalidValue(f"{text!r} is not possible", "air is never without humidity: read again")
    return value


def _in_capitals(text: str) -> str:
    """A temperature with its unit in capitals: `62f` can mean nothing else here."""
    return f"{text[:-1]}{text[-1].upper()}" if text[-1:] in ("f", "c") else text
