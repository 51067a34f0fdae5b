"""Wind on the walls of a low building, ASCE 7-16: velocity pressure, coefficients, range of the method."""

from collections.abc import Iterable

from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.working import InputRow
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity

WALLS = Source(
    Kind.PUBLISHED, "ASCE 7-16, chapter 30, walls of low-rise buildings: pressures at 10 sq ft and the chart of zone 4"
)
RECALLED = Source(
    Kind.MEMORY,
    "ASCE 7-16: velocity pressure, exposure constants, internal pressure, chart of zone 5, least pressure of 16 psf, "
    "strip of zone 5, 0.6 of the wind for allowable stress",
)
# The maps of basic wind speed: lowest of risk category I to highest of the Pacific islands; from memory.
SLOWEST, FASTEST = Quantity.of(85, "mph"), Quantity.of(210, "mph")
HIGHEST = Quantity.of(60, "ft")
LEAST_AREA = Quantity.of(1, "ft2")
BOARD_AREA = Quantity.of(10, "ft2")
# Height below which the wind is taken as even, least pressure, and least strip at a corner; from memory.
LEAST_HEIGHT, LEAST_PRESSURE, LEAST_STRIP = Quantity.of(15, "ft"), Quantity.of(16, "psf"), Quantity.of(3, "ft")
# Power and gradient height in ft; Table 26.11-1, from memory.
EXPOSURES = {"B": (7.0, 1200), "C": (9.5, 900), "D": (11.5, 700)}
ENCLOSURES = {"enclosed": 0.18, "partially_enclosed": 0.55}
STANDARDS = ("asce_7_16",)
# Start at 10 sq ft and slope by the logarithm of the area.
CHARTS = {("inward", 4): (1.1766, -0.1766), ("inward", 5): (1.1766, -0.1766)}
CHARTS |= {("outward", 4): (-1.2766, 0.1766), ("outward", 5): (-1.7532, 0.3532)}
NOTES = (
    "Walls of a regular building up to 60 ft (18.3 m) high with a roof of any slope; the reduction for flat roofs is "
    "not taken.",
    "Signs: plus presses the wall inward, minus pulls it outward.",
)
# kPa per (m/s)² in one psf per mph².
_KPA = float(Quantity.of(1, "psf").to("kPa") / Quantity.of(1, "mph").to("m/s") ** 2)


def exposure_rows(exposure: str, system: str) -> tuple[InputRow, ...]:
    """The constants of an exposure, lengths in ft or m."""
    far = "ft" if system == "ip" else "m"
    power, gradient = EXPOSURES[exposure]
    least, top = LEAST_HEIGHT.number(far), Quantity.of(gradient, "ft").number(far)
    return (
        InputRow("z_l", "least height of the exposure", least, far, source=RECALLED),
        InputRow("z_g", f"gradient height of exposure {exposure}", top, far, source=RECALLED),
        InputRow("alpha", f"power of exposure {exposure}", power, "", source=RECALLED),
    )


def factor_rows(enclosure: str, system: str) -> tuple[InputRow, ...]:
    """The factors of the velocity pressure and of the pressure inside, in mph and psf or m/s and kPa."""
    ip = system == "ip"
    fast, unit = ("mph", "psf") if ip else ("m/s", "kPa")
    # 0.00256 psf and 0.613 Pa are the same air at 15 °C; kept as one, so that both systems give one answer.
    air, least = 0.00256 if ip else 0.00256 * _KPA, LEAST_PRESSURE.number(unit)
    return (
        InputRow("K_d", "directionality factor", 0.85, "", source=RECALLED),
        # Thinner air at altitude may be counted; 1 is allowed everywhere and never too low.
        InputRow("K_e", "ground elevation factor", 1.0, "", "taken as 1, which the standard allows"),
        InputRow("G_i", "coefficient of the pressure inside", ENCLOSURES[enclosure], "", source=RECALLED),
        InputRow("k", "half the density of air", air, f"{unit}/({fast})²", source=RECALLED),
        InputRow("p_m", "least pressure at strength level", least, unit, source=RECALLED),
    )


def add_velocity(working: WorkingBuilder, unit: str) -> None:
    """Adds the exposure coefficient and the velocity pressure at the mean roof height."""
    working.step("K_z", "exposure coefficient at the roof", "2.01 * (max(h, z_l) / z_g)^(2 / alpha)", "")
    working.step("q_h", "velocity pressure at the roof", "k * K_z * K_zt * K_d * K_e * V^2", unit)


def add_area(working: WorkingBuilder) -> None:
    """Adds the logarithm of the area, held between the ends of the chart: 10 and 500 sq ft."""
    working.step("e", "logarithm of the area in sq ft", "ln(min(max(A / A_1, 10), 500)) / ln(10)", "")


def add_pressure(working: WorkingBuilder, direction: str, zone: int, unit: str, tail: str = "") -> str:
    """Adds coefficient, pressure and least pressure of a zone at strength level; the symbol of the last."""
    start, slope = CHARTS[direction, zone]
    sign = "+" if slope > 0 else "-"
    named = f"zone {zone}, {direction}"
    working.step(f"G{tail}", f"coefficient of {named}", f"{start} {sign} {abs(slope)} * e", "")
    if direction == "inward":
        working.step(f"p{tail}", f"pressure of {named}", f"q_h * (G{tail} + G_i)", unit)
        working.step(f"p_u{tail}", "not below the least", f"max(p{tail}, p_m)", unit)
    else:
        working.step(f"p{tail}", f"pressure of {named}", f"q_h * (G{tail} - G_i)", unit)
        working.step(f"p_u{tail}", "not below the least", f"min(p{tail}, 0 - p_m)", unit)
    return f"p_u{tail}"


def list_reasons_against(speed: Quantity, height: Quantity, standard: str) -> Iterable[str]:
    """What keeps the method from a project: each a reason in words, none where it fits.

    The schema asks for the engineer's pressures in the same cases.
    """
    if more(height, HIGHEST):
        yield "the roof is higher than 60 ft"
    if standard not in STANDARDS:
        yield "the project goes by another wind standard"
    if not SLOWEST <= speed <= FASTEST:
        yield "the wind speed is outside the maps"
