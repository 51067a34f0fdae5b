"""What the sums of sprayed coats share: declared inputs, the constant of coverage, refusals, and water."""

from fractions import Fraction
from typing import Any

from specgen.computing.inputs import given_input
from specgen.model.problem import refuse
from specgen.model.source import Kind, Source
from specgen.model.working import InputRow
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

COVERAGE = find_source("coating_coverage").quote(
    "{1604 sq ft one mil thick from a gallon|1000 m² of 1 µm from a liter}, times volume solids and transfer "
    "efficiency, over dry film"
)
WET_FILM = Source(Kind.MEMORY, "wet film is dry film over volume solids, more by the water added")
SECTIONS = ("primer", "gloss")
LEAST, AIMED = "dry_film", "target_dry_film"
THINNEST, THICKEST = Quantity.of("0.1", "mil"), Quantity.of(100, "mil")  # of one coat; common practice, no source
ROUNDED = "1604 is the trade's rounding of 1604.17, a gallon of 231 cubic inches spread one mil thick."
MOST_WATER = "Based on the maximum water addition the coating manufacturer permits; record the actual addition daily."


def film_input(title: str) -> Any:
    """Declares the dry film of one coat; another figure is a slip between mils, micrometers and inches.

    Of a project it is the film aimed at, the minimum where it names none.
    """
    aimed, within = f"*.{AIMED}", (THINNEST, THICKEST)
    return given_input("D", title, "film", f"*.{LEAST}", "dry film of one coat", preferred=aimed, within=within)


def solids_input() -> Any:
    """Declares the solids by volume, in percent."""
    about = "solids by volume of the coating as supplied"
    return given_input("V_s", "volume solids", "percent", "*.volume_solids", about, above=0)


def efficiency_input(**more: Any) -> Any:
    """Declares the transfer efficiency, in percent."""
    field, about = "*.transfer_efficiency", "share of the spray that stays on the wall"
    return given_input("E", "transfer efficiency", "percent", field, about, above=0, **more)


def loss_input() -> Any:
    """Declares a further loss, in percent of the coating."""
    about = "further loss: hoses, pails, wind"
    return given_input("l", "further loss", "percent", default=0, origin="none counted", about=about, span=("0", "99"))


def thinning_input() -> Any:
    """Declares the water added, in percent; a project is computed with the most that is allowed."""
    about = "water added, by volume of the coating"
    return given_input("T", "water added", "percent", "*.max_water", about, default=0, least=0)


def most_water_input() -> Any:
    """Declares the most water the coating manufacturer allows, in percent."""
    about = "most water the coating manufacturer allows"
    return given_input("", "", "percent", "*.max_water", about, default=None, least=0)


def coverage_row(system: str) -> InputRow:
    """What one unit of volume covers at one unit of film."""
    if system == "ip":
        return InputRow("k", "coverage of one gallon at one mil", 1604, "sq ft·mil/gal", source=COVERAGE)
    return InputRow("k", "coverage of one liter at 1 µm", 1000, "m²·µm/L", source=COVERAGE)


def tell_rounding(system: str) -> tuple[str, ...]:
    """The note on the constant, where it is a rounded one."""
    return (ROUNDED,) if system == "ip" else ()


def require_loss(loss: Any) -> None:
    """Raises Refused for a loss outside 0 to 100 percent."""
    if not 0 <= loss < 100:
        raise refuse(f"loss is {format_decimal(loss, 6)} %", "it is 0 % or more and less than 100 %")


def tell_water(thinning: Any, most_water: Any) -> tuple[str, ...]:
    """What is said of water added, in percent of the coating; raises Refused past the limit that is given."""
    if most_water is None:
        unlimited = "% of water is held against no limit: the coating manufacturer says how much is allowed."
        return (f"{format_decimal(thinning, 6)} {unlimited}",) if thinning else ()
    if thinning > most_water:
        raise refuse(
            f"thinning is {format_decimal(thinning, 6)} %",
            f"the coating manufacturer allows {format_decimal(most_water, 6)} % at most",
        )
    return ()


def require_whole_coats(coats: Any) -> None:
    """Raises Refused where the number of coats is not a whole number."""
    if coats < 0 or Fraction(coats).denominator != 1:
        raise refuse(f"coats is {format_decimal(coats, 6)}", "it is a whole number, 0 or more")
