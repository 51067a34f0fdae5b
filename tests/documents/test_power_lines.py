"""Power lines in the documents: the distance of the sum and of the clause, or the word to ask the utility."""

from pathlib import Path
from typing import Any

import pytest

from specgen import building
from tests.support import SMALL, merged, written

UTILITY = "the voltage of the power line and whether it is insulated."


def said(folder: Path, name: str, site: Any) -> str:
    """A document of the small project with what is said of its site."""
    folder.mkdir()
    file = written(folder, merged(SMALL, {"package": {"purpose": "design_draft"}, "site": site}))
    building.build(file, folder / "out", ("txt",), (name,), draft=True)
    (made,) = (folder / "out").glob(f"{name}*.txt")
    return made.read_text("utf-8")


# 29 CFR 1926.451(f)(6) by hand: 10 ft and 88 times 0.4 in are 12 ft 11.2 in, printed to the sixteenth; 3 ft for an
# insulated line under 300 V.
@pytest.mark.parametrize(
    ("voltage", "insulated", "distance"), [("138 kV", "no", "12 ft 11-3/16 in"), ("240 V", "yes", "3 ft")]
)
def test_the_documents_print_the_distance_of_the_voltage(
    voltage: str, insulated: str, distance: str, tmp_path: Path
) -> None:
    site = {"surroundings": ["power_lines"], "power_line_voltage": voltage, "power_line_insulated": insulated}
    for name in ("D05", "D08"):
        made = said(tmp_path / name, name, site)
        assert distance in made, made
        assert UTILITY not in made


def test_an_unknown_voltage_is_an_open_item_in_words_of_its_own(tmp_path: Path) -> None:
    warning = (
        f"Open item: obtain from the utility {UTILITY} Both set the minimum distance of scaffolds and lifts. "
        "Do not set up scaffolds or lifts near the line before the utility has answered."
    )
    assert warning in said(tmp_path / "D05", "D05", {"surroundings": ["power_lines"]})
    procedure = said(tmp_path / "D08", "D08", {"surroundings": ["power_lines"]})
    assert "Do not work near the power line until the utility states its voltage" in procedure


def test_where_no_line_is_near_none_is_spoken_of(tmp_path: Path) -> None:
    for name in ("D05", "D08"):
        assert "utility" not in said(tmp_path / name, name, {"surroundings": ["dust"]})
