"""The layers of a wall in winter: shares of R and of vapor resistance, and condensation found in another way."""

import math
from fractions import Fraction
from pathlib import Path
from typing import Any

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing
from specgen.computing.moisture._condensing import find_wet_planes
from specgen.computing.moisture.wall_layers import Inputs, Layer, wall_layers
from specgen.model.absence import Absent
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Resolver
from tests.computing._figures import told_of
from tests.computing.asked import line
from tests.computing.test_workings import allowed, computed, names_in
from tests.support import EXAMPLES, case_of

# R-value in R and permeance in perm, inside to outside; figures of our own.
OPEN = [("gypsum", 0.5, 5), ("batt", 6, 30), ("sheathing", 0.6, 8), ("board", 7.2, 2.5), ("lamina", 0.1, 6)]
# The board outside passes much, the lamina little: vapor is caught behind it.
TIGHT = [("gypsum", 0.5, 30), ("batt", 4, 30), ("sheathing", 0.6, 20), ("board", 4, 5), ("lamina", 0.1, 0.5)]


def wall(rows: Any, coating: float = 8, low: float = 19, high: float = 37, humidity: int = 68, **more: Any) -> Working:
    layers = tuple(Layer(name, Quantity.of(str(r), "R"), Quantity.of(str(w), "perm")) for name, r, w in rows)
    return wall_layers(
        Inputs(
            layers=layers,
            coating=Quantity.of(str(coating), "perm"),
            month="jan",
            low=Quantity.of(str(low), "F"),
            high=Quantity.of(str(high), "F"),
            humidity=Fraction(humidity),
            **more,
        )
    )


def pressure(celsius: float) -> float:
    """Saturation in Pa by the formulas of ISO 13788, retyped."""
    a, b = (17.269, 237.3) if celsius >= 0 else (21.875, 265.5)
    return 610.5 * math.exp(a * celsius / (b + celsius))


def test_the_r_value_is_the_sum_with_its_films() -> None:
    # Films of ISO 6946, horizontal flow: 0.13 and 0.04 m2 K/W, from memory; 1 m2 K/W is 5.678 263 h ft2 F/Btu.
    assert wall(OPEN).result == pytest.approx(0.5 + 6 + 0.6 + 7.2 + 0.1 + 0.17 * 5.678263, abs=1e-6)


def test_temperatures_stand_at_their_share_of_the_r_value() -> None:
    # T = T_si + (T_se - T_si) x sum of R / R_total, ISO 13788.
    made, passed = wall(OPEN), 0.13 * 5.678263
    total = sum(r for _, r, _ in OPEN) + 0.17 * 5.678263
    for n in range(len(OPEN) + 1):
        assert line(made, f"T_{n}") == pytest.approx(68 + (28 - 68) * passed / total, abs=1e-6)
        assert line(made, f"s_{n}") == pytest.approx(pressure((line(made, f"T_{n}") - 32) / 1.8))
        passed += OPEN[n][1] if n < len(OPEN) else 0


def test_vapor_pressures_stand_at_their_share_of_the_resistance_and_end_outdoors() -> None:
    made, passed = wall(OPEN), 0.0
    # The coating of 8 perm is a layer of its own: resistances in series add.
    total = sum(1 / w for _, _, w in OPEN) + 1 / 8
    inside, outside = line(made, "p_i"), line(made, "p_e")
    for n, (_, _, w) in enumerate(OPEN, 1):
        passed += 1 / w
        assert line(made, f"p_{n}") == pytest.approx(inside - (inside - outside) * passed / total)
    assert line(made, f"p_{len(OPEN) + 1}") == pytest.approx(outside)


# Mean outdoor C, indoor C and humidity: ISO 13788 annex A, normal occupancy; from memory.
@pytest.mark.parametrize(
    ("outdoor", "indoor", "humidity"), [(-20, 20, 35), (-10, 20, 35), (0, 20, 45), (10, 20, 55), (20, 25, 65)]
)
def test_indoor_air_goes_with_outdoor_air(outdoor: float, indoor: float, humidity: float) -> None:
    made = wall(OPEN, low=outdoor * 1.8 + 22, high=outdoor * 1.8 + 42)
    assert line(made, "T_i") == pytest.approx(indoor * 1.8 + 32)
    assert line(made, "RH_i") == pytest.approx(humidity)
    assert line(made, "p_i") == pytest.approx(humidity / 100 * pressure(indoor))
    assert line(made, "p_e") == pytest.approx(0.68 * pressure(outdoor))


def test_a_general_library_of_moist_air_gives_the_same_pressures() -> None:
    psychrolib.SetUnitSystem(psychrolib.SI)
    made = wall(TIGHT)
    for n in range(len(TIGHT) + 1):
        celsius = (line(made, f"T_{n}") - 32) / 1.8
        assert line(made, f"s_{n}") == pytest.approx(psychrolib.GetSatVapPres(celsius), rel=0.006)


# The walls above by Condensation in Walls, A. Laukkarinen, 2022, a public program that takes vapor by its
# concentration (p / 462 T) rather than by its pressure, with films of 0.13 and 0.04: C, and percent of saturation
# before anything condenses, from the inner face outward. The two part by the ratio of the temperatures.
CONDENSING = {
    "open": (OPEN, [18.932, 18.209, 9.532, 8.664, -1.749, -1.894], [45.55, 41.10, 68.25, 64.89, 85.26, 66.24]),
    "tight": (TIGHT, [18.386, 17.293, 8.549, 7.237, -1.507, -1.726], [47.04, 49.75, 84.76, 90.98, 157.2, 65.35]),
}


@pytest.mark.parametrize(("rows", "degrees", "shares"), CONDENSING.values(), ids=CONDENSING)
def test_a_public_program_of_condensation_gives_the_same_walls(
    rows: Any, degrees: list[float], shares: list[float]
) -> None:
    # These walls have no coating: one that passes all vapor stands for none.
    made = wall(rows, coating=1e9)
    for n, (degree, share) in enumerate(zip(degrees, shares, strict=True)):
        assert (line(made, f"T_{n}") - 32) / 1.8 == pytest.approx(degree, abs=0.001)
        told = 100 * line(made, f"p_{n}") / line(made, f"s_{n}")
        assert told == pytest.approx(share, rel=0.075)
        assert (told > 100) is (share > 100)


def test_an_open_wall_stays_dry() -> None:
    made = wall(OPEN)
    assert made.secondary_results == ("X",)
    assert line(made, "X") < 0
    assert made.notes[0] == "No condensation under these conditions."


def test_a_tight_lamina_catches_vapor_behind_it() -> None:
    made = wall(TIGHT)
    assert made.secondary_results == ("X", "q_4")
    assert line(made, "X") > 0
    assert line(made, "q_4") > 0
    assert made.notes[0] == "Condensation under these conditions at the outer face of the board."
    assert made.secondary_steps[0].name.endswith("at the outer face of the board")


def test_what_condenses_is_what_comes_less_what_goes() -> None:
    # 1 perm = 57.2135 ng/(Pa s m2), ASTM E96 from memory; a day has 86,400 s; 1 oz/sq yd = 33.9057 g/m2, NIST SP 811.
    made = wall(TIGHT)
    before = sum(1 / w for _, _, w in TIGHT[:-1])
    comes = (line(made, "p_i") - line(made, "s_4")) / before
    goes = (line(made, "s_4") - line(made, "p_e")) / (1 / 0.5 + 1 / 8)
    grams = (comes - goes) * 57.2135e-9 * 86400
    assert line(made, "q_4") == pytest.approx(grams / 33.9057, rel=1e-5)


def test_a_warm_cavity_before_a_thin_board_is_wet_at_two_places() -> None:
    made = wall([TIGHT[0], ("batt", 13, 30), *TIGHT[2:]])
    assert made.secondary_results == ("X", "q_2", "q_4")
    assert "at the outer face of the batt, and at the outer face of the board" in made.notes[0]
    # What comes in at the face is what condenses at both and what goes out.
    comes = (line(made, "p_i") - line(made, "s_2")) / (1 / 30 + 1 / 30)
    goes = (line(made, "s_4") - line(made, "p_e")) / (1 / 0.5 + 1 / 8)
    both = (line(made, "q_2") + line(made, "q_4")) * 33.9057
    assert both == pytest.approx((comes - goes) * 57.2135e-9 * 86400, rel=1e-5)


def test_a_coating_adds_its_resistance_to_that_of_the_layer_it_is_on() -> None:
    assert line(wall(OPEN, coating=8), "Z_5") == pytest.approx(1 / 6)
    assert line(wall(OPEN, coating=8), "Z_6") == pytest.approx(1 / 8)
    assert line(wall(OPEN, coating=0.2), "X") > line(wall(OPEN, coating=8), "X")


def test_a_layer_that_passes_no_vapor_is_told() -> None:
    rows = [("foil", 0, 0), *OPEN]
    made = wall(rows)
    assert line(made, "Z_1") == pytest.approx(100)
    assert made.notes[-1] == "Layers of less than 0.01 perm are taken as 0.01 perm."
    assert line(made, "X") < line(wall(OPEN), "X")
    assert not [note for note in wall(OPEN).notes if "0.01" in note]


def test_a_bare_wall_is_wet_at_its_inner_face() -> None:
    made = wall([("sheet", 0.01, 1)], low=-40, high=-20)
    assert line(made, "p_0") == line(made, "s_0") < line(made, "p_i")
    assert "at the inner face" in made.notes[0]


def touching(depth: list[float], bounds: list[float]) -> set[int]:
    """Where a string of many short parts comes to lie below saturation: found by pulling it down again and again."""
    line_of = [bounds[0] + (bounds[-1] - bounds[0]) * d / depth[-1] for d in depth]
    kept: set[int] = set()
    while True:
        ends = sorted({0, len(depth) - 1} | kept)
        for a, b in zip(ends, ends[1:], strict=False):
            for n in range(a, b + 1):
                line_of[n] = bounds[a] + (bounds[b] - bounds[a]) * (depth[n] - depth[a]) / (depth[b] - depth[a])
        over = [n for n in range(1, len(depth) - 1) if line_of[n] > bounds[n] + 1e-6]
        if not over:
            return kept
        kept.add(max(over, key=lambda n: line_of[n] - bounds[n]))
        # A plane that the others have pulled below its bound lets go again.
        kept = {n for n in kept if not slack(n, kept, depth, bounds)}


def slack(n: int, kept: set[int], depth: list[float], bounds: list[float]) -> bool:
    ends = sorted({0, len(depth) - 1} | kept)
    at = ends.index(n)
    a, b = ends[at - 1], ends[at + 1]
    return bounds[n] >= bounds[a] + (bounds[b] - bounds[a]) * (depth[n] - depth[a]) / (depth[b] - depth[a]) - 1e-6


@given(
    st.lists(st.tuples(st.floats(0.1, 10), st.floats(300, 2300)), min_size=1, max_size=8),
    st.floats(800, 1500),
    st.floats(100, 600),
)
def test_the_planes_are_those_of_a_string_pulled_below_saturation(
    inner: list[tuple[float, float]], inside: float, outside: float
) -> None:
    resistances = [z for z, _ in inner] + [1.0]
    bounds = [inside, *(s for _, s in inner), outside]
    depth = [sum(resistances[:n]) for n in range(len(bounds))]
    found = find_wet_planes(resistances, bounds)
    assert set(found) == touching(depth, bounds)
    # Less goes on than comes in, at each plane.
    flow = [0, *found, len(bounds) - 1]
    rates = [(bounds[a] - bounds[b]) / (depth[b] - depth[a]) for a, b in zip(flow, flow[1:], strict=False)]
    assert all(comes > goes for comes, goes in zip(rates, rates[1:], strict=False))


LAYERS = st.lists(st.tuples(st.integers(0, 20), st.integers(1, 50)), min_size=1, max_size=6)


@given(LAYERS, st.integers(-20, 60), st.integers(5, 100))
def test_vapor_condenses_where_its_pressure_passes_saturation_and_nowhere_else(
    rows: list[tuple[int, int]], low: int, humidity: int
) -> None:
    made = wall([(f"layer {n}", r, w) for n, (r, w) in enumerate(rows)], low=low, high=low + 10, humidity=humidity)
    excess = line(made, "X")
    told = "No condensation" in made.notes[0]
    assert told is (excess <= 0) or abs(excess) < 1e-6
    for step in made.secondary_steps[1:]:
        assert step.value > 0


@given(LAYERS, st.integers(-20, 60), st.integers(5, 100))
def test_both_unit_systems_agree(rows: list[tuple[int, int]], low: int, humidity: int) -> None:
    named = [(f"layer {n}", r, w) for n, (r, w) in enumerate(rows)]
    ip, si = (wall(named, low=low, high=low + 10, humidity=humidity, system=system) for system in ("ip", "si"))
    assert (ip.unit, si.unit) == ("R", "RSI")
    assert si.result * 5.678263 == pytest.approx(ip.result, rel=1e-6)
    assert line(si, "X") == pytest.approx(line(ip, "X"), abs=1e-6)
    for n in range(len(rows) + 1):
        assert line(si, f"T_{n}") * 1.8 + 32 == pytest.approx(line(ip, f"T_{n}"))
    for a, b in zip(ip.secondary_steps[1:], si.secondary_steps[1:], strict=True):
        assert (a.unit, b.unit) == ("oz/yd2", "g/m2")
        assert a.value * 33.9057 == pytest.approx(b.value, rel=1e-4, abs=1e-4)


@given(st.integers(0, 30), st.integers(-20, 40))
def test_more_insulation_outside_keeps_the_sheathing_warmer(more: int, low: int) -> None:
    thin, thick = ([*OPEN[:3], ("board", 4 + n, 2.5), OPEN[4]] for n in (more, more + 1))
    assert line(wall(thick, low=low), "T_3") > line(wall(thin, low=low), "T_3")


@pytest.mark.parametrize("system", ["ip", "si"])
@pytest.mark.parametrize("rows", [OPEN, TIGHT, [("sheet", 0.01, 1)]])
def test_every_printed_line_is_the_sum_it_says(rows: Any, system: str) -> None:
    made = wall(rows, system=system)
    known = {each.symbol: each.value for each in made.inputs}
    for step in made.steps:
        assert names_in(step.expression) - {"min", "max", "exp"} <= set(known), step.expression
        assert computed(step.substitution, {}) == pytest.approx(step.value, abs=allowed(step)), step.substitution
        known[step.symbol] = step.value
    assert len(known) == len(made.inputs) + len(made.steps)


MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"]


def job(*without: str) -> dict[str, Any]:
    normals = [
        {"month": month, "mean_min": f"{10 + 5 * min(n, 12 - n)} F", "mean_max": "60 F", "mean_humidity": 50 + n}
        for n, month in enumerate(MONTHS)
        if month not in without
    ]
    layers = [{"name": name, "r_value": f"R-{r}", "permeance": f"{w} perm"} for name, r, w in OPEN]
    return {"climate": {"months": normals}, "gloss": {"permeance": "8 perm"}, "walls": {"W1": {"layers": layers}}}


def test_a_wall_of_a_project_is_taken_in_its_coldest_month(tmp_path: Path) -> None:
    made = Resolver(case_of(tmp_path, job()).project, computing.find)(("walls", "W1"), "wall-layers")
    assert line(made, "T_e") == pytest.approx(35)
    assert made.inputs[0].name == "mean daily low, January"
    assert made.result == pytest.approx(wall(OPEN).result)


@pytest.mark.parametrize(
    ("change", "lacking"),
    [
        ({"climate": {"months": "drop"}}, "climate.months"),
        ({"gloss": {"permeance": "drop"}}, "gloss.permeance"),
        ({"walls": {"W1": {"layers": "drop"}}}, "walls.W1.layers"),
        ({"walls": {"W1": {"layers": []}}}, "walls.W1.layers"),
        ({"climate": {"months": []}}, "climate.months"),
        ({"walls": {"W1": {"layers": [{"name": "board", "r_value": "R-7.2"}]}}}, "permeance"),
    ],
)
def test_a_wall_waits_for_what_is_lacking(change: dict[str, Any], lacking: str, tmp_path: Path) -> None:
    case = case_of(tmp_path, change, base=case_base())
    with pytest.raises(Absent):
        Resolver(case.project, computing.find)(("walls", "W1"), "wall-layers")
    told = told_of(tmp_path / "project.yaml", "wall-layers")[0]
    assert told.startswith("W1: pending ")
    assert lacking in told


def case_base() -> dict[str, Any]:
    from tests.support import SMALL, merged

    return dict(merged(SMALL, job()))


def test_the_clean_example_stays_dry() -> None:
    root = EXAMPLES / "clean" / "project.yaml"
    told = told_of(root, "wall-layers")[0]
    assert told.count("No condensation") == 2
