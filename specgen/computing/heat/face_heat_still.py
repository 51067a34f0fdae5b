"""Hottest face of the coated wall on a day without wind: the heat balance alone, with little heat passed to the air."""

from specgen.computing.heat._face import READS, Inputs, face_by_balance, given, margin_note, of_elevation, sources
from specgen.computing.heat._heat_balance import NOTES, refuse_unfit_face
from specgen.model.working import Sum, Working
from specgen.resolving.provider import Provider

H_STILL = 5.0  # W/(m2·K), low wind of ASTM E1980


def face_heat_still(inputs: Inputs) -> Working:
    """Temperature of the face in still air, in °F or °C, its margin to the limit beside; source: `BALANCE`."""
    refuse_unfit_face(inputs.solar_reflectance, inputs.emittance, inputs.irradiance, hot_air=inputs.hot_air)
    degree = inputs.degree
    made = Sum(given(inputs, H_STILL))
    face_by_balance(made, degree)
    face = made.known["T_2"]
    notes: tuple[str, ...] = NOTES
    if inputs.limit is not None:
        made.step("M", "margin below the limit", "T_b - T_2", f"{degree} apart")
        notes += (margin_note(face, inputs.limit, degree),)
    beside = ("M",) if inputs.limit is not None else ()
    return Working(
        "face-heat-still", made.given, tuple(made.steps), face, degree, sources(inputs), notes, beside=beside
    )


PROVIDER = Provider(
    "face-heat-still",
    "Hottest face of the wall in still air",
    ("elevations",),
    lambda elevation, ask: face_heat_still(of_elevation(elevation)),
    reads=READS,
    units=("F", "C"),
    order=20,
    origins={
        "T_a": "climate.hot_air",
        "SR": "elevations.*.color.solar_reflectance",
        "e": "elevations.*.color.emittance",
        "I": "climate.peak_wall_irradiance",
        "r": "elevations.*.reflecting_surface_near",
        "T_b": "elevations.*.wall.insulation.service_limit",
    },
)
