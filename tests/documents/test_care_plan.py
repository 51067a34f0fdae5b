"""Care and repair: soft wash, a yearly look at the places of the project, recoating to a break, what is kept."""

import re
from pathlib import Path

import pytest

from tests.documents.support import context_of, context_of_example, lines_of

# The example as its files have it.
LINES = (
    "5. Do not wash before the last coat has dried a minimum of 36 h, or longer per its manufacturer.",
    "4. Warranty: 5 years from substantial completion, by Graywether Wall Systems, Quillgloss Coating Works, and Lark"
    " and Mallow Finishes. Terms: WA1. Notify the warrantors before repairing under warranty.",
    "Sealant joints J1 to J9 | splits, loss of bond, hardening | renew the joint",
    "Flashings, sills, kick-out flashing RE1, roof flashing RB1, metal caps PA1 to PA3"
    " | loose seams, blocked weeps, water stains below | clear and refasten; find the source of stains",
    "Ledge LG1 | cracks, standing water | class the damage; repair before winter",
    "Foot of the wall over the roof, RB1 | clearance under 3 in | clear leaves and snow",
    "Base of the walls | clearance under 9 in (E1, E2), 8 in (E3) | remove soil, plants, and snow from the face",
    "Penetration PN1 | open joints around the collar | renew the joint",
    "3. Later than 72 h after its last coat, clean and abrade the gloss per IN3 before recoating.",
    "Color C1 | sample board 2, manufacturer's No. 4107; angles, degrees: 15, 45, 110 | ____",
    "Gloss in reserve | 12% of the quantity of all coats, boxed, resealed, and labeled; stored at a minimum of 45 °F;"
    # Ordered on May 17 with 21 days of lead time; the work is complete on October 15, 2027, the next spring begins on
    # March 20, 2028.
    " shelf life 9 months from manufacture per its label: use by March 7, 2028 at the latest (arrival June 7, 2027);"
    " make the first inspection before that day, or have the manufacturer extend it in writing | ____",
    "2. Use the coating kept in reserve within its shelf life, at the cup time and water recorded below; thereafter"
    " order a new batch to those data, lead time C1 21 days. A new batch, crew, gun, or access requires a test panel in"
    " view, accepted by the owner's representative.",
    "S1 | Sealant 61, light gray | J1 to J9, PN1 | tinted primer; frames, head flashing, floor-line flashing, corner"
    " panel of coated aluminum, collar | LT2, TR7, TR10",
    "Gloss | 62 ± 5 gloss units at 60 degrees | ____",
    "2 | Scratch or scuff in the gloss; primer and base coat whole"
    " | Wash, dry, and abrade per IN3; recoat the full panel to the next corner or joint. | applicator",
)


def shown(context: object) -> list[str]:
    """The lines without the letters of sources."""
    return [re.sub(r"\[[a-z](, [a-z])*\]", "", line) for line in lines_of("D16", context)]  # type: ignore[arg-type]


@pytest.mark.parametrize("line", LINES)
def test_a_line_of_the_example_reads_as_its_files_have_it(line: str) -> None:
    assert line in shown(context_of_example("clean"))


def test_washing_is_soft_after_a_test_patch_and_marked_as_practice() -> None:
    lines = shown(context_of_example("clean"))
    assert any(line.startswith("1. Soft wash only (practice)") for line in lines)
    assert any(line.startswith("2. Test patch first (practice)") for line in lines)
    assert any('govern. Lines marked "practice" are common practice' in line for line in lines)


def test_a_spot_repair_shows_and_is_told_so(tmp_path: Path) -> None:
    whole, spot = (
        "\n".join(shown(context_of(tmp_path, {"finish": {"repair_method": method}})))
        for method in ("recoat_to_break", "spot")
    )
    assert "Recoat full panels to the next aesthetic joint, movement joint, or corner." in whole
    assert "Spot repairs follow those on the accepted mockup and stay visible." in spot
    assert "a spot repair shows" in spot
    assert "Recoat full panels" not in spot


def test_four_classes_of_damage_end_with_a_licensed_professional() -> None:
    rows = [line.split(" | ") for line in shown(context_of_example("clean")) if re.match(r"\d \| ", line)]
    assert [row[0] for row in rows] == ["1", "2", "3", "4"]
    assert "licensed design professional" in rows[-1][2]
    assert "recoat the full panel to the next corner or joint" in rows[1][2]


def test_what_is_not_known_is_open_or_left_out(tmp_path: Path) -> None:
    lines = shown(context_of(tmp_path))
    text = "\n".join(lines)
    assert "Color | [Color] | ____" in lines
    assert "SEALANT RENEWAL" not in lines
    assert "None" not in text
    assert "Warranty:" not in text
    assert "abrade the gloss per its manufacturer's written instructions" in text


def test_a_sealant_without_a_letter_says_so(tmp_path: Path) -> None:
    lines = shown(context_of(tmp_path, {"sealants": {"S1": {"product": "Bead 5"}}}))
    assert any(line.startswith("S1 | Bead 5 | – | ") and line.endswith(" | none received") for line in lines)


def test_care_is_part_of_the_packages_of_the_work_alone() -> None:
    from specgen.documents.catalogue import templates

    stages = {template.id: template.stage for template in templates()}
    assert (stages["D11"], stages["D12"], stages["D15"], stages["D16"]) == ("mockup", "mockup", "mockup", "work")
