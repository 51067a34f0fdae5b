"""R-value of a wall, and temperature and vapor pressure between its layers in one steady winter month."""

from fractions import Fraction
from typing import NamedTuple

from specgen.computing.moisture._condensing import add_condensate, find_wet_planes
from specgen.computing.moisture._saturation import SOURCE as SATURATION
from specgen.computing.moisture._saturation import express_saturation
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import Absent
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.field import Path, dotted_field
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Wall, root_of
from specgen.model.value_text import words
from specgen.model.working import UNIT_CHANGE, InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Provider
from specgen.standards import find_source

RECALLED = Source(
    Kind.MEMORY, "ISO 13788, annex A: indoor air of normal occupancy by outdoor air; ISO 6946: films of air"
)
SOURCES = (
    SATURATION,
    find_source("iso_13788").quote("temperature by share of R-value, vapor pressure by share of vapor resistance"),
    RECALLED,
)
INSIDE_FILM, OUTSIDE_FILM = Quantity.of("0.13", "RSI"), Quantity.of("0.04", "RSI")
# A layer said to pass no vapor still has laps and holes; a figure of our own that keeps the sum finite.
LEAST_PERMEANCE = Quantity.of("0.01", "perm")
VAPOR_RESISTANCE = {"ip": "1/perm", "si": "Pa·s·m²/ng"}
DAY = 86400
NOTES = (
    "Indoor air is that of normal occupancy: not valid for pools and other humid rooms.",
    "One month in steady state, without rain, sun, air leakage, or drying: shows where vapor may condense, not whether "
    "the wall dries; not sufficient alone to judge a drained wall.",
    "The coating is a layer of its own, outside the others: a permeance tested with the coating on counts it twice, "
    "which is conservative.",
    "Adhesive behind the board is not counted unless it is a layer of its own, which is conservative.",
)
DENSE_NOTE = "Layers of less than 0.01 perm are taken as 0.01 perm."


class Layer(NamedTuple):
    """One layer of a wall, with its R-value and permeance; `path` is that of the layer in a project."""

    name: str
    r_value: Quantity
    permeance: Quantity
    path: Path = ()


class Inputs(NamedTuple):
    """Layers from inside to outside without the coating, permeance of the coating alone, and the coldest month.

    `low` and `high` are the mean daily ones of the month, `humidity` its mean in percent; `path` is that of the month
    in a project. `system` is ip or si.
    """

    layers: tuple[Layer, ...]
    coating: Quantity
    month: str
    low: Quantity
    high: Quantity
    humidity: Fraction | int
    path: Path = ()
    system: str = "ip"

    @property
    def units(self) -> tuple[str, str, str, str]:
        """The units of temperature, R-value, permeance and condensate."""
        return ("F", "R", "perm", "oz/yd2") if self.system == "ip" else ("C", "RSI", "ng/(Pa.s.m2)", "g/m2")

    @property
    def dense(self) -> bool:
        """Whether a layer, or the coating, passes less vapor than the sum can take."""
        return any(q < LEAST_PERMEANCE for q in (self.coating, *(layer.permeance for layer in self.layers)))


def wall_layers(inputs: Inputs) -> Working:
    """R-value of the wall with its films, in R or RSI; beside it how far vapor pressure passes saturation, in Pa.

    What condenses in a day follows beside it, for each place; source: `SOURCES`.
    """
    degree, resistance, _, mass = inputs.units
    working = WorkingBuilder(_rows(inputs))
    names = [layer.name for layer in inputs.layers]
    numbers = [str(n) for n in range(1, len(names) + 1)]
    working.step(
        "R_T", "R-value with air films", " + ".join(["R_si", *(f"R_{n}" for n in numbers), "R_se"]), resistance
    )
    _add_air(working, degree)
    _add_temperatures(working, names, degree)
    places = ["at the inner face", *(f"at the outer face of the {name}" for name in names)]
    wet = _add_vapor(working, names, places, VAPOR_RESISTANCE[inputs.system])
    add_condensate(working, wet, places, len(names) + 1, mass)
    surface = [0] if working.known["p_i"] > working.known["s_0"] else []
    told = _tell_places([places[n] for n in surface + wet])
    notes = (told, *NOTES, *((DENSE_NOTE,) if inputs.dense else ()))
    beside = ("X", *(f"q_{n}" for n in wet))
    return working.build("wall-layers", "R_T", SOURCES, notes, secondary_results=beside)


def _rows(inputs: Inputs) -> tuple[InputRow, ...]:
    degree, resistance, permeance, mass = inputs.units
    month, path = inputs.month, inputs.path
    rows = [
        InputRow("T_lo", f"mean daily low, {month}", inputs.low.number(degree), degree, dotted_field(path, "mean_min")),
        InputRow(
            "T_hi", f"mean daily high, {month}", inputs.high.number(degree), degree, dotted_field(path, "mean_max")
        ),
        InputRow("RH_e", f"mean humidity, {month}", float(inputs.humidity), "%", dotted_field(path, "mean_humidity")),
        InputRow("R_si", "interior air film", INSIDE_FILM.number(resistance), resistance, source=RECALLED),
    ]
    for n, layer in enumerate(inputs.layers, 1):
        open_to = max(layer.permeance, LEAST_PERMEANCE)
        rows += [
            InputRow(
                f"R_{n}", layer.name, layer.r_value.number(resistance), resistance, dotted_field(layer.path, "r_value")
            ),
            InputRow(
                f"W_{n}",
                f"permeance, {layer.name}",
                open_to.number(permeance),
                permeance,
                dotted_field(layer.path, "permeance"),
            ),
        ]
    coating, outermost = max(inputs.coating, LEAST_PERMEANCE), len(inputs.layers) + 1
    # Nanograms of one second to grams of a day, then to the unit of mass by area.
    day = Quantity.of(Quantity.of(1, permeance).amount * DAY / 10**9, "g/m2")
    return (
        *rows,
        InputRow(f"W_{outermost}", "permeance, coating", coating.number(permeance), permeance, "gloss.permeance"),
        InputRow("R_se", "exterior air film", OUTSIDE_FILM.number(resistance), resistance, source=RECALLED),
        InputRow("v", "daily vapor flow per perm and pascal", day.number(mass), mass, UNIT_CHANGE),
    )


def _add_air(working: WorkingBuilder, degree: str) -> None:
    """Adds temperature and vapor pressure of the outer air, and of the inner air that goes with it."""
    working.step("T_e", "outdoor air", "(T_lo + T_hi) / 2", degree)
    celsius = "T_e"
    if degree == "F":
        working.step("C_e", "outdoor air, Celsius", "(T_e - 32) / 1.8", "C")
        celsius = "C_e"
    inside = f"min(max(20, 15 + {celsius} / 2), 25)"
    working.step("T_i", "indoor air, normal occupancy", f"{inside} * 1.8 + 32" if degree == "F" else inside, degree)
    working.step("RH_i", "indoor humidity, normal occupancy", f"min(max(35, 45 + {celsius}), 65)", "%")
    for mark, where in (("i", "indoors"), ("e", "outdoors")):
        pressure = express_saturation(f"T_{mark}", degree, working.known[f"T_{mark}"])
        working.step(f"p_{mark}", f"vapor pressure {where}", f"RH_{mark} / 100 * {pressure}", "Pa")


def _add_temperatures(working: WorkingBuilder, names: list[str], degree: str) -> None:
    """Adds the temperature at the outer side of each layer, and saturation pressure there; 0 is the inner face."""
    before, share = "T_i", "R_si"
    for n, place in enumerate(["inner face", *(f"outer side of {name}" for name in names)]):
        working.step(f"T_{n}", f"temperature, {place}", f"{before} - (T_i - T_e) * {share} / R_T", degree)
        working.step(
            f"s_{n}", f"saturation, {place}", express_saturation(f"T_{n}", degree, working.known[f"T_{n}"]), "Pa"
        )
        before, share = f"T_{n}", f"R_{n + 1}"


def _add_vapor(working: WorkingBuilder, names: list[str], places: list[str], resistance: str) -> list[int]:
    """Adds vapor pressures and X, the most by which one passes saturation; returns where vapor condenses inside.

    The coating is the layer after those named; it gives no R-value, and vapor can be caught behind it.
    """
    last = len(names) + 1
    resistances = [f"Z_{n}" for n in range(1, last + 1)]
    for n, name in enumerate((*names, "coating"), 1):
        working.step(f"Z_{n}", f"vapor resistance, {name}", f"1 / W_{n}", resistance)
    working.step("Z_T", "vapor resistance of the wall", " + ".join(resistances), resistance)
    working.step("p_0", "vapor pressure, inner face", "min(p_i, s_0)", "Pa")
    for n, name in enumerate((*names, "coating"), 1):
        working.step(f"p_{n}", f"vapor pressure, outer side of {name}", f"p_{n - 1} - (p_0 - p_e) * Z_{n} / Z_T", "Pa")
    known = working.known
    over = ["p_i - s_0", *(f"p_{n} - s_{n}" for n in range(1, last))]
    excess = [known["p_i"] - known["s_0"], *(known[f"p_{n}"] - known[f"s_{n}"] for n in range(1, last))]
    where = places[excess.index(max(excess))]
    working.step("X", f"maximum vapor pressure less saturation, {where}", f"max({', '.join(over)})", "Pa")
    bounds = [known["p_0"], *(known[f"s_{n}"] for n in range(1, last)), known["p_e"]]
    return find_wet_planes([known[each] for each in resistances], bounds)


def _tell_places(places: list[str]) -> str:
    if not places:
        return "No condensation under these conditions."
    return f"Condensation under these conditions {', and '.join(places)}."


def for_wall(wall: Wall, ask: Ask) -> Working:
    """The layers of a wall in the coldest of the months that the project gives."""
    project = root_of(wall)
    layers = tuple(Layer(layer.name, layer.r_value, layer.permeance, layer.path) for layer in wall.layers)
    months = list(project.climate.months)
    # An empty list gives nothing to compute with.
    for given, path in ((layers, (*wall.path, "layers")), (months, ("climate", "months"))):
        if not given:
            raise Absent(path)
    coldest = min(months, key=lambda month: month.mean_min.amount + month.mean_max.amount)
    working = wall_layers(
        Inputs(
            layers=layers,
            coating=project.gloss.permeance,
            month=words(coldest.month),
            low=coldest.mean_min,
            high=coldest.mean_max,
            humidity=coldest.mean_humidity,
            path=coldest.path,
            system=wall.project.system,
        )
    )
    source = coldest.get("source")
    return working._replace(said=(("Climate data", source),)) if source else working


def compare_vapor(wall: Wall, ask: Ask) -> Comparison:
    """Vapor pressure against saturation where it comes nearest to it."""
    known = {step.symbol: step.value for step in ask("wall-layers").steps}
    last = sum(symbol.startswith("Z_") for symbol in known) - 1
    pairs = [(known["p_i"], known["s_0"]), *((known[f"p_{n}"], known[f"s_{n}"]) for n in range(1, last))]
    vapor, saturation = max(pairs, key=lambda pair: pair[0] - pair[1])
    return at_most(Quantity.of(repr(vapor), "Pa"), Quantity.of(repr(saturation), "Pa"))


PROVIDER = Provider(
    name="wall-layers",
    title="Wall R-value and winter vapor",
    each=("walls",),
    compute=for_wall,
    reads=("walls.*.layers", "climate.months", "gloss.permeance"),
    layered=True,
    checks=(Check("vapor pressure", "saturation", ("INS-05b",), compare_vapor),),
    order=10,
)
