"""Keys of a calculation as text: bare numbers where a name says the unit, spellings of units, all faults at once."""

import pytest

from specgen import computing
from specgen.model.problem import Refused
from specgen.quantities.units import UNITS
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.schema import project_schema
from specgen.resolving.provider import Argument
from specgen.terminal.working import working_to_data
from tests.computing._figures import worked

JOINT = {
    "length": "20 ft",
    "alpha": "8e-6 /F",
    "movement_class": "50",
    "tolerance": "1/8 in",
    "temperature_range": "120 F",
}


@pytest.mark.parametrize(
    ("name", "bare", "full"),
    [
        ("cup-viscosity", {"cup": "zahn_4", "seconds": "25"}, {"seconds": "25 s"}),
        ("cup-to-cup", {"cup": "zahn_4", "seconds": "25", "to": "ford_5"}, {"seconds": "25 s"}),
        ("cup-seconds", {"cup": "zahn_4", "viscosity": "296"}, {"viscosity": "296 cSt"}),
        ("air-supply", {"cfm": "12", "altitude": "5200 ft"}, {"cfm": "12 cfm"}),
        ("day-area", {"rate": "300 sq ft/h", "touch_dry": "1", "hours": "9"}, {"touch_dry": "60 min", "hours": "9 h"}),
        (
            "surface-temperature",
            {
                "solar_reflectance": "0.4",
                "emittance": "0.3",
                "air": "95 F",
                "irradiance": "800 W/m2",
                "h_c": "12",
            },
            {"h_c": "12 W/m2K"},
        ),
    ],
)
def test_a_bare_number_has_the_unit_that_its_key_names(name: str, bare: dict[str, str], full: dict[str, str]) -> None:
    assert worked(name, bare).result == worked(name, bare | full).result


@pytest.mark.parametrize("key", ["length", "tolerance", "temperature_range", "alpha"])
def test_a_bare_number_is_refused_where_its_unit_would_be_a_guess(key: str) -> None:
    with pytest.raises(Refused, match=f"{key}: '20' has no unit"):
        worked("joint-width", JOINT | {key: "20"})


# 1 in is 25.4 mm exactly, NIST SP 811 (2008), appendix B.8.
@pytest.mark.parametrize(
    ("unit", "factor"), [("in", 1), ("inch", 1), ("inches", 1), ("mm", 25.4), ("millimeters", 25.4), ("CM", 2.54)]
)
def test_the_unit_of_the_result_may_be_spelled_as_a_quantity_spells_it(unit: str, factor: float) -> None:
    made = worked("joint-width", JOINT, unit=unit)
    assert made.result == pytest.approx(worked("joint-width", JOINT).result * factor)
    assert any(note.startswith("The result is given in") for note in made.notes) == (factor != 1)


@pytest.mark.parametrize(
    ("unit", "said"), [("psi", "'psi'"), ("milimeter", "'milimeter'"), ("furlong", "known: in, ft")]
)
def test_a_unit_of_another_kind_is_refused(unit: str, said: str) -> None:
    with pytest.raises(Refused, match=said):
        worked("joint-width", JOINT, unit=unit)


def test_every_fault_is_told_at_once() -> None:
    with pytest.raises(Refused) as refused:
        worked("joint-width", {"lenght": "20 ft", "alpha": "8e-6", "movement_class": "60"})
    said = [str(problem) for problem in refused.value.problems]
    assert said == [
        "'lenght' is not a key of joint-width (did you mean length?)",
        "length must be given (stretch whose movement the joint takes)",
        "tolerance must be given (building tolerance, added last)",
        "alpha: '8e-6' has no unit (write 8e-6 /F or 8e-6 /C)",
        "movement_class: '60' is not a choice for this field (known: 12.5, 25, 35, 50, 100/50)",
    ]


def test_a_joint_without_movement_is_as_wide_as_its_tolerance() -> None:
    still = worked("joint-width", JOINT | {"temperature_range": "0 F"})
    assert (still.result, still.governing_case) == (0.125, "the tolerance alone")


WIND = {"speed": "115 mph", "height": "30 ft", "exposure": "B", "area": "10 sq ft"}
SPRAY = {"volume_solids": "65", "dft": "5 mil", "transfer_efficiency": "35"}


@pytest.mark.parametrize("text", ["5", "5%", "5 %", "5.0", "0.5e1"])
def test_a_percentage_is_written_with_or_without_its_sign(text: str) -> None:
    assert worked("spreading-rate", SPRAY | {"loss": text}) == worked("spreading-rate", SPRAY | {"loss": "5"})


def test_a_share_in_place_of_a_percentage_is_asked_about_and_never_taken_for_one() -> None:
    with pytest.raises(Refused, match=r"may be a share or a percentage \(write 5% or 0.05%\)"):
        worked("spreading-rate", SPRAY | {"loss": "0.05"})
    assert worked("spreading-rate", SPRAY | {"loss": "0.05%"}).result > worked("spreading-rate", SPRAY).result * 0.999


@pytest.mark.parametrize(
    ("name", "keys", "key", "spelled"),
    [
        ("day-area", {"rate": "300 sq ft/h", "touch_dry": "1", "hours": "4"}, "rate", "300sqft/hr"),
        ("air-supply", {"cfm": "12", "altitude": "5200 ft", "derate": "3 %/1000 ft"}, "derate", "3%/1000ft"),
        ("wall-wind", {"speed": "115mph", "height": "30ft", "exposure": "B", "area": "10 sqft"}, "exposure", "b"),
        ("cup-viscosity", {"cup": "zahn_4", "seconds": "25"}, "cup", "Zahn No. 4"),
    ],
)
def test_usual_spellings_are_the_same_sum(name: str, keys: dict[str, str], key: str, spelled: str) -> None:
    assert worked(name, keys | {key: spelled}).result == worked(name, keys).result


@pytest.mark.parametrize(("unit", "factor"), [("C", 5 / 9), ("°C", 5 / 9), ("F", 1)])
def test_a_difference_of_temperatures_is_given_in_degrees_of_either_scale(unit: str, factor: float) -> None:
    keys = {"air": "70 F", "rh": "50", "surface": "60 F"}
    made = worked("surface-margin", keys, unit=unit)
    assert made.result == pytest.approx(worked("surface-margin", keys).result * factor)
    assert working_to_data(made)["unit"] == unit.strip("°")


@pytest.mark.parametrize("text", ["0.65", ".65", "13/20", "1/4"])
def test_a_key_asks_a_share_back_in_the_words_of_a_field(text: str) -> None:
    with pytest.raises(Refused) as refused:
        worked("wet-film", {"volume_solids": text, "dft": "5 mil"})
    with pytest.raises(InvalidValue) as invalid:
        convert(project_schema().fields["gloss", "volume_solids"], text)
    (problem,) = refused.value.problems
    assert (problem.message, problem.hint) == (f"volume_solids: {invalid.value.message}", invalid.value.hint)


@pytest.mark.parametrize(
    ("name", "keys", "key", "spelled"),
    [
        ("wall-wind", WIND, "standard", "ASCE 7-16"),
        ("wall-wind", WIND, "enclosure", "Partially-Enclosed"),
        ("air-supply", {"cfm": "12", "altitude": "5200 ft"}, "basis", "SEA-LEVEL 60F"),
    ],
)
def test_a_choice_is_taken_however_it_is_spelled(name: str, keys: dict[str, str], key: str, spelled: str) -> None:
    plain = spelled.lower().replace(" ", "_").replace("-", "_")
    assert worked(name, keys | {key: spelled}) == worked(name, keys | {key: plain})


@pytest.mark.parametrize("text", ["Yes", "YES", "true", "True"])
def test_yes_and_no_are_taken_as_a_file_has_them(text: str) -> None:
    keys = {"hot_air": "95 F", "solar_reflectance": "0.4", "emittance": "0.4", "irradiance": "800 W/m2"}
    assert worked("face-heat", keys, reflected=text) == worked("face-heat", keys, reflected="yes")
    assert worked("face-heat", keys, reflected=text) != worked("face-heat", keys, reflected="no")


KEYS = [pytest.param(key, id=f"{name}-{key.name}") for name in computing.names() for key in computing.find(name).keys]


@pytest.mark.parametrize("key", KEYS)
def test_a_key_is_a_field_of_its_kind(key: Argument) -> None:
    made = key.field
    assert (made.kind == "choice") == bool(key.choices) == bool(made.values)
    assert (made.kind == "quantity") == (key.dimension not in ("number", "percent", "word", "yes_no"))
    if made.kind == "quantity":
        told = "temperature" if key.dimension == "temperature_difference" else key.dimension
        assert {UNITS[made.unit_ip].dimension, UNITS[made.unit_si].dimension} == {told}
        assert convert(made, f"40 {made.unit_ip}").dimension == key.dimension


FACE = {"solar_reflectance": "0.5", "emittance": "0.9", "irradiance": "800 W/m2"}


@pytest.mark.parametrize(
    ("name", "ip", "si", "symbol", "wanted"),
    [
        # Architectural detailing textbook: 1/4 in (6 mm), 1/2 in (13 mm).
        ("joint-depth", {"width": "1 in"}, {"width": "25 mm"}, "D_l", (0.25, 6)),
        ("joint-depth", {"width": "1 in"}, {"width": "25 mm"}, "D_m", (0.5, 13)),
        # UFC 3-190-06, page 170: 5 F; ISO 8502-4, from memory: 3 C.
        (
            "surface-margin",
            {"air": "70 F", "rh": "50%", "surface": "80 F"},
            {"air": "20 C", "rh": "50%", "surface": "25 C"},
            "m",
            (5, 3),
        ),
        # A trade column has 165 F; in whole degrees 74 C: common practice, no source.
        ("face-heat", {"hot_air": "95 F"} | FACE, {"hot_air": "35 C"} | FACE, "T_b", (165, 74)),
        # 3/4 in, in whole millimeters: common practice, no source.
        ("board-thickness", {"joint_depth": "1/2 in"}, {"joint_depth": "12 mm"}, "B", (0.75, 19)),
    ],
)
def test_a_sum_from_metric_keys_rests_on_the_figures_of_metric_work(
    name: str, ip: dict[str, str], si: dict[str, str], symbol: str, wanted: tuple[float, float]
) -> None:
    for keys, figure in zip((ip, si), wanted, strict=True):
        rows = {row.symbol: row.value for row in worked(name, keys).inputs}
        assert rows[symbol] == pytest.approx(figure)
