"""The forms of the site record: limits beside the blanks, boxes for what the project names, blanks for the rest."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen.documents.banner import count_brackets
from specgen.documents.catalogue import templates
from specgen.documents.document import compose_document
from specgen.output import package
from tests.documents.support import context_of, context_of_example, lines_of, rows_of


def shown(name: str, context: Any) -> list[str]:
    """The lines of a document without the letters of sources."""
    return [re.sub(r"\[[a-z](, [a-z])*\]", "", line) for line in lines_of(name, context)]


# The example as its files have it: crew, guns, settings, windows, limits.
LINES = (
    "____ | ( ) E1 South face  ( ) E2 West face  ( ) E3 Stack house  ( ) mockup | ____ | ( ) primer  ( ) gloss"
    " | ( ) silver | ( ) O. Pikestaff | ( ) G1  ( ) spare gun | ____",
    "Overlap, % | 50% | ____ | Stroke speed, in/s | accepted ____; 12 in/s to 24 in/s | ____ |  |  | ",
    "Fluid nozzle | 0.07 in | ____ | Air nozzle | cap 3 | ____ | Pattern | oval | ( ) oval  ( ) round  ( ) flat fan",
    "Compressor, psi | minimum 80 psi | ____ | Gun inlet, psi | minimum 36 psi | ____"
    " | Atomizing pressure, psi | accepted ____; first 40 psi | ____",
    "Fluid pressure, psi | accepted ____ | ____ | Stream length, in | accepted ____; first 8 in | ____"
    " | Gun to wall, in | 18 in to 24 in | ____",
    "Limit, primer | one for each face, or boxed | CUP-7 | record | bring to 77 °F | record | within 11%, else repeat"
    " | same in each pail | maximum 8%"
    " | 27 s to 33 s | bring to 77 °F | 60 mesh | –",
    "Limit, gloss | one for each face, or boxed | CUP-7 | record | bring to 77 °F | record | within 11%, else repeat"
    " | same in each pail | maximum 6%"
    " | 27 s to 33 s | bring to 77 °F | 60 mesh | –",
    "Limit | primer, gloss | 50 °F to 90 °F | not in sun | 50 °F to 90 °F | max. 75% | wall min. 5 °F above"
    " | max. 8 mph"
    " | max. 8 mph | – | no sun, no rain | min. 50 °F, 24 h to 36 h | none | go: all met",
    "Limit | boards, base coat | 40 °F to 100 °F | not in sun | 40 °F to 100 °F | max. 75% | wall min. 5 °F above"
    " | – | – | – | no sun, no rain | min. 40 °F, 24 h to 36 h | none | go: all met",
    "Limit | WRB | 40 °F to 100 °F | not in sun | 40 °F to 100 °F | – | – | – | – | – | no sun, no rain"
    " | min. 40 °F, 24 h | none | go: all met",
    "Sealant, before its hand pull | 7 days | ____ | ____ | – | – | – | – | ____ | ____ | ____",
    "Limit | sealant | – | as in shade | 50 °F to 90 °F | – | dry face, min. 5 °F above | – | – | – | no rain"
    " | – | none | go: all met",
    "Water-resistive barrier: wall W1 (Hold Point 3) | 24 h | ____ | ____ | – | – | – | ____ | ____ | ____ | ____",
    "Insulation boards | 36 h | ____ | ____ | – | – | – | ____ | ____ | ____ | ____",
    "Tinted primer (Hold Point 10) | 16 h; meter maximum 12; gloss within 168 h | ____ | ____ | ____ | ( ) yes"
    " | ( ) yes | ____ | ____ | ____ | ____",
    "( ) water-resistive barrier  ( ) insulation boards  ( ) heavy mesh  ( ) base coat with standard mesh"
    "  ( ) base coat, leveling pass  ( ) first smoothing coat  ( ) second smoothing coat  ( ) primer  ( ) gloss"
    # Cloth comes down ahead of gusts, so that who hangs it writes when: common practice, no source.
    "  ( ) sealant joints | AT-1, ST-1, HY-1, WM-1 | hung ____ off ____ gusts forecast, mph ____ "
    "comes off above, by its design ____",
)


@pytest.mark.parametrize("line", LINES)
def test_a_line_of_the_example_reads_as_its_files_have_it(line: str) -> None:
    assert line in shown("D12", context_of_example("clean"))


def test_the_forms_stand_in_their_order_and_a_page_each() -> None:
    lines = lines_of("D12", context_of_example("clean"))
    heads = [line for line in lines if re.match("D12[a-f] [A-Z ]+$", line)]
    assert heads[-5:] == [
        "D12a SPRAY RECORD",
        "D12b VISCOSITY AND WATER",
        "D12c WEATHER",
        "D12d DRYING RELEASE",
        "D12e READINGS IN PLACE",
    ]


# The order of the steps: exclusion, wind, masking; tank, material, cup, strainer, lid, regulators, compressor, pattern.
CHECKS = (
    *("People and vehicles", "One person watches the wind", "Edges masked"),
    *("Tank clean", "Tank lined", "Material stirred", "Cup and water", "Material strained", "Lid tight"),
)
LATER = (
    *("Both regulators at zero", "Compressor started", "Agitator", "Atomizing air off"),
    *("Atomizing air on", "Pattern even"),
)


def test_the_setup_is_ticked_in_the_order_of_the_procedure() -> None:
    rows = [row for row in rows_of("D12", context_of_example("clean")) if re.fullmatch(r"\d+", row[0])]
    ticks = [cell for row in rows for cell in row if cell.startswith("( ) ")][: len(CHECKS) + len(LATER)]
    for tick, words in zip(ticks, (*CHECKS, *LATER), strict=True):
        assert tick.startswith(f"( ) {words}"), tick


def test_what_the_project_does_not_name_is_a_blank(tmp_path: Path) -> None:
    lines = shown("D12", context_of(tmp_path))
    head = lines.index("Date | Elevation | Area | Coat | Crew | Sprayer | Gun | Sheet No.")
    assert lines[head + 1].endswith("| ____ | ____ | ____ | ____")
    assert lines[lines.index("Work | Instruments") + 1].endswith(" | ____")
    assert any(line.startswith("Fluid nozzle | accepted ____ | ____ | Air nozzle | accepted ____ |") for line in lines)
    # The usual drying times: common practice, no source.
    assert any(line.startswith("Gloss finish | 24 h | ____") for line in lines)
    assert any(line.startswith("Second smoothing coat (Hold Point") and " | 24 h | " in line for line in lines)


def test_a_limit_that_is_not_given_waits_in_brackets_and_is_counted(tmp_path: Path) -> None:
    context = context_of(tmp_path, {"joints": {"J1": {"install_low": "50 F"}}})
    lines = lines_of("D12", context)
    assert any("| maximum [water] |" in line for line in lines)
    assert any("| sealant | – | as in shade | 50 °F to [maximum] |" in line for line in lines)
    # Water and wet film of two coats, that of the second coat of gloss, the warmest joint, the release of the primer;
    # of the readings the size of the joint with its tolerance, pH, primer, dry film of both coats, and gloss likewise.
    template = next(one for one in templates() if one.id == "D12")
    assert count_brackets(compose_document(template, context, draft=False)) == 17


def test_work_that_a_project_does_not_tell_of_is_where_used(tmp_path: Path) -> None:
    lines = shown("D12", context_of(tmp_path))
    assert any(line.startswith("Base coat, leveling pass, where used (Hold Point") for line in lines)
    assert any("Aesthetic joints, where used |" in line for line in lines)
    assert not any("where used" in line for line in shown("D12", context_of_example("clean")))


def test_a_wall_that_stands_is_released_by_what_is_done_to_it(tmp_path: Path) -> None:
    walls = {
        "W1": {"substrate": {"kind": "existing_brick", "condition": ["open_joints"]}},
        "W2": {"substrate": {"kind": "existing_coated", "coating_removed": False}},
    }
    lines = shown("D12", context_of(tmp_path, {"walls": walls}))
    told = "Existing wall: W1 joints repointed, mortar cured; W2 coating washed, dry"
    assert any(line.startswith(told) for line in lines)
    assert any(line.startswith("( ) washing and repair  ") for line in lines)
    washed = "Limit | washing and repair | no frost | – | per EIFS instructions |"
    assert any(line.startswith(washed) for line in lines)


def test_what_is_pulled_of_an_old_wall_has_a_form_of_its_own(tmp_path: Path) -> None:
    old = {"substrate": {"kind": "existing_brick", "bond_limit": "20 psi"}}
    text = "\n".join(shown("D12", context_of(tmp_path, {"walls": {"W1": old}})))
    assert "D12f PULL TESTS AND MOISTURE" in text and "Bond of the existing surface, pull-off" not in text
    # The bond of EIFS, from memory; the numbers of the pulls, common practice, no source.
    told = "minimum 15 psi, or the engineer's figure where higher: 20 psi on W1; minimum 3 pulls in each 1000 sq ft"
    assert told in text
    assert "D12f" not in "\n".join(shown("D12", context_of(tmp_path)))


def test_a_figure_that_nobody_verified_bears_one_mark_which_the_head_of_each_form_explains(tmp_path: Path) -> None:
    lines = lines_of("D12", context_of(tmp_path))
    for figure in (
        "| Zahn No. 4[p] |",
        "| max. 8 mph[p] |",
        "| max. 85%[p] |",
        "minimum 80 psi[p] |",
        "| 16 in to 24 in[p] |",
    ):
        assert any(figure in line for line in lines), figure
    heads = [number for number, line in enumerate(lines) if re.match("D12[a-f] [A-Z ]+$", line)]
    assert len(heads) == 5
    assert all("Figures marked p are proposed, not verified; see D05." in lines[number + 1] for number in heads)
    assert "[p] Proposed, not verified; see D05" in lines


def test_a_reading_stands_beside_its_limit_as_far_as_it_is_known(tmp_path: Path) -> None:
    change = {"aesthetic_joint": {"width": "3/4 in", "depth": "1/2 in"}, "gloss_target": {"units": 65, "angle": 60}}
    (head, *_), lines = (
        [line for line in shown("D12", context_of(tmp_path, change)) if start in line] for start in ("Test | Limit", "")
    )
    assert head == " | ".join(("Test | Limit | Place | Readings | Result | By, date",) * 2)
    text = "\n".join(lines)
    assert "Aesthetic joints | 3/4 in by 1/2 in, each ± [Aesthetic joint tolerance]; maximum" in text
    assert "Gloss: each reading 65 ± [Gloss tolerance] gloss units at 60 degrees | ____" in text
    assert "Primer dryness | maximum reading [Primer release moisture reading] | ____" in text
    assert "; meter maximum [moisture reading] |" in text


def test_joint_faces_that_sealant_bonds_to_are_masked_before_gloss(tmp_path: Path) -> None:
    joints = {"J1": {"bond_face": "primer"}, "J2": {"bond_face": "primer"}, "J3": {"bond_face": "base_coat"}}
    text = "\n".join(shown("D12", context_of(tmp_path, {"joints": joints})))
    assert "( ) Joint bond faces masked before gloss (J1, J2)" in text
    assert "bond faces" not in "\n".join(shown("D12", context_of(tmp_path)))


def test_a_face_of_fifty_panels_has_room_on_one_spray_record_and_one_sheet_of_readings() -> None:
    lines = shown("D12", context_of_example("clean"))
    head = lines.index(" | ".join(("Panel | Coat 1 wet, mils | Coat 2 wet, mils | Shield",) * 4))
    assert lines[head + 1 : head + 15] == [" | ".join(("____ | ____ | ____ | ( ) yes",) * 4)] * 14
    read = lines.index(" | ".join(("Panel | Gap, in | Meter",) * 7))
    assert lines[read + 1 : read + 9] == [" | ".join(("____ | ____ | ____",) * 7)] * 8
    assert any("The worst panel governs, here and on Form D12d." in line for line in lines)


# Common practice, no source: what is read too often for one cell has a numbered box each, as on the form of the mockup,
# and a sheet that is copied by itself bears the head of its form.
def test_film_gloss_color_and_pulls_have_a_box_for_each_reading_on_a_sheet_with_its_head(tmp_path: Path) -> None:
    lines = shown("D12", context_of_example("clean"))
    boxed = {half.split(":")[0].split(" | ")[0]: half for line in lines for half in re.split(r"(?<=fail) \| ", line)}
    # The example reads film five times each coat, gloss six times, color three times at an angle, and pulls ten times.
    read = {"Dry film, primer": 5, "Dry film, gloss, coat 2": 5, "Gloss": 6, "Color, 45 degrees": 3}
    for said, times in read.items():
        assert boxed[said].split(" | ")[1:7] == ["____"] * times + ["–"] * (6 - times), said
    assert "Sealant hand pull, 7 to 10 | ____ | ____ | ____ | ____ | – | – | – | –" in "\n".join(lines)
    # Each pull has its place, and where the length of a joint is not given, the least number of the first length.
    assert sum("Joint and place of each, above | ____" in line for line in lines) == 2
    pulled = shown("D12", context_of(tmp_path, {"joints": {"J1": {"kind": "eifs_to_eifs"}}}))
    assert "Sealant hand pull, 7 to 10 | ____ | ____ | ____ | ____ | –" in "\n".join(pulled)
    assert any("no reading below 85% of it" in line for line in pulled)
    assert "D12a Spray record, panels | ____ | ____ | ____ | ____ | ____" in lines
    assert "D12e Readings in place, second sheet | ____ | ____ | ____ | ____" in lines


def test_metric_forms_ask_in_metric_units() -> None:
    text = "\n".join(shown("D12", context_of_example("metric")))
    units = ("Water, mL", "Air, °C", "Wind, m/s", "Atomizing pressure, kPa", "Stream length, mm", "Coat 1 wet, µm")
    for unit in units:
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


def test_accepted_pressures_stand_with_what_they_may_differ_by(tmp_path: Path) -> None:
    # Common practice, no source: 5 psi.
    accepted = {"accepted": {"atomizing_pressure": "42 psi", "fluid_pressure": "11 psi"}}
    lines = "\n".join(shown("D12", context_of(tmp_path, accepted)))
    assert "Atomizing pressure, psi | accepted 42 psi ± 5 psi" in lines
    assert "Fluid pressure, psi | accepted 11 psi ± 5 psi" in lines


# A sheet whose limits are brackets is no record, as no reading can be held to them: common practice, no source.
def test_the_forms_print_in_a_draft_that_knows_their_limits_and_are_told_as_wanting_in_another(tmp_path: Path) -> None:
    known, unknown = written_as_draft(context_of_example("metric")), written_as_draft(context_of(tmp_path))
    assert re.findall(r"(?m)^D12([a-f]) [A-Z ]+$", known["D12"]) == ["a", "b", "c", "d", "e"]
    assert re.search(r"(?m)^D12 Site record \| yes \| ", known["D00"])
    assert "D12" not in unknown and re.search(r"(?m)^D12 Site record \| no \| Values: ", unknown["D00"])


def written_as_draft(context: Any) -> dict[str, str]:
    """The text of each document of the whole draft, by its id."""
    made = package.make_package(
        context.project, context.standards, context.judgment, context.resolve, ("txt",), (), draft=True
    )
    return {name[:3]: page.decode() for name, page in made.files.items() if name.endswith(".txt")}
