"""Hottest face of the coated wall: the greater of a rule of thumb for joints and a heat balance."""

from specgen.computing.heat._face import FaceInputs, as_given, build_face, read_face
from specgen.computing.heat._least_reflectance import Target
from specgen.computing.heat_balance import H_C
from specgen.computing.inputs import provide
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.typed_views import Elevation
from specgen.model.working import InputRow, Working
from specgen.resolving.provider import Ask

NONE_NOTE = "No reflectance meets the limit: the hot air alone reaches it."
# A face prints to a tenth: one within half of that of the limit prints as the limit, and does not pass.
HALF_TENTH = 0.05


def face_heat(inputs: FaceInputs) -> Working:
    """Temperature of the face, in °F or °C: the hotter of two methods, each with its source. Raises Refused.

    With a limit, the margin to it and the least reflectance that passes stand beside.
    """
    half = InputRow("q", "half of the tenth that prints", HALF_TENTH, f"{inputs.degree} apart")
    return build_face("face-heat", inputs, H_C, Target("p", half, "for the limit", NONE_NOTE))


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The face of an elevation in the sun of its facing."""
    return as_given(face_heat(read_face(elevation, ask)))


def compare_face(elevation: Elevation, ask: Ask) -> Comparison:
    """The hottest face against the heat at which the board softens."""
    return at_most(ask("face-heat").rounded, elevation.wall.insulation.service_limit, strict=True)


PROVIDER = provide(
    "Wall face temperature",
    FaceInputs,
    face_heat,
    each=("elevations",),
    for_member=for_elevation,
    checks=(Check("face temperature", "board service limit", ("HEA-02a",), compare_face),),
    order=10,
    example="hot_air=95F solar_reflectance=0.4 emittance=0.3 irradiance=800W/m2",
)
