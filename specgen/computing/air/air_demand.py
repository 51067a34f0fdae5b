"""Air that the guns draw, and the least compressor that feeds them with leaks and a reserve."""

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import Absent
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.field import Path, dotted_field
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Description
from specgen.model.working import InputRow, Working
from specgen.quantities.format import format_quantity
from specgen.quantities.number import QuantityError, is_number, parse_number
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS
from specgen.resolving.provider import Ask

SIZING = Source(Kind.MEMORY, "usual sizing of site air: flow by count by duty, 10 % for leaks, 20 to 25 % in reserve")
LEAK, RESERVE = 10, 20  # percent
# What a sum from keys takes; common practice, no source: wider than any gun, crew or yard.
SHARE = ("0", "100")
LEAST_FLOW, MOST_FLOW, MOST_GUNS = Quantity.of("0.1", "scfm"), Quantity.of(200, "scfm"), 100
NOTES = (
    "Standard air: compare with compressor output at site altitude, not with its rating.",
    "Duty is an average over the work.",
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


def read_loads(text: str) -> tuple[Load, ...]:
    """The guns written as `12*2*0.5,9*1*1` or `6 L/s*1*60%`; a bare flow is in scfm. Raises QuantityError."""
    return tuple(_load(part.strip()) for part in text.split(","))


def _load(text: str) -> Load:
    parts = [part.strip() for part in text.split("*")]
    if len(parts) != 3 or not all(parts):
        raise QuantityError(f"{text!r} is no gun", "write flow*count*duty for each gun, such as 12*2*0.5,9*1*1")
    flow = parse_quantity(f"{parts[0]} scfm" if is_number(parts[0]) else parts[0], "flow", ("scfm", "L/s"))
    count, share = parse_number(parts[1]), parse_number(parts[2].removesuffix("%"))
    duty = share / 100 if parts[2].endswith("%") else share
    if not LEAST_FLOW <= flow <= MOST_FLOW:
        ends = " to ".join(format_quantity(end, flow.unit) for end in (LEAST_FLOW, MOST_FLOW))
        raise QuantityError(f"the flow of {text!r} is no air of one gun", f"it lies from {ends}, trigger pulled")
    if count.denominator != 1 or not 1 <= count <= MOST_GUNS:
        raise QuantityError(f"{parts[1]!r} is no count of guns", f"write 1 to {MOST_GUNS}")
    if not 0 < duty <= 1:
        raise QuantityError(f"a duty of {parts[2]!r} is no share", "write more than 0 to 1, such as 0.5, or 50%")
    return Load(flow, int(count), duty)


class DemandInputs(Inputs):
    """The guns, and what is added to the air they draw, in percent."""

    guns: tuple[Load, ...] = option_input("flow*count*duty for each kind, such as 12*2*0.5,9*1*1", read=read_loads)
    leak: Fraction | int = given_input(
        "", "", "percent", default=LEAK, about="added for leaks, in percent", least=0, span=SHARE
    )
    reserve: Fraction | int = given_input(
        "", "", "percent", default=RESERVE, about="added in reserve, in percent", least=0, span=SHARE
    )


def air_demand(inputs: DemandInputs) -> Working:
    """Standard air of the least compressor, in scfm or L/s. Raises Refused."""
    unit = "scfm" if inputs.system == "ip" else "L/s"
    working = WorkingBuilder(
        (
            *(row for at, load in enumerate(inputs.guns, 1) for row in _load_rows(at, load, unit)),
            _added_row("a", "leak allowance", inputs.leak, LEAK),
            _added_row("r", "reserve", inputs.reserve, RESERVE),
        )
    )
    numbers = range(1, len(inputs.guns) + 1)
    working.step("D", "gun air draw", " + ".join(f"q_{at} * n_{at} * u_{at}" for at in numbers), unit)
    working.step("D_l", "air with leaks", "D * (1 + a)", unit)
    working.step("Q", "required compressor flow, standard air", "D_l * (1 + r)", unit)
    working.step("D_m", "air draw, all triggers pulled", " + ".join(f"q_{at} * n_{at}" for at in numbers), unit)
    return working.build("air-demand", "Q", (SIZING,), NOTES, secondary_results=("D", "D_m"))


def _added_row(symbol: str, title: str, percent: Fraction | int, usual: int) -> InputRow:
    return InputRow(symbol, title, float(percent) / 100, "", source=SIZING if percent == usual else None)


def _load_rows(at: int, load: Load, unit: str) -> tuple[InputRow, ...]:
    kind = load.path[-1] if load.path else f"of kind {at}"
    flow, count, duty = (dotted_field(load.path, name) for name in ("air_flow", "count", "duty"))
    return (
        InputRow(f"q_{at}", f"air flow of gun {kind}", load.flow.number(unit), unit, flow),
        InputRow(f"n_{at}", f"number of guns {kind}", float(load.count), "", count),
        InputRow(f"u_{at}", f"trigger duty of gun {kind}", float(load.duty), "", duty),
    )


def _from_keys(guns: tuple[Load, ...], system: str, **more: Any) -> Working:
    # The list of guns is one text, so its own units say in which system to tell the result.
    return air_demand(DemandInputs(guns=guns, system=UNITS[guns[0].flow.unit].system, **more))


def for_project(project: Description, ask: Ask) -> Working:
    """The air of the guns of the project, with the usual leaks and reserve."""
    loads = tuple(Load(gun.air_flow, gun.count, _exact(gun.duty), gun.path) for gun in project.guns)
    if not loads:
        raise Absent(("guns",))
    return air_demand(DemandInputs.from_project(project, ask, guns=loads))


def _exact(number: float | Fraction) -> Fraction:
    """A float as the fraction its shortest decimal print stands for: 0.1 is 1/10."""
    return number if isinstance(number, Fraction) else Fraction(repr(float(number)))


def compare_draw(project: Description, ask: Ask) -> Comparison:
    """What the guns draw with all triggers pulled against the air of the compressor at the site."""
    draw = next(step for step in ask("air-demand").secondary_steps if step.symbol == "D_m")
    return at_most(Quantity.of(repr(draw.value), draw.unit), ask("air-supply").quantity)


def compare_demand(project: Description, ask: Ask) -> Comparison:
    """The same with leaks and reserve."""
    return at_most(ask("air-demand").quantity, ask("air-supply").quantity)


_DECLARED = provide(
    "Air demand of the spray guns",
    DemandInputs,
    air_demand,
    for_member=for_project,
    reads=("guns", "guns.*.air_flow", "guns.*.count", "guns.*.duty"),
    beside=("compressor-rating",),
    checks=(
        Check("air with leaks and reserve", "compressor air", ("AIR-08a",), compare_demand),
        Check("air draw, all triggers pulled", "compressor air", (), compare_draw),
    ),
    order=20,
)
PROVIDER = replace(
    _DECLARED,
    direct=_from_keys,
    example='"guns=12*2*0.5,9*1*1"',
)
