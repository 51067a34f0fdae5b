"""Hottest face of the coated wall on a day without wind: the same methods, with little heat passed to the air."""

from specgen.computing.heat._face import JOINT_RULE, FaceInputs, as_given, build_face, read_face
from specgen.computing.heat._least_reflectance import Target
from specgen.computing.inputs import provide
from specgen.model.capacity import Check, Comparison, at_least, at_most
from specgen.model.typed_views import Elevation
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import subtract_temperatures
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Ask

H_STILL = 5.0  # W/(m2·K), low wind of ASTM E1980
NO_MARGIN_NOTE = "No reflectance keeps the margin: the hot air alone exceeds it."


def face_heat_still(inputs: FaceInputs) -> Working:
    """Temperature of the face in still air, in °F or °C: the hotter of two methods.

    With a limit, the margin to it and the least reflectance that keeps the margin wanted stand beside.
    """
    wanted = inputs.limits("board.heat_margin")
    unit = f"{inputs.degree} apart"
    margin = InputRow("m", "required margin", wanted.value.number(unit), unit, source=wanted.source)
    working = build_face("face-heat-still", inputs, H_STILL, Target("w", margin, "for the margin", NO_MARGIN_NOTE))
    # The joint rule knows no wind: it is told, and verified, with the face in wind.
    return working._replace(source=tuple(source for source in working.source if source != JOINT_RULE))


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The face of an elevation in the sun of its facing, without wind."""
    return as_given(face_heat_still(read_face(elevation, ask)))


def compare_face(elevation: Elevation, ask: Ask) -> Comparison:
    """The face in still air against the heat at which the board softens."""
    return at_most(ask("face-heat-still").rounded, elevation.wall.insulation.service_limit, strict=True)


def compare_margin(elevation: Elevation, ask: Ask) -> Comparison | None:
    """The margin of the face in still air, the hotter one, against the margin wanted; none where nothing is left."""
    heat, softens = ask("face-heat-still").rounded, elevation.wall.insulation.service_limit
    if heat >= softens:
        return None
    return at_least(subtract_temperatures(softens, heat), find_limit("board.heat_margin", elevation.project).value)


PROVIDER = provide(
    "Wall face temperature, still air",
    FaceInputs,
    face_heat_still,
    each=("elevations",),
    for_member=for_elevation,
    by_keys=False,
    checks=(
        Check("face temperature, still air", "board service limit", ("HEA-03b", "HEA-02a"), compare_face),
        Check(
            "face temperature margin, still air",
            "minimum margin",
            ("HEA-03a",),
            compare_margin,
            "board.heat_margin",
        ),
    ),
    order=20,
)
