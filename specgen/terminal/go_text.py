"""GO or NO-GO for a telephone held in the sun: 40 columns, the answer first, no color needed."""

from collections.abc import Iterator
from typing import Any

from specgen.model.project import Project
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity
from specgen.terminal.screen import Line, Screen
from specgen.terminal.site_limit_text import NAMES, own_unit, tell_bound_short, tell_source, tell_value, to_number
from specgen.weather.going import GoAnswer, Held
from specgen.weather.limits import SPRAYED

WIDTH = 40
SCREEN = Screen(width=WIDTH)
_TOLD_BY = {"air": "--air 62F", "surface": "--surface 62F", "humidity": "--rh 60", "wind": "--wind 6mph"}
_SAFETY = "Height and spray: site safety plan first."
_SHORT = {"margin": "above dew point", "sun": "direct sun on wall"}
_AHEAD = {"air": "forecast low", "rain": "rain forecast"}


def format_go(project: Project, answer: GoAnswer, where: str) -> Iterator[Line]:
    """The lines of an answer: what fails, what to look at, the dew point, what passes, and the sources by letter."""
    system = project.system
    sources = _Sources(project)
    yield Line(tell_answer(answer), style="bold")
    yield Line(f"{answer.limits.step}{', ' + where if where else ''}")
    for name in answer.not_told:
        yield Line(f"NOT TOLD: {NAMES[name]} (add {_TOLD_BY[name]})", 2)
    if answer.before is not None and answer.before.released is False:
        yield Line(f"NOT YET: {answer.before.what}: {answer.before.told}", 2)
    for one in answer.held:
        if one.fails:
            yield Line(f"FAILS: {_tell_failing(one, system)} {sources.mark(one)}", 2)
    for change in list_changes(answer, system):
        yield Line(f"TO GO: {change}", 2)
    if answer.look_first:
        yield Line(f"LOOK FIRST: {'; '.join(list_looks(answer, system))}", 2)
    if answer.before is not None and answer.before.released:
        yield Line(f"ok {answer.before.what}: {answer.before.told}", 3)
    yield from _dew_point(answer, system)
    for one in answer.held:
        if not one.fails:
            yield Line(f"ok {_tell(one, system)} {sources.mark(one)}", 3)
    if answer.not_read:
        yield Line(f"no limit of this step: {', '.join(NAMES[name] for name in answer.not_read)}", 2)
    for field in answer.limits.unset:
        yield Line(f"not set in the project: {field}", 2)
    yield from sources.list()
    yield Line(_SAFETY if answer.limits.step in SPRAYED else "Height: site safety plan first.", 2)


def tell_answer(answer: GoAnswer) -> str:
    """GO, GO IF what must be looked at first is right, or NO-GO."""
    return "GO" if answer.is_sure else "GO IF" if answer.goes else "NO-GO"


def list_looks(answer: GoAnswer, system: str) -> list[str]:
    """What must be looked at first, with its figures."""
    return [one.said.format("" if one.value is None else tell_value(one.value, system)) for one in answer.look_first]


class _Sources:
    """The sources of the limits held, each with a letter in the order in which it is met."""

    def __init__(self, project: Project) -> None:
        self.project = project
        self.known: dict[str, str] = {}

    def mark(self, held: Held) -> str:
        """The letter of the source of a limit: `(a)`."""
        told = tell_source(self.project, held.limit.source)
        return f"({self.known.setdefault(told, chr(ord('a') + len(self.known)))})"

    def list(self) -> Iterator[Line]:
        """What each letter stands for."""
        for told, letter in self.known.items():
            yield Line(f"({letter}) {told}", 4)


def _dew_point(answer: GoAnswer, system: str) -> Iterator[Line]:
    dew_point, margin = answer.readings.find_dew_point(), answer.readings.find_margin()
    if dew_point is not None:
        above = "" if margin is None else f", wall {_tell_beside(margin, system)}"
        yield Line(f"Dew point {_tell_value(dew_point, system)}{above}", 2)


def _tell_beside(margin: Quantity, system: str) -> str:
    """`22.1 °F above`, `6.1 °F below`: the wall beside the dew point."""
    told = _tell_value(margin, system)
    return f"{told.removeprefix('-').removeprefix('−')} {'below' if margin.amount < 0 else 'above'}"


def _tell_failing(held: Held, system: str) -> str:
    """`wind 12 mph, max. 8 mph: 4 mph over`."""
    if held.limit.reading == "margin" and held.value.amount < 0:
        least = tell_value(held.limit.value, system)
        return f"wall {_tell_beside(held.value, system)} dew point; needs {least} above"
    return f"{_tell(held, system)}: {_tell_apart(held, system)}"


def _tell(held: Held, system: str) -> str:
    """`wind 12 mph, max. 8 mph`."""
    limit = held.limit
    name = _AHEAD[limit.reading] if held.ahead else _SHORT.get(limit.reading, NAMES[limit.reading])
    if limit.sense == "none":
        return f"{name}: {'yes' if held.value else 'no'}"
    return f"{name} {_tell_apart_value(held, system)}, {tell_bound_short(limit, system)}"


def _tell_apart_value(held: Held, system: str) -> str:
    """A reading to a tenth, or to as many places as show that one which fails is not its limit."""
    limit = tell_value(held.limit.value, system)
    for places in (1, 2, 3):
        told = _tell_value(held.value, system, places)
        if not held.fails or told != limit:
            break
    return told + _tell_as_read(held, system)


def _tell_as_read(held: Held, system: str) -> str:
    """` (22 °C)`: a reading typed in a unit of the other system, as it was read."""
    value = held.value
    if not isinstance(value, Quantity) or held.limit.reading == "margin":
        return ""
    other = own_unit(value, "ip" if system == "si" else "si")
    return f" ({format_decimal(value.to(other), 8, 1)} {_print_apart(other)})" if value.unit == other else ""


def _tell_apart(held: Held, system: str) -> str:
    """How far a reading lies from its limit."""
    value, limit = held.value, held.limit.value
    if limit is None:
        return "none allowed"
    if isinstance(value, Quantity):
        unit = own_unit(value, system)
        number = abs(value.number(unit) - limit.number(unit))
        told = f"{_round(number)} {_print_apart(unit)}"
    else:
        told = f"{format_decimal(abs(value - limit))}%"
    return f"{told} {'short' if held.limit.sense == 'least' else 'over'}"


def _print_apart(unit: str) -> str:
    return {"F": "°F", "C": "°C", "F apart": "°F", "C apart": "°C"}.get(unit, unit)


def _round(number: float) -> str:
    """To a tenth; what is less by as many figures as show that it is not none."""
    return format_decimal(round(number, 1)) if number >= 0.05 or not number else f"{number:.1g}"


def _tell_value(value: Any, system: str, places: int = 1) -> str:
    """A reading in the project's own unit."""
    if isinstance(value, Quantity):
        unit = own_unit(value, system)
        return f"{format_decimal(value.to(unit), 8, places)} {_print_apart(unit)}"
    return tell_value(value, system)


def list_changes(answer: GoAnswer, system: str) -> list[str]:
    """What would let the step go on, a line for each reading that fails."""
    changes = [_tell_change(one, answer, system) for one in answer.held if one.fails]
    return list(dict.fromkeys(changes))


def _tell_change(held: Held, answer: GoAnswer, system: str) -> str:
    limit = held.limit
    if limit.reading == "rain":
        return "wait for dry weather that holds" if held.ahead else "wait until wall and weather are dry"
    if limit.reading == "sun":
        return "shade the wall, or wait for its own shade"
    figure = tell_value(limit.value, system)
    if limit.reading == "margin":
        return _tell_warmer(answer, limit.value, system)
    if held.ahead:
        return f"wait for {limit.hold} h at {figure} or more, or tent and heat"
    return {
        ("air", "least"): f"wait for air of {figure} or more, or tent and heat",
        ("surface", "least"): f"wait for a wall of {figure} or more, or tent and heat",
        ("surface", "most"): f"shade the wall until it reads {figure} or less",
        ("humidity", "most"): f"wait for humidity of {figure} or less",
    }.get((limit.reading, limit.sense), f"wait for wind of {figure} or less, gusts too")


def _tell_warmer(answer: GoAnswer, margin: Quantity, system: str) -> str:
    """The wall, in the project's own unit, at which it lies far enough above the dew point."""
    dew_point = answer.readings.find_dew_point()
    unit = "C" if system == "si" else "F"
    wanted = dew_point.number(unit) + margin.number(f"{unit} apart") if dew_point is not None else 0.0
    tenth = -(-round(wanted * 100) // 10) / 10  # rounded up: at this reading it passes
    return f"wait for a wall of {format_decimal(tenth, 4)} °{unit}, or drier air"


def go_to_data(project: Project, answer: GoAnswer, elevation: str) -> dict[str, Any]:
    """The answer as data; figures are bare numbers in the units of the project."""
    system = project.system
    dew_point, margin = answer.readings.find_dew_point(), answer.readings.find_margin()
    held = [_held_to_data(project, one) for one in answer.held]
    return {
        "format": 1,
        "project": project.get(("project", "name")),
        "step": answer.limits.step,
        "elevation": elevation or None,
        "go": answer.is_sure,
        "answer": tell_answer(answer),
        "before": None if answer.before is None else answer.before._asdict(),
        "dew_point": None if dew_point is None else to_number(dew_point, system)[0],
        "above_dew_point": None if margin is None else to_number(margin, system)[0],
        "unit": "C" if system == "si" else "F",
        "fails": [one for one in held if one["fails"]],
        "held": held,
        "not_told": list(answer.not_told),
        "look_first": list_looks(answer, system),
        "no_limit": list(answer.not_read),
        "to_go": list_changes(answer, system),
    }


def _held_to_data(project: Project, held: Held) -> dict[str, Any]:
    system = project.system
    value, unit = to_number(held.value, system)
    limit = to_number(held.limit.value, system)[0]
    return {
        "reading": held.limit.reading,
        "ahead": held.ahead,
        "value": held.value if isinstance(held.value, bool) else value,
        "sense": held.limit.sense,
        "limit": limit,
        "unit": unit,
        "apart": None if value is None or limit is None else round(value - limit, 6),
        "fails": held.fails,
        "source": tell_source(project, held.limit.source),
    }
