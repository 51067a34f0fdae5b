"""The forms of the site record: limits beside the blanks, boxes for what the project names, blanks for the rest."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen.output import package
from tests.documents.support import context_of, context_of_example, lines_of, rows_of


def shown(name: str, context: Any) -> list[str]:
    """The lines of a document without the letters of sources."""
    return [re.sub(r"\[[a-z](, [a-z])*\]", "", line) for line in lines_of(name, context)]


# The example as its files have it: crew, guns, settings, windows, limits.
LINES = (
    "Elevation | ( ) E1 South face  ( ) E2 West face  ( ) E3 Stack house  ( ) mockup | Crew | ( ) silver",
    "Fluid nozzle; air nozzle | 0.07 in; cap 3 | ____; ____"
    " | Compressor; gun inlet, psi | minimum 80 psi; minimum 36 psi | ____; ____",
    "Atomizing pressure, psi | accepted ____; first 40 psi | ____ | Fluid pressure, psi | accepted ____ | ____",
    "Stream length, in | accepted ____; first 8 in | ____ | Gun to wall, in | 18 in to 24 in | ____",
    "Limit, primer | one for each face, or boxed | CUP-7 | record | bring to 77 °F | record | within 11%, else repeat"
    " | same in each pail | maximum 8%"
    " | 27 s to 33 s | 60 mesh | –",
    "Limit, gloss | one for each face, or boxed | CUP-7 | record | bring to 77 °F | record | within 11%, else repeat"
    " | same in each pail | maximum 6%"
    " | 27 s to 33 s | 60 mesh | –",
    "Limit | primer, gloss | min. 50 °F | not in sun | 50 °F to 90 °F | max. 75% | wall min. 5 °F above | max. 8 mph"
    " | max. 8 mph | – | no sun, no rain | min. 50 °F | none | go: all met",
    "Limit | boards, base coat | min. 40 °F | – | min. 40 °F | max. 75% | wall min. 5 °F above | – | – | –"
    " | no rain; no frost in 24 h | min. 40 °F | none | go: all met",
    "Limit | WRB | min. 40 °F | – | min. 40 °F | – | – | – | – | – | no rain | min. 40 °F | none | go: all met",
    "Limit | sealant | – | – | 50 °F to 80 °F | – | – | – | – | – | no rain | – | none | go: all met",
    "Water-resistive barrier: wall W1 (Hold Point 3) | 24 h | ____ | ____ | – | – | – | ____ | ____ | ____ | ____",
    "Insulation boards | 36 h | ____ | ____ | – | – | – | ____ | ____ | ____ | ____",
    "Tinted primer (Hold Point 10) | 16 h; meter maximum 12; gloss within 168 h | ____ | ____ | ____ | ( ) yes"
    " | ( ) yes | ____ | ____ | ____ | ____",
    "Date | ____ | Instruments | AT-1, ST-1, HY-1, WM-1",
)


@pytest.mark.parametrize("line", LINES)
def test_a_line_of_the_example_reads_as_its_files_have_it(line: str) -> None:
    assert line in shown("D12", context_of_example("clean"))


def test_the_forms_stand_in_their_order_and_a_page_each() -> None:
    lines = lines_of("D12", context_of_example("clean"))
    heads = [line for line in lines if re.match("D12[a-d] [A-Z ]+$", line)]
    assert heads[-4:] == [
        "D12a SPRAY RECORD",
        "D12b VISCOSITY AND WATER",
        "D12c WEATHER",
        "D12d DRYING RELEASE AND READINGS",
    ]


# The order of the step Spray setup: tank, material, cup, strainer, lid, regulators, compressor, stream, pattern.
CHECKS = ("Tank clean", "Tank lined", "Material stirred", "Cup and water", "Material strained", "Lid tight")
LATER = (
    *("Both regulators at zero", "Compressor started", "Agitator running", "Atomizing air off"),
    *("Atomizing air restored", "Pattern even"),
)


def test_the_setup_is_ticked_in_the_order_of_the_procedure() -> None:
    rows = [row for row in rows_of("D12", context_of_example("clean")) if re.fullmatch(r"\d+", row[0])]
    ticks = [cell for row in rows for cell in row if cell.startswith("( ) ")][: len(CHECKS) + len(LATER)]
    for tick, words in zip(ticks, (*CHECKS, *LATER), strict=True):
        assert tick.startswith(f"( ) {words}"), tick


def test_what_the_project_does_not_name_is_a_blank(tmp_path: Path) -> None:
    lines = shown("D12", context_of(tmp_path))
    assert any(line.endswith("| Crew | ____") for line in lines)
    assert any(line.endswith("| Gun | ____") for line in lines)
    assert "Date | ____ | Instruments | ____" in lines
    assert any(
        line.startswith("Fluid nozzle; air nozzle | accepted ____; accepted ____ | ____; ____ |") for line in lines
    )
    # The usual drying times: common practice, no source.
    assert any(line.startswith("Gloss finish | 24 h | ____") for line in lines)
    assert any(line.startswith("Second smoothing coat (Hold Point") and " | 24 h | " in line for line in lines)


def test_no_value_of_a_form_waits_in_brackets(tmp_path: Path) -> None:
    assert not [line for line in shown("D12", context_of(tmp_path)) if re.search(r"\[[A-Z]", line)]


def test_metric_forms_ask_in_metric_units() -> None:
    text = "\n".join(shown("D12", context_of_example("metric")))
    for unit in ("Water, mL", "Air, °C", "Wind, m/s", "Atomizing pressure, kPa", "Stream length, mm", "Wet film, µm"):
        assert unit in text
    for unit in ("fl oz", "°F", "mph", "psi", "mils"):
        assert unit not in text


def test_walls_that_dry_apart_are_told_apart(tmp_path: Path) -> None:
    walls = {
        "W1": {"attachment": {"cure_hours": 36}},
        "W2": {"substrate": {"kind": "concrete"}, "attachment": {"method": "adhesive_full_bed", "cure_hours": 48}},
    }
    lines = shown("D12", context_of(tmp_path, {"walls": walls}))
    assert any(line.startswith("Insulation boards | 36 h (W1); 48 h (W2) |") for line in lines)


def test_accepted_settings_take_the_place_of_the_first_ones(tmp_path: Path) -> None:
    lines = shown("D12", context_of(tmp_path, {"accepted": {"stream_length": "7 in", "stream_tolerance": "1 in"}}))
    assert any("Stream length, in | accepted 7 in ± 1 in | ____" in line for line in lines)


def test_the_forms_print_in_every_draft(tmp_path: Path) -> None:
    context = context_of(tmp_path)
    made = package.make_package(
        context.project, context.standards, context.judgment, context.resolve, ("txt",), (), draft=True
    )
    assert any(name.startswith("D12") for name in made.files)
