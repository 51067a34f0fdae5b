"""Air that the guns draw, and the least compressor that feeds them with leaks and a reserve."""

from dataclasses import dataclass
from fractions import Fraction

from specgen.computing.guards import refuse_negative_percent
from specgen.model.absence import Absent
from specgen.model.field import Path, below
from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working, exact
from specgen.quantities.parse import QuantityError, number_of, parse_quantity
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS
from specgen.resolving.provider import Ask, Key, Provider

SIZING = Source(Kind.MEMORY, "usual sizing of site air: flow by count by duty, 10 % for leaks, 20 to 25 % in reserve")
LEAK, RESERVE = Fraction(10), Fraction(20)  # percent
NOTES = (
    "Standard air: hold it against the air of the compressor at the altitude of the site, not against its rating.",
    "Duty evens out over time; while all triggers are pulled the receiver must carry what the compressor does not.",
)


@dataclass(frozen=True, slots=True)
class Load:
    """Guns of one kind: flow of one with its trigger pulled, how many, and the share of the time it is pulled.

    `path` is that of a gun of the project.
    """

    flow: Quantity
    count: int
    duty: Fraction
    path: Path = ()


def loads_of(text: str) -> tuple[Load, ...]:
    """The guns written as `12*2*0.5,9*1*1` or `6 L/s*1*60%`; a bare flow is in scfm. Raises QuantityError."""
    return tuple(_load(part.strip()) for part in text.split(","))


def _load(text: str) -> Load:
    parts = [part.strip() for part in text.split("*")]
    if len(parts) != 3 or not all(parts):
        raise QuantityError(f"{text!r} is no gun", "write flow*count*duty for each gun, such as 12*2*0.5,9*1*1")
    flow = parse_quantity(f"{parts[0]} scfm" if parts[0][-1].isdigit() else parts[0], "flow", ("scfm", "L/s"))
    count, share = _number(parts[1]), _number(parts[2].removesuffix("%"))
    duty = share / 100 if parts[2].endswith("%") else share
    if flow.amount <= 0:
        raise QuantityError(f"the flow of {text!r} is not more than 0", "write the air of one gun, trigger pulled")
    if count.denominator != 1 or count < 1:
        raise QuantityError(f"{parts[1]!r} is no count of guns", "write 1 or more")
    if not 0 < duty <= 1:
        raise QuantityError(f"a duty of {parts[2]!r} is no share", "write more than 0 to 1, such as 0.5, or 50%")
    return Load(flow, int(count), duty)


def _number(text: str) -> Fraction:
    try:
        return number_of(text)
    except ValueError:
        raise QuantityError(f"{text!r} is no number", "write flow*count*duty, such as 12*2*0.5") from None


def air_demand(loads: tuple[Load, ...], leak: Fraction, reserve: Fraction, system: str) -> Working:
    """Standard air of the least compressor, in scfm or L/s; leak and reserve in percent. Raises Refused."""
    refuse_negative_percent(leak=leak, reserve=reserve)
    unit = "scfm" if system == "ip" else "L/s"
    added = (
        Given("a", "added for leaks, of the guns", float(leak) / 100, "", source=SIZING if leak == LEAK else None),
        Given("r", "added in reserve", float(reserve) / 100, "", source=SIZING if reserve == RESERVE else None),
    )
    made = Sum((*(one for at, load in enumerate(loads, 1) for one in _given(at, load, unit)), *added))
    numbers = range(1, len(loads) + 1)
    draws = " + ".join(f"q_{at} * n_{at} * u_{at}" for at in numbers)
    pulled = " + ".join(f"q_{at} * n_{at}" for at in numbers)
    made.step("D", "air the guns draw", draws, unit)
    made.step("D_l", "air with leaks", "D * (1 + a)", unit)
    least = made.step("Q", "least compressor, in standard air", "D_l * (1 + r)", unit)
    made.step("D_m", "air while all triggers are pulled", pulled, unit)
    return Working("air-demand", made.given, tuple(made.steps), least, unit, (SIZING,), NOTES, "", ("D", "D_m"))


def _given(at: int, load: Load, unit: str) -> tuple[Given, ...]:
    kind = load.path[-1] if load.path else f"of kind {at}"
    flow, count, duty = (below(load.path, name) for name in ("air_flow", "count", "duty"))
    return (
        Given(f"q_{at}", f"air of one gun {kind}", load.flow.number(unit), unit, flow),
        Given(f"n_{at}", f"guns {kind}", float(load.count), "", count),
        Given(f"u_{at}", f"share of the time a gun {kind} is pulled", float(load.duty), "", duty),
    )


def _direct(guns: tuple[Load, ...], leak: Fraction, reserve: Fraction, system: str) -> Working:
    # The list of guns is one text, so its own units say in which system to tell the result.
    return air_demand(guns, leak, reserve, UNITS[guns[0].flow.unit].system)


def for_project(project: View, ask: Ask) -> Working:
    """The air of the guns of the project, with the usual leaks and reserve."""
    loads = tuple(Load(gun.air_flow, gun.count, exact(gun.duty), gun.path) for gun in project.guns)
    if not loads:
        raise Absent(("guns",))
    return air_demand(loads, LEAK, RESERVE, project.project.system)


PROVIDER = Provider(
    "air-demand",
    "Air the guns need",
    (),
    for_project,
    reads=("guns", "guns.*.air_flow", "guns.*.count", "guns.*.duty"),
    direct=_direct,
    units=("scfm", "L/s"),
    order=20,
    keys=(
        Key("guns", "word", "flow*count*duty for each kind, such as 12*2*0.5,9*1*1", read=loads_of),
        Key("leak", "percent", "added for leaks, in percent", str(LEAK)),
        Key("reserve", "percent", "added in reserve, in percent", str(RESERVE)),
    ),
)
