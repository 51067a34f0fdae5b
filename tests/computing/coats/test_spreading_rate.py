"""The spreading rate against published cases and a general units library."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing._figures import beside, line, resolver_of, worked
from tests.computing.units_library import UNITS


def rate(volume_solids: str = "65%", dft: str = "5 mil", **more: str) -> Working:
    return worked("spreading-rate", {"volume_solids": volume_solids, "dft": dft}, **more)


# Volume solids, dry film, area of a volume, its unit, half of the last digit printed: Theoretical Spreading Rate /
# Coverage, General Information, undated sheet: 1604 x 0.65 / 5 is 208.52, and 1000 x 0.65 / 125 is 5.2.
PUBLISHED = [("65%", "5 mil", 208.52, "ft2/gal", 0.005), ("65%", "125 um", 5.2, "m2/L", 1e-9)]


@pytest.mark.parametrize(("solids", "film", "wanted", "unit", "apart"), PUBLISHED)
def test_published_spreading_rates(solids: str, film: str, wanted: float, unit: str, apart: float) -> None:
    made = rate(solids, film)
    assert made.unit == unit
    assert made.result == pytest.approx(wanted, abs=apart)
    assert beside(made) == {"theoretical spreading rate": pytest.approx(made.result)}


def test_a_gallon_of_pure_solids_covers_1604_square_feet_one_mil_thick() -> None:
    # The same sheet.
    assert rate("100%", "1 mil").result == pytest.approx(1604)


def test_what_misses_the_wall_covers_nothing() -> None:
    # Practical rate = theoretical x transfer efficiency x (1 - loss): the same sheet; figures worked by hand.
    made = rate(transfer_efficiency="35%", loss="10")
    assert made.result == pytest.approx(208.52 * 0.35 * 0.9)
    assert line(made, "C_t") == pytest.approx(208.52)


def test_a_percent_is_the_same_with_and_without_its_sign() -> None:
    bare = rate("65", transfer_efficiency="40", loss="5")
    assert bare.result == rate("65%", transfer_efficiency="40%", loss="5%").result


# The trade's 1604 is a rounding of 1604.17, so that inches and meters differ by one part in ten thousand.
ROUNDING = 1.1e-4


@pytest.mark.parametrize(("solids", "mils"), [(65, 5.0), (38, 1.5), (100, 1.0), (22, 0.4)])
def test_a_units_library_spreads_the_same_volume(solids: int, mils: float) -> None:
    spread = solids / 100 / (mils * UNITS.thou)
    wanted = spread.to("ft**2 / US_liquid_gallon").magnitude
    assert rate(str(solids), f"{mils} mil").result == pytest.approx(wanted, rel=ROUNDING)
    microns = (mils * UNITS.thou).to("um").magnitude
    assert rate(str(solids), f"{microns:.9f} um").result == pytest.approx(spread.to("m**2 / liter").magnitude, rel=1e-9)


@given(st.integers(5, 100), st.integers(10, 400), st.integers(5, 100), st.integers(0, 99))
def test_both_unit_systems_agree(solids: int, film: int, efficiency: int, loss: int) -> None:
    more = {"transfer_efficiency": f"{efficiency}%", "loss": f"{loss}%"}
    ip, si = rate(str(solids), f"{film / 20} mil", **more), rate(str(solids), f"{film * 1.27:.6f} um", **more)
    # 1 gal = 3.785411784 L and 1 sq ft = 0.09290304 m2: NIST SP 811 (2008), from memory.
    assert si.result == pytest.approx(ip.result * 0.09290304 / 3.785411784, rel=ROUNDING)


@given(st.integers(5, 99), st.integers(1, 200), st.integers(5, 99), st.integers(1, 98))
def test_more_solids_and_efficiency_cover_more_and_more_film_and_loss_less(
    solids: int, film: int, efficiency: int, loss: int
) -> None:
    def made(solids: int = solids, film: int = film, efficiency: int = efficiency, loss: int = loss) -> float:
        keys = {"transfer_efficiency": str(efficiency), "loss": str(loss)}
        return float(rate(str(solids), f"{film / 10} mil", **keys).result)

    assert made(solids=solids + 1) > made() < made(efficiency=efficiency + 1)
    assert made(film=film + 1) < made() > made(loss=loss + 1)
    assert made() <= made(efficiency=100, loss=0)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"volume_solids": "0%"}, "volume_solids is 0 %"),
        ({"volume_solids": "101"}, "volume_solids is 101 %"),
        ({"volume_solids": "-5"}, "volume_solids is -5 %"),
        ({"volume_solids": "0.65"}, "write 65% or 0.65%"),
        ({"volume_solids": "0.65%"}, "from 5 % to 100 %"),
        ({"transfer_efficiency": "0"}, "transfer_efficiency is 0 %"),
        ({"transfer_efficiency": "0.35"}, "write 35% or 0.35%"),
        ({"transfer_efficiency": "120%"}, "transfer_efficiency is 120 %"),
        ({"loss": "-1"}, "loss is -1 %"),
        ({"loss": "100%"}, "loss is 100 %"),
        ({"dft": "0 mil"}, "dft is 0 mil"),
        ({"dft": "-2 mil"}, "dft is -2 mil"),
        ({"dft": "5"}, "has no unit"),
        ({"unit": "mil"}, "cannot be given in 'mil'"),
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        worked("spreading-rate", {"volume_solids": "65%", "dft": "5 mil"} | wrong)


COAT = {"volume_solids": 65, "dry_film": "5 mil", "transfer_efficiency": 35}


def test_primer_and_gloss_of_a_project_each_take_their_own_figures(tmp_path: Path) -> None:
    change: dict[str, Any] = {"coating": {"primer": COAT, "gloss": COAT | {"volume_solids": "40%"}}}
    resolve = resolver_of(tmp_path, change)
    assert resolve(("primer",), "spreading-rate").result == pytest.approx(208.52 * 0.35)
    assert resolve(("gloss",), "spreading-rate").result == pytest.approx(1604 * 0.40 / 5 * 0.35)


def test_what_a_coat_lacks_is_told_by_its_own_name(tmp_path: Path) -> None:
    resolve = resolver_of(tmp_path, {"coating": {"primer": COAT, "gloss": {"volume_solids": 40}}})
    assert resolve(("primer",), "spreading-rate").result > 0
    missing = [".".join(path) for path in resolve.missing(("gloss",), "spreading-rate")]
    assert missing == ["gloss.dry_film", "gloss.transfer_efficiency"]
