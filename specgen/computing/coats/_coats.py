"""What the sums of sprayed coats share: the constant of coverage, refusals, water, and the coats of a project."""

from fractions import Fraction
from typing import Any

from specgen.computing.guards import refuse_beyond, refuse_negative_percent
from specgen.model.problem import refuse
from specgen.model.source import Kind, Source
from specgen.model.working import Given
from specgen.quantities.format import decimal
from specgen.quantities.quantity import Quantity

COVERAGE = Source(
    Kind.PUBLISHED,
    "coating consultant's sheet on spreading rates: 1604 sq ft one mil thick from a gallon, 1000 m² of 1 µm from a "
    "liter, times volume solids over dry film, times transfer efficiency, less loss",
)
WET_FILM = Source(Kind.MEMORY, "wet film is dry film over volume solids, more by the water added")
SECTIONS = ("primer", "gloss")
THINNEST, THICKEST = Quantity.of("0.1", "mil"), Quantity.of(100, "mil")  # of one coat; common practice, no source
ROUNDED = "1604 is the trade's rounding of 1604.17, a gallon of 231 cubic inches spread one mil thick."
MOST_WATER = "Water is the most the coating source allows; the record of the day says how much was added."


def coverage(system: str) -> tuple[Given, str, str, str]:
    """What one unit of volume covers at one unit of film, and the units of film, area and volume."""
    if system == "ip":
        return (
            Given("k", "cover of a gallon, one mil thick", 1604, "sq ft·mil/gal", source=COVERAGE),
            "mil",
            "ft2",
            "gal",
        )
    return Given("k", "cover of a liter, 1 µm thick", 1000, "m²·µm/L", source=COVERAGE), "um", "m2", "L"


def rounded(system: str) -> tuple[str, ...]:
    """The note on the constant, where it is a rounded one."""
    return (ROUNDED,) if system == "ip" else ()


def refuse_film(dft: Quantity) -> None:
    """Raises Refused for a dry film that no sprayed coat has: a slip between mils, micrometers and inches."""
    refuse_beyond("dft", dft, THINNEST, THICKEST)


def refuse_loss(loss: Any) -> None:
    """Raises Refused where a loss, in percent, is no part of the coating."""
    if not 0 <= loss < 100:
        raise refuse(f"loss is {decimal(loss, 6)} %", "it is 0 % or more and less than 100 %")


def water_notes(thinning: Any, most_water: Any) -> tuple[str, ...]:
    """What is said of water added, in percent of the coating; raises Refused past the limit that is given."""
    refuse_negative_percent(thinning=thinning)
    if most_water is None:
        told = (
            f"{decimal(thinning, 6)} % of water is held against no limit: the coating source says how much is allowed."
        )
        return (told,) if thinning else ()
    refuse_negative_percent(most_water=most_water)
    if thinning > most_water:
        raise refuse(
            f"thinning is {decimal(thinning, 6)} %", f"the coating source allows {decimal(most_water, 6)} % at most"
        )
    return ()


def refuse_part_of_a_coat(coats: Any) -> None:
    """Raises Refused where the number of coats is no whole number."""
    if coats < 0 or Fraction(coats).denominator != 1:
        raise refuse(f"coats is {decimal(coats, 6)}", "it is a whole number, 0 or more")
