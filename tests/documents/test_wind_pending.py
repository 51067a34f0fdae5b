"""The wind check of an adhered wall in a draft: who is asked for what, and what D06 says that it waits for."""

from pathlib import Path
from typing import Any

from tests.documents.example import drafted, rows_below
from tests.documents.open_page import list_lines
from tests.support import merged

# A wall under a code that names no wind standard.
WALL: dict[str, Any] = {
    "package": {"purpose": "design_draft", "units": "si"},
    "code": {"model": "other", "name": "Fen Building Rules", "edition": 2020},
    "walls": {"W1": {"attachment": {"method": "adhesive_notched_trowel"}}},
    "elevations": {"E1": {"wall": "W1"}},
}
ASKED = "Design wind pressure, outward (suction on boards), at allowable level, the greater of field and corner zone"
TITLE = "Wind pressure on the adhered wall"
CAPACITY = ["Tested wind load of the adhered wall, W1", "Safety factor on the tested wind load, W1"]


def asked_of(folder: Path) -> dict[str, tuple[str, str]]:
    """The party and the stage of each value asked for, by its words."""
    return {item: (party, before) for party, before, item, *_ in list_lines(folder)}


def pending_of(page: str) -> list[str]:
    """What the wind check of D06 waits for."""
    (row,) = [row for row in rows_below(page, "PENDING CALCULATIONS") if row[0] == TITLE]
    return row[2].strip("[]").split("; ")


# Common practice, no source: where the code names no standard that is computed here, the engineer gives the pressure;
# an adhered wall is held to its tested load over the safety factor.
def test_under_a_local_code_the_engineer_is_asked_for_the_suction_before_the_decision(tmp_path: Path) -> None:
    page = drafted(tmp_path, WALL, ("D06", "D19"))["D06"]
    assert asked_of(tmp_path)[f"{ASKED}, kPa (E1)"] == ("Engineer", "decision on the walls")
    assert pending_of(page) == ["Design wind pressure, outward", *CAPACITY]


def test_a_suction_that_is_given_is_printed_and_the_check_waits_for_the_rest(tmp_path: Path) -> None:
    given = {"elevations": {"E1": {"design_pressure_outward": "0.9 kPa"}}}
    page = drafted(tmp_path, merged(WALL, given), ("D06", "D19"))["D06"]
    assert not [item for item in asked_of(tmp_path) if item.startswith(ASKED)]
    assert "-0.9 kPa" in page.replace("\u2212", "-").replace("\u00a0", " ")
    assert pending_of(page) == CAPACITY


def test_a_check_that_lacks_nothing_is_not_pending(tmp_path: Path) -> None:
    given = {
        "walls": {"W1": {"attachment": {"ultimate_strength": "6 kPa", "safety_factor": 3}}},
        "elevations": {"E1": {"design_pressure_outward": "0.9 kPa"}},
    }
    page = drafted(tmp_path, merged(WALL, given), ("D06", "D19"))["D06"]
    waiting = [row[0] for row in rows_below(page, "PENDING CALCULATIONS")[1:]]
    assert waiting and TITLE not in waiting
