"""Hottest face of the coated wall on a day without wind: the heat balance alone, with little heat passed to the air."""

from specgen.computing.heat._face import FaceInputs, add_face, balance_rows, tell_margin
from specgen.computing.heat._heat_balance import NOTES
from specgen.computing.inputs import provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.typed_views import Elevation
from specgen.model.working import Working
from specgen.resolving.provider import Ask

H_STILL = 5.0  # W/(m2·K), low wind of ASTM E1980


def face_heat_still(inputs: FaceInputs) -> Working:
    """Temperature of the face in still air, in °F or °C, its margin to the limit beside."""
    working = WorkingBuilder(balance_rows(inputs, H_STILL))
    add_face(working, inputs.degree)
    if inputs.limit is None:
        return working.build("face-heat-still", "T_2", inputs.sources, NOTES)
    working.step("M", "margin to limit", "T_b - T_2", f"{inputs.degree} apart")
    notes = (*NOTES, tell_margin(working.known["T_2"], inputs.limit, inputs.degree))
    return working.build("face-heat-still", "T_2", inputs.sources, notes, secondary_results=("M",))


def compare_face(elevation: Elevation, ask: Ask) -> Comparison:
    """The face in still air against the heat at which the board softens."""
    return at_most(ask("face-heat-still").rounded, elevation.wall.insulation.service_limit, strict=True)


PROVIDER = provide(
    "Wall face temperature, still air",
    FaceInputs,
    face_heat_still,
    each=("elevations",),
    by_keys=False,
    checks=(Check("face temperature, still air", "board service limit", ("HEA-03b",), compare_face),),
    order=20,
)
