"""The wet film that dries to a dry film: the volume of solids stays what it was."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.computing.coats.wet_film import find_wet_film, round_down_film, round_up_film
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.quantities.format import format_quantity
from tests.computing._figures import beside, resolver_of, worked


def film(dft: str = "5 mil", volume_solids: str = "50%", **more: str) -> Working:
    return worked("wet-film", {"dft": dft, "volume_solids": volume_solids}, **more)


# Dry film, volume solids, water, wet film: dry film x (1 + water) / volume solids, from memory; worked by hand.
BY_HAND = [
    ("5 mil", "50%", "0%", 10.0),
    ("5 mil", "100%", "0", 5.0),
    ("2 mil", "40", "0", 5.0),
    ("2 mil", "40", "10%", 5.5),
    ("1.5 mil", "37.5%", "25%", 5.0),
    ("50 um", "40%", "10%", 137.5),
]


@pytest.mark.parametrize(("dft", "solids", "water", "wanted"), BY_HAND)
def test_wet_films_worked_by_hand(dft: str, solids: str, water: str, wanted: float) -> None:
    made = film(dft, solids, thinning=water)
    assert made.result == pytest.approx(wanted)
    assert made.unit == dft.split()[1]


@given(st.integers(3, 400), st.integers(5, 100), st.integers(0, 50))
def test_the_solids_of_the_wet_film_are_the_dry_film(dft: int, solids: int, water: int) -> None:
    # Of a film of coating and water, solids / (1 + water) are solids: that share of the wet film is what stays.
    made = film(f"{dft / 20} mil", str(solids), thinning=f"{water}%")
    assert made.result * (solids / 100) / (1 + water / 100) == pytest.approx(dft / 20)
    before = beside(made)["wet film before water"]
    assert before <= made.result
    assert before == pytest.approx(film(f"{dft / 20} mil", str(solids)).result)


@given(st.integers(3, 400), st.integers(5, 99), st.integers(0, 49))
def test_a_thicker_film_a_thinner_coating_and_more_water_want_more_wet_film(dft: int, solids: int, water: int) -> None:
    made = film(f"{dft} um", str(solids), thinning=str(water)).result
    assert film(f"{dft + 1} um", str(solids), thinning=str(water)).result > made
    assert film(f"{dft} um", str(solids + 1), thinning=str(water)).result < made
    assert film(f"{dft} um", str(solids), thinning=str(water + 1)).result > made


@given(st.integers(3, 400), st.integers(5, 100), st.integers(0, 50))
def test_both_unit_systems_agree(dft: int, solids: int, water: int) -> None:
    ip = film(f"{dft / 20} mil", str(solids), thinning=str(water))
    si = film(f"{dft * 1.27:.6f} um", str(solids), thinning=str(water))
    assert si.result == pytest.approx(ip.result * 25.4)


def test_a_film_and_a_rate_of_one_coating_are_the_same_volume() -> None:
    # A film one unit thick on the area that a volume covers is that volume: 231 cubic inches to the gallon.
    rate = worked("spreading-rate", {"volume_solids": "38%", "dft": "40 um"})
    assert rate.result * film("40 um", "38%").result == pytest.approx(1000)


def test_water_is_held_against_the_limit_where_one_is_given() -> None:
    told = [note for note in film(thinning="12%").notes if "held against no limit" in note]
    assert told and told[0].startswith("12 % of water")
    assert film().notes == ()
    assert film(thinning="8%", most_water="8").notes == ()
    with pytest.raises(Refused, match=r"thinning is 8.5 %.*allows 8 % at most"):
        film(thinning="8.5%", most_water="8%")


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"volume_solids": "0"}, "volume_solids is 0 %"),
        ({"volume_solids": "100.1"}, "volume_solids is 100.1 %"),
        ({"volume_solids": "0.5"}, "write 50% or 0.5%"),
        ({"dft": "0 mil"}, "dft is 0 mil"),
        ({"dft": "-1 mil"}, "dft is -1 mil"),
        ({"thinning": "-1"}, "thinning is -1 %"),
        ({"most_water": "-1%"}, "most_water is -1 %"),
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        worked("wet-film", {"dft": "5 mil", "volume_solids": "50%"} | wrong)


def test_a_coat_of_a_project_is_told_with_the_most_water_it_bears(tmp_path: Path) -> None:
    coat: dict[str, Any] = {"volume_solids": 40, "dry_film": "2 mil", "max_water": "10%"}
    resolve = resolver_of(tmp_path, {"coating": {"primer": coat, "gloss": {"dry_film": "1 mil"}}})
    made = resolve(("primer",), "wet-film")
    assert made.result == pytest.approx(5.5)
    assert beside(made) == {"wet film before water": 5.0}
    assert "maximum water addition the coating manufacturer permits" in made.notes[-2]
    missing = [".".join(path) for path in resolve.missing(("gloss",), "wet-film")]
    assert missing == ["gloss.volume_solids", "gloss.max_water"]


# Common practice, no source: a film is aimed at above the minimum, so that a low reading still passes.
# By hand: 2.5 / 0.40 x 1.10.
def test_a_coat_is_sprayed_to_the_film_aimed_at_where_one_is_given(tmp_path: Path) -> None:
    coat: dict[str, Any] = {"volume_solids": 40, "dry_film": "2 mil", "target_dry_film": "2.5 mil", "max_water": "10%"}
    made = resolver_of(tmp_path, {"coating": {"primer": coat}})(("primer",), "wet-film")
    assert made.result == pytest.approx(6.875)
    assert [row.origin for row in made.inputs if row.symbol == "D"] == ["*.target_dry_film"]


# 1.2 mil at 36 % and 6 % of water is 3.533 mil, 1.5 mil at 38 % 3.947 mil, 35 µm at 36 % and 6 % 103.06 µm: by hand.
@pytest.mark.parametrize(
    ("read", "unit", "wanted"),
    [(3.5333, "mil", "3.6 mil"), (3.9474, "mil", "4 mil"), (103.06, "um", "104 µm"), (5.5, "mil", "5.5 mil")],
)
def test_a_target_is_rounded_up_so_that_it_dries_to_the_least_film(read: float, unit: str, wanted: str) -> None:
    assert format_quantity(round_up_film(read, unit), unit) == wanted


@pytest.mark.parametrize(
    ("read", "unit", "wanted"), [(2.975, "mil", "2.9 mil"), (2.9, "mil", "2.9 mil"), (88.4, "um", "88 µm")]
)
def test_a_limit_is_rounded_down_to_what_a_gauge_reads(read: float, unit: str, wanted: str) -> None:
    assert format_quantity(round_down_film(read, unit), unit) == wanted


@pytest.mark.parametrize(
    ("dry", "solids", "water", "wet"),
    # By hand: 1.5 / 0.38 = 3.947; 1.2 / 0.36 x 1.05 = 3.5; 40 / 0.40 x 1.04 = 104.
    [(1.5, 38, 0, 3.947368), (1.2, 36, 5, 3.5), (40, 40, 4, 104)],
)
def test_the_plain_sum_is_that_of_the_working(dry: float, solids: float, water: float, wet: float) -> None:
    assert find_wet_film(dry, solids, water) == pytest.approx(wet)
