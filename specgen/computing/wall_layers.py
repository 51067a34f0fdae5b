"""Heat and vapor through the layers of a wall in its coldest month: where vapor would condense."""

import math
from dataclasses import dataclass
from typing import Any

from ..vocabulary.problem import refuse
from ..vocabulary.project import View
from ..vocabulary.provider import Ask, Provider
from ..vocabulary.quantity import Quantity
from ..vocabulary.source import Kind, Source
from ..vocabulary.working import Given, Sum, Working
from ._coats import system_of
from ._saturation import SOURCE, saturation

METHOD = Source(
    Kind.PUBLISHED, "ISO 13788: temperature by share of resistance, vapor pressure by share of vapor resistance"
)
FILMS = Source(Kind.MEMORY, "ISO 13788: surface resistances 0.13 and 0.04 m2K/W, room of 20 °C")
ROOM = Source(Kind.MEMORY, "ISO 13788, annex A: room of usual occupancy, 35 % at -10 °C outside to 65 % at 20 °C")
INSIDE, OUTSIDE = Quantity.of("0.13", "RSI"), Quantity.of("0.04", "RSI")
ROOM_AIR = Quantity.of(20, "C")
NOTES = (
    "One steady winter month, without rain, air leakage or stored moisture: not a moisture design.",
    "A drained cavity and the drying of a year are not in this sum; the designer judges them.",
    "The layers count as the project lists them; a coat that is not listed is left out.",
)


@dataclass(frozen=True, slots=True)
class Layers(Working):
    """The working of a wall; `condensing` names the places between two layers where vapor would condense."""

    condensing: tuple[str, ...] = ()


def for_wall(wall: View, ask: Ask) -> Layers:
    """Resistance of a wall, R or RSI, with temperature and vapor pressure behind each layer. Raises Absent, Refused."""
    layers, system = list(wall.layers), system_of(wall)
    if not layers:
        raise refuse(f"wall {wall.mark} lists no layers", "list them from inside to outside")
    made = Sum((*_state(wall, "F" if system == "ip" else "C"), *_layers(layers, system)))
    total = _heat(made, len(layers), system)
    names = [str(layer.name) for layer in layers]
    wet = tuple(f"{names[n - 1]} / {names[n]}" for n in _wet(made, layers, "F" if system == "ip" else "C"))
    told = f"vapor condenses at {'; '.join(wet)}" if wet else "vapor condenses nowhere"
    notes = (f"In this month {told}.", *NOTES)
    sources = (METHOD, SOURCE, FILMS, ROOM)
    unit = "R" if system == "ip" else "RSI"
    return Layers("wall-layers", made.given, tuple(made.steps), total, unit, sources, notes, condensing=wet)


def _state(wall: View, degree: str) -> tuple[Given, ...]:
    """Room and weather of the coldest month."""
    project: Any = wall.project.root()
    coldest = min(project.climate.months, key=lambda month: month.mean_min.amount + month.mean_max.amount)
    outside = Quantity((coldest.mean_min.amount + coldest.mean_max.amount) / 2, "temperature", coldest.mean_min.unit)
    room = min(max(35 + (float(outside.to("C")) + 10), 35.0), 65.0)
    return (
        Given("T_i", "room", float(ROOM_AIR.to(degree)), degree, source=FILMS),
        Given("f_i", "humidity of the room", room, "%", source=ROOM),
        Given("T_e", "mean of the coldest month", float(outside.to(degree)), degree),
        Given("f_e", "mean humidity of that month", float(coldest.mean_humidity), "%"),
    )


def _layers(layers: list[Any], system: str) -> list[Given]:
    unit, perm = ("R", "perm") if system == "ip" else ("RSI", "ng/(Pa.s.m2)")
    made = [Given("R_i", "inner surface", float(INSIDE.to(unit)), unit, source=FILMS)]
    for number, layer in enumerate(layers, 1):
        if layer.permeance.amount <= 0:
            raise refuse(f"{layer.name} lets no vapor through", "give the permeance of the layer, more than 0")
        made.append(Given(f"R_{number}", str(layer.name), float(layer.r_value.to(unit)), unit))
        made.append(Given(f"M_{number}", f"{layer.name}, permeance", float(layer.permeance.to(perm)), perm))
    return [*made, Given("R_e", "outer surface", float(OUTSIDE.to(unit)), unit, source=FILMS)]


def _heat(made: Sum, count: int, system: str) -> float:
    parts = " + ".join(["R_i", *(f"R_{n}" for n in range(1, count + 1)), "R_e"])
    return made.step("R_t", "resistance of the wall", parts, "R" if system == "ip" else "RSI")


def _wet(made: Sum, layers: list[Any], degree: str) -> list[int]:
    """Adds the lines of each place between two layers; tells where vapor pressure is above saturation."""
    known, count = made.known, len(layers)
    made.step("p_i", "vapor of the room", f"f_i / 100 * {saturation('T_i', degree, known['T_i'])}", "Pa")
    made.step("p_e", "vapor outside", f"f_e / 100 * {saturation('T_e', degree, known['T_e'])}", "Pa")
    made.step("Z_t", "vapor resistance of the wall", " + ".join(f"1 / M_{n}" for n in range(1, count + 1)), "")
    wet = []
    for n in range(1, count):
        inner = " + ".join(["R_i", *(f"R_{k}" for k in range(1, n + 1))])
        passed = " + ".join(f"1 / M_{k}" for k in range(1, n + 1))
        where = f"{layers[n - 1].name} / {layers[n].name}"
        made.step(f"T_{n}", f"temperature at {where}", f"T_i - (T_i - T_e) * ({inner}) / R_t", degree)
        made.step(f"s_{n}", "saturation there", saturation(f"T_{n}", degree, known[f"T_{n}"]), "Pa")
        made.step(f"p_{n}", "vapor there", f"p_i - (p_i - p_e) * ({passed}) / Z_t", "Pa")
        if known[f"p_{n}"] > known[f"s_{n}"] and not math.isclose(known[f"p_{n}"], known[f"s_{n}"]):
            wet.append(n)
    return wet


PROVIDER = Provider(
    "wall-layers",
    "Heat and vapor through the wall",
    ("walls",),
    for_wall,
    reads=("walls.*.layers", "climate.months"),
    units=("R", "RSI"),
    group="moisture",
    order=10,
    origins={
        "T_e": "coldest of the monthly normals (climate.months)",
        "f_e": "coldest of the monthly normals (climate.months)",
        **{f"{sign}_{n}": "layers of the wall (walls.*.layers)" for sign in "RM" for n in range(1, 13)},
    },
)
