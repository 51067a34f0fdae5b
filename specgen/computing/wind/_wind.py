"""Wind on the walls of a low building, ASCE 7: velocity pressure, coefficients, range of the method."""

from collections.abc import Iterable

from specgen.computing.wind._editions import EDITIONS, OTHERS, Edition
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Source
from specgen.model.working import InputRow
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

MEMORY = find_source("wind_memory")
# The maps of basic wind speed: lowest of risk category I to highest of the Pacific islands; from memory.
SLOWEST, FASTEST = Quantity.of(85, "mph"), Quantity.of(210, "mph")
HIGHEST = Quantity.of(60, "ft")  # method's own: the walls it is for, no distance from spraying
# The altitudes a project may stand at.
LOWEST, THINNEST = Quantity.of(-300, "ft"), Quantity.of(14000, "ft")
LEAST_AREA = Quantity.of(1, "ft2")
BOARD_AREA = Quantity.of(10, "ft2")
# Least pressure at strength level, from memory; least strip at a corner, by the source of its row.
LEAST_PRESSURE, LEAST_STRIP = Quantity.of(16, "psf"), Quantity.of(3, "ft")  # method's own: strip at a corner
ENCLOSURES = {"enclosed": 0.18, "partially_enclosed": 0.55}
# Fall of the velocity pressure with the altitude, in each ft.
THINNING = 0.0000362
# Start at 10 sq ft and slope by the logarithm of the area.
CHARTS = {("inward", 4): (1.1766, -0.1766), ("inward", 5): (1.1766, -0.1766)}
CHARTS |= {("outward", 4): (-1.2766, 0.1766), ("outward", 5): (-1.7532, 0.3532)}
NOTES = (
    "Walls of a regular building up to {60 ft|18.3 m} high, any roof slope; the reduction for flat roofs is not taken.",
    "Positive pressure acts inward, negative outward.",
)
NO_PARAPET = "Parapets are by the engineer."
PARAPET = (
    "The outer face of a parapet takes the coefficients of the wall at the velocity pressure of its top, or of the "
    "mean roof where higher; the wall below takes the same, which is conservative. Inner face, cap, and structure of "
    "a parapet are by the engineer."
)
PARAPET_SOURCE = find_source("wind_parapet_memory")
# kPa per (m/s)² in one psf per mph².
_KPA = float(Quantity.of(1, "psf").to("kPa") / Quantity.of(1, "mph").to("m/s") ** 2)


def list_sources(edition: Edition) -> tuple[Source, ...]:
    """What a pressure by an edition rests on."""
    return edition.chart, edition.exposure, edition.velocity


def exposure_rows(edition: Edition, exposure: str, system: str) -> tuple[InputRow, ...]:
    """The constants of an exposure, lengths in ft or m."""
    far = "ft" if system == "ip" else "m"
    power, gradient = edition.exposures[exposure]
    least, top = edition.even_below[exposure].number(far), Quantity.of(gradient, "ft").number(far)
    return (
        InputRow("z_l", f"minimum height, exposure {exposure}", least, far, source=edition.exposure),
        InputRow("z_g", f"nominal height of boundary layer, exposure {exposure}", top, far, source=edition.exposure),
        InputRow("alpha", f"exponent, exposure {exposure}", power, "", source=edition.exposure),
    )


def altitude_rows(edition: Edition, altitude: InputRow | None, system: str) -> tuple[InputRow, ...]:
    """What the ground elevation factor is computed from; nothing in an edition that knows none."""
    if not edition.counts_altitude:
        return ()
    if altitude is None:
        return (InputRow("K_e", "ground elevation factor", 1.0, "", "taken as 1, which the standard allows"),)
    far = "ft" if system == "ip" else "m"
    thinning = THINNING / Quantity.of(1, "ft").number(far)  # method's own: told for each ft
    return altitude, InputRow("c_e", "air density constant", thinning, f"/{far}", source=find_source("wind_altitude"))


def factor_rows(edition: Edition, enclosure: str, system: str) -> tuple[InputRow, ...]:
    """The factors of the velocity pressure and of the pressure inside, in mph and psf or m/s and kPa."""
    ip = system == "ip"
    fast, unit = ("mph", "psf") if ip else ("m/s", "kPa")
    # 0.00256 psf and 0.613 Pa are the same air at 15 °C; kept as one, so that both systems give one answer.
    air, least = 0.00256 if ip else 0.00256 * _KPA, LEAST_PRESSURE.number(unit)
    return (
        InputRow("K_d", "directionality factor", 0.85, "", source=find_source("wind_direction")),
        InputRow("G_i", "internal pressure coefficient", ENCLOSURES[enclosure], "", source=edition.inside),
        InputRow("k", "velocity pressure constant", air, f"{unit}/({fast})²", source=edition.velocity),
        InputRow("p_m", "minimum pressure, strength level", least, unit, source=MEMORY),
    )


def add_velocity(working: WorkingBuilder, edition: Edition, unit: str) -> None:
    """Adds the exposure coefficient and the velocity pressure, at the mean roof height or the top of a parapet."""
    at_gradient = f"{edition.at_gradient} * (max({'h, z_p' if 'z_p' in working.known else 'h'}, z_l) / z_g)^(2 / alpha)"
    working.step("K_z", "velocity pressure exposure coefficient", at_gradient, "")
    if "c_e" in working.known:
        # No more than 1, which the standard allows at any altitude.
        working.step("K_e", "ground elevation factor", "min(1, exp(-c_e * z_e))", "")
    factors = ["k", "K_z", "K_zt", *([] if edition.directs_pressure else ["K_d"])]
    factors += ["K_e"] if edition.counts_altitude else []
    working.step("q_h", "velocity pressure", f"{' * '.join(factors)} * V^2", unit)


def add_area(working: WorkingBuilder) -> None:
    """Adds the logarithm of the area, held between the ends of the chart: 10 and 500 sq ft."""
    working.step("e", "log of effective area", "ln(min(max(A / A_1, 10), 500)) / ln(10)", "")


def add_pressure(
    working: WorkingBuilder, edition: Edition, direction: str, zone: int, unit: str, tail: str = ""
) -> str:
    """Adds coefficient, pressure and least pressure of a zone at strength level; the symbol of the last."""
    pressure = "q_h * K_d" if edition.directs_pressure else "q_h"
    start, slope = CHARTS[direction, zone]
    sign = "+" if slope > 0 else "-"
    named = f"zone {zone}, {direction}"
    working.step(f"G{tail}", f"coefficient of {named}", f"{start} {sign} {abs(slope)} * e", "")
    if direction == "inward":
        working.step(f"p{tail}", f"pressure of {named}", f"{pressure} * (G{tail} + G_i)", unit)
        working.step(f"p_u{tail}", "minimum applied", f"max(p{tail}, p_m)", unit)
    else:
        working.step(f"p{tail}", f"pressure of {named}", f"{pressure} * (G{tail} - G_i)", unit)
        working.step(f"p_u{tail}", "minimum applied", f"min(p{tail}, -p_m)", unit)
    return f"p_u{tail}"


def list_reasons_against(speed: Quantity, height: Quantity, standard: str) -> Iterable[str]:
    """What keeps the method from a project: each a reason in words, none where it fits.

    The schema asks for the engineer's pressures in the same cases.
    """
    if more(height, HIGHEST):
        yield "the roof is higher than 60 ft"
    if standard not in EDITIONS:
        yield f"{OTHERS[standard]} is not computed"
    if not SLOWEST <= speed <= FASTEST:
        yield "the wind speed is outside the maps"
