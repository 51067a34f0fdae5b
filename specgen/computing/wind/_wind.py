"""Wind on the walls of a low building, ASCE 7-16: velocity pressure, coefficients, range of the method."""

from collections.abc import Iterable

from specgen.model.source import Kind, Source
from specgen.model.working import UNIT_CHANGE, Given, Sum
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


def velocity_given(
    speed: Quantity, height: Quantity, exposure: str, topographic: float, enclosure: str, system: str
) -> tuple[Given, ...]:
    """The inputs of the velocity pressure and of the pressure inside, in mph, ft, psf or m/s, m, kPa."""
    ip = system == "ip"
    far, fast, unit = ("ft", "mph", "psf") if ip else ("m", "m/s", "kPa")
    power, gradient = EXPOSURES[exposure]
    return (
        Given("V", "basic wind speed", speed.number(fast), fast),
        Given("h", "mean roof height", height.number(far), far),
        Given("z_l", "least height of the exposure", Quantity.of(15, "ft").number(far), far, source=RECALLED),
        Given(
            "z_g",
            f"gradient height of exposure {exposure}",
            Quantity.of(gradient, "ft").number(far),
            far,
            source=RECALLED,
        ),
        Given("alpha", f"power of exposure {exposure}", power, "", source=RECALLED),
        Given("K_zt", "topographic factor", float(topographic), ""),
        Given("K_d", "directionality factor", 0.85, "", source=RECALLED),
        # Thinner air at altitude may be counted; 1 is allowed everywhere and never too low.
        Given("K_e", "ground elevation factor", 1.0, ""),
        Given("G_i", "coefficient of the pressure inside", ENCLOSURES[enclosure], "", source=RECALLED),
        # 0.00256 psf and 0.613 Pa are the same air at 15 °C; kept as one, so that both systems give one answer.
        Given("k", "half the density of air", 0.00256 if ip else 0.00256 * _KPA, f"{unit}/({fast})²", source=RECALLED),
        Given("p_m", "least pressure at strength level", Quantity.of(16, "psf").number(unit), unit, source=RECALLED),
    )


# kPa per (m/s)² in one psf per mph².
_KPA = float(Quantity.of(1, "psf").to("kPa") / Quantity.of(1, "mph").to("m/s") ** 2)


def velocity(made: Sum, unit: str) -> None:
    """Adds the exposure coefficient and the velocity pressure at the mean roof height."""
    made.step("K_z", "exposure coefficient at the roof", "2.01 * (max(h, z_l) / z_g)^(2 / alpha)", "")
    made.step("q_h", "velocity pressure at the roof", "k * K_z * K_zt * K_d * K_e * V^2", unit)


def area_given(area: Quantity, system: str) -> tuple[Given, ...]:
    """The effective area and the ends of the chart, in sq ft or m²."""
    unit = "ft2" if system == "ip" else "m2"
    return (
        Given("A", "effective area", area.number(unit), unit),
        Given("A_1", "one square foot", LEAST_AREA.number(unit), unit, UNIT_CHANGE),
    )


def area(made: Sum) -> None:
    """Adds the logarithm of the area, held between the ends of the chart: 10 and 500 sq ft."""
    made.step("e", "logarithm of the area in sq ft", "ln(min(max(A / A_1, 10), 500)) / ln(10)", "")


def pressure(made: Sum, direction: str, zone: int, unit: str, tail: str = "") -> str:
    """Adds coefficient, pressure and least pressure of a zone at strength level; the symbol of the last."""
    start, slope = CHARTS[direction, zone]
    sign = "+" if slope > 0 else "-"
    named = f"zone {zone}, {direction}"
    made.step(f"G{tail}", f"coefficient of {named}", f"{start} {sign} {abs(slope)} * e", "")
    if direction == "inward":
        made.step(f"p{tail}", f"pressure of {named}", f"q_h * (G{tail} + G_i)", unit)
        made.step(f"p_u{tail}", "not below the least", f"max(p{tail}, p_m)", unit)
    else:
        made.step(f"p{tail}", f"pressure of {named}", f"q_h * (G{tail} - G_i)", unit)
        made.step(f"p_u{tail}", "not below the least", f"min(p{tail}, 0 - p_m)", unit)
    return f"p_u{tail}"


def reasons_against(speed: Quantity, height: Quantity, standard: str) -> Iterable[str]:
    """What keeps the method from a project: each a reason in words, none where it fits.

    The schema asks for the engineer's pressures in the same cases.
    """
    if more(height, HIGHEST):
        yield "the roof is higher than 60 ft"
    if standard not in STANDARDS:
        yield "the project goes by another wind standard"
    if not SLOWEST <= speed <= FASTEST:
        yield "the wind speed is outside the maps"
