"""Design wind pressure on the cladding of a low wall, ASCE 7-10, 7-16 or 7-22, chapter 30."""

from fractions import Fraction

from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.local_wind import is_wind_by_engineer
from specgen.computing.wind import _wind
from specgen.computing.wind._editions import EDITIONS, Edition, read_edition
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import Absent, if_given, read_all
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.field import dotted_field
from specgen.model.problem import refuse
from specgen.model.source import PROJECT
from specgen.model.typed_views import Elevation, root_of
from specgen.model.value_text import words
from specgen.model.working import UNIT_CHANGE, InputRow, Working
from specgen.quantities.comparison import more
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.quantities.two_systems import tell_in
from specgen.resolving.provider import Ask
from specgen.standards import find_source

_PRECEDES = "takes precedence over a calculated one"
_OF_ENGINEER = f"allowable level; {_PRECEDES}"
ENGINEER = f"Engineer's allowable-level pressure; it {_PRECEDES}."
FLAT = "Topographic factor 1 is a default: the engineer determines the factor of the site (ASCE 7, 26.8)."
ANY_BOARD = (
    "Effective area of a board: {10 sq ft|0.93 m²} or less, the most severe of the chart. Framing and its fasteners "
    "carry larger areas and are by the engineer."
)


class WindInputs(Inputs):
    """A site, a building, and the part of its wall that is loaded."""

    speed: Quantity = given_input(
        "V",
        "basic wind speed",
        "speed",
        "site.wind_speed",
        "basic wind speed of the maps",
        within=(_wind.SLOWEST, _wind.FASTEST),
    )
    height: Quantity = given_input(
        "h", "mean roof height", "distance", "building.mean_roof_height", "mean roof height, up to 60 ft", above=0
    )
    top: Quantity | None = given_input(
        "z_p", "top of the parapet", "distance", default=None, origin="above grade", key=False, above=0
    )
    exposure: str = option_input("exposure category: B, C or D", ("B", "C", "D"), field="site.exposure")
    area: Quantity = given_input(
        "A",
        "effective area",
        "area",
        origin="one insulation board, or less",
        about="effective area of the part, 1 sq ft or more",
        span=("1 ft2", "10000 ft2"),
    )
    zone: str = option_input("4 in the field of the wall, 5 in the strip at a corner", ("4", "5"), default="4")
    direction: str = option_input("outward or inward", ("outward", "inward"), default="outward")
    level: str = option_input("allowable or strength", ("allowable", "strength"), default="allowable")
    standard: str = option_input(
        "edition of ASCE 7", tuple(EDITIONS), read=read_edition, field="code.wind_standard", default="asce_7_16"
    )
    enclosure: str = option_input(
        "enclosed or partially_enclosed", tuple(_wind.ENCLOSURES), field="building.enclosure", default="enclosed"
    )
    topographic: Fraction | int = given_input(
        "K_zt",
        "topographic factor",
        "number",
        "site.topographic_factor",
        "topographic factor, 1 to 3",
        default=1,
        within=(1, 3),
    )
    altitude: Quantity | None = given_input(
        "z_e",
        "altitude of the site",
        "distance",
        "site.altitude",
        "altitude of the site; thinner air presses less, by ASCE 7-16 and 7-22",
        default=None,
        optional=True,
        within=(_wind.LOWEST, _wind.THINNEST),
    )

    @property
    def edition(self) -> Edition:
        """What the wind standard says."""
        return EDITIONS[self.standard]


def wall_wind(inputs: WindInputs) -> Working:
    """Pressure on a wall in psf or kPa, minus outward; source: its edition. Raises Refused outside the method."""
    _refuse(inputs)
    unit = "psf" if inputs.system == "ip" else "kPa"
    working = _start(inputs, unit)
    result = _wind.add_pressure(working, inputs.edition, inputs.direction, int(inputs.zone), unit)
    if inputs.level == "allowable":
        working.step("p_a", "pressure at allowable level", f"F * {result}", unit)
        result = "p_a"
    least = "least pressure" if abs(working.known["p"]) < working.known["p_m"] else ""
    notes = (*_wind.NOTES, _wind.NO_PARAPET)
    return working.build("wall-wind", result, _wind.list_sources(inputs.edition), notes, least, ("q_h",))


def _refuse(inputs: WindInputs) -> None:
    if more(inputs.height, _wind.HIGHEST):
        raise refuse(
            f"height is {format_quantity(inputs.height, inputs.height.unit)}, "
            f"and the method ends at {tell_in('{60 ft|18.3 m}', inputs.system)}",
            "take the engineer's own pressures for a higher building",
        )
    if inputs.area < _wind.LEAST_AREA:
        least = tell_in("{1 sq ft|0.093 m²}", inputs.system)
        raise refuse(f"area is {format_quantity(inputs.area, inputs.area.unit)}", f"it is {least} or more")


def _start(inputs: WindInputs, unit: str) -> WorkingBuilder:
    """The inputs, then the velocity pressure and the logarithm of the area."""
    square = "ft2" if inputs.system == "ip" else "m2"
    edition = inputs.edition
    thin = inputs.row("altitude") if inputs.altitude is not None else None
    share = InputRow("F", "ASD load factor on wind", 0.6, "", source=find_source("wind_allowable"))
    working = WorkingBuilder(
        (
            *inputs.rows("speed", "height", "top"),
            *_wind.exposure_rows(edition, inputs.exposure, inputs.system),
            inputs.row("topographic"),
            *_wind.altitude_rows(edition, thin, inputs.system),
            *_wind.factor_rows(edition, inputs.enclosure, inputs.system),
            inputs.row("area"),
            InputRow("A_1", "one square foot", _wind.LEAST_AREA.number(square), square, UNIT_CHANGE),
            *((share,) if inputs.level == "allowable" else ()),
        )
    )
    _wind.add_velocity(working, edition, unit)
    _wind.add_area(working)
    return working


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The outward pressure on the board of an elevation at allowable level: the greater pull of zones 4 and 5.

    The engineer's outward pressure comes first; where the method does not reach, or a local code names none, and there
    is no such pressure, it is Absent.
    """
    outward = elevation.get("design_pressure_outward")
    if outward is not None:
        return _take_engineers(elevation, outward, elevation.project.system)
    root = root_of(elevation)
    if is_wind_by_engineer(elevation.project) or any(
        _wind.list_reasons_against(root.site.wind_speed, root.building.mean_roof_height, root.code.wind_standard)
    ):
        raise Absent((*elevation.path, "design_pressure_outward"))
    inputs = WindInputs.from_project(elevation, ask, area=_wind.BOARD_AREA, top=_find_parapet(elevation))
    # The map of wind speeds is chosen by the risk category.
    category = root.site.get("risk_category")
    said = (("Exposure category", inputs.exposure), *((("Risk category", category),) if category else ()))
    working = board_wind(inputs)
    known = elevation.project.is_given(("site", "topographic_factor"))
    notes = working.notes if known else (FLAT, *working.notes)
    return working._replace(said=(*said, ("Enclosure", words(inputs.enclosure))), notes=notes)


def _find_parapet(elevation: Elevation) -> Quantity | None:
    """The top above grade of an elevation that ends in a parapet; None for one without."""
    root = root_of(elevation)
    details = root.details if root.details.is_given() else ()
    if not any(one.get("kind") == "parapet" and one.get("elevation") == elevation for one in details):
        return None
    top: Quantity | None = if_given(lambda: elevation.base_above_grade + elevation.height)
    return top


def _take_engineers(elevation: Elevation, outward: Quantity, system: str) -> Working:
    unit = "psf" if system == "ip" else "kPa"
    inward = elevation.get("design_pressure_inward")
    working = WorkingBuilder(
        (InputRow("P_o", "engineer's pressure, outward", outward.number(unit), unit, _OF_ENGINEER),)
    )
    if inward is not None:
        working.add_inputs(InputRow("P_i", "engineer's pressure, inward", inward.number(unit), unit, _OF_ENGINEER))
    working.step("p_a", "outward pressure", "-P_o", unit)
    return working.build("wall-wind", "p_a", (PROJECT,), (ENGINEER, _wind.NOTES[-1]), "engineer")


def board_wind(inputs: WindInputs) -> Working:
    """The pressures on a board in both zones; the greater pull is the result."""
    unit = "psf" if inputs.system == "ip" else "kPa"
    working = _start(inputs, unit)
    for direction, zone, tail in (("outward", 4, "_4"), ("outward", 5, "_5"), ("inward", 4, "_n")):
        strength = _wind.add_pressure(working, inputs.edition, direction, zone, unit, tail)
        named = "inward" if tail == "_n" else f"zone {zone}, outward"
        working.step(f"p_a{tail}", f"allowable level, {named}", f"F * {strength}", unit)
    working.step("p_a", "governing outward pressure", "min(p_a_4, p_a_5)", unit)
    # With the least pressure in force in both zones neither is worse.
    case = "zone 5" if working.known["p_a_5"] < working.known["p_a_4"] else "least pressure"
    beside = ("q_h", "p_a_4", "p_a_5", "p_a_n")
    parapet, source = (_wind.NO_PARAPET, ()) if inputs.top is None else (_wind.PARAPET, (_wind.PARAPET_SOURCE,))
    notes = (*_wind.NOTES, parapet, ANY_BOARD)
    sources = (*_wind.list_sources(inputs.edition), *source)
    return working.build("wall-wind", "p_a", sources, notes, case, beside)


def attachment_capacity(elevation: Elevation, system: str) -> Working:
    """The load that the attachment of a wall may bear, in psf or kPa: the strength tested over the factor of safety."""
    unit = "psf" if system == "ip" else "kPa"
    attachment = elevation.wall.attachment
    strength, factor = read_all(lambda: attachment.ultimate_strength, lambda: attachment.safety_factor)
    path = attachment.path
    rows = (
        InputRow("S", "tested strength", strength.number(unit), unit, dotted_field(path, "ultimate_strength")),
        InputRow("n_s", "safety factor", float(factor), "", dotted_field(path, "safety_factor")),
    )
    working = WorkingBuilder(rows)
    working.step("p_c", "allowable load of the attachment", "S / n_s", unit)
    return working.build("attachment-capacity", "p_c", (PROJECT,))


def compare_wind(elevation: Elevation, ask: Ask) -> Comparison:
    """The pull of the wind against the allowable load of the attachment."""
    wind = ask("wall-wind")
    capacity = attachment_capacity(elevation, elevation.project.system)
    pull = Quantity.of(abs(Fraction(repr(float(wind.result)))), wind.unit)
    attachment = elevation.wall.attachment
    allowed = attachment.ultimate_strength * (1 / Fraction(attachment.safety_factor))
    return at_most(pull, allowed, capacity=capacity)


PROVIDER = provide(
    "Wind pressure",
    WindInputs,
    wall_wind,
    each=("elevations",),
    for_member=for_elevation,
    checks=(Check("outward wind pressure", "allowable load", ("ATT-09a",), compare_wind),),
    order=10,
    example="speed=115mph height=30ft exposure=B area=10sqft",
)
