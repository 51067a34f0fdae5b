"""What the instructions of a material say of heat and sun, in the field conditions, at the steps, and on the form.

Sound words are those of the fields, retyped; where a field is not given, the instructions are referred to.
"""

import re
from pathlib import Path
from typing import Any

from tests.documents.example import changed_clean, page_of
from tests.documents.test_procedure import step_of

BARE = {"most_temperature": "100 F", "direct_sun": "no"}
HEAT: dict[str, Any] = {
    "walls": {wall: {"wrb": BARE, "attachment": BARE, "base_coat": BARE} for wall in ("W1",)}
    | {"W2": {"attachment": BARE, "base_coat": BARE | {"most_temperature": "95 F"}}}
}
NONE = {"base_coat": {"most_temperature": "drop", "direct_sun": "drop"}}
UNTOLD: dict[str, Any] = {"walls": {"W1": NONE, "W2": NONE}}


def told(folder: Path, name: str, change: Any) -> str:
    """A document of the clean example with a change, without the letters of sources."""
    return re.sub(r"\[[a-z]\]", "", page_of(changed_clean(folder, change), name))


def test_a_maximum_stands_with_its_material_the_lowest_where_walls_differ(tmp_path: Path) -> None:
    said = told(tmp_path, "D08", HEAT)
    assert "Maximum air and wall temperature | WRB, boards | maximum 100 °F, until dry\n" in said
    assert "Maximum air and wall temperature | base coat | maximum 95 °F, until dry\n" in said
    # The instructions of the finish are those of the example.
    assert "Maximum air and wall temperature | smoothing, primer, gloss | maximum 90 °F, until dry\n" in said
    assert "Wall temperature | primer, gloss" not in said
    assert "Direct sun | WRB, boards, base coat, smoothing | none during application and until set to touch\n" in said


def test_what_no_field_gives_is_left_to_the_instructions(tmp_path: Path) -> None:
    said = told(tmp_path, "D08", UNTOLD)
    assert "Maximum temperature | base coat | per the manufacturers' written instructions: base coat IN2\n" in said
    assert "Direct sun | base coat | per the manufacturers' written instructions: base coat IN2\n" in said
    assert "Keep direct sun off" not in step_of(said, "Base coat, leveling pass")


def test_a_face_is_shaded_at_the_step_whose_material_bears_no_sun(tmp_path: Path) -> None:
    said = told(tmp_path, "D08", HEAT)
    assert "Keep direct sun off the WRB during application and until it is set to touch." in step_of(
        said, "Water-resistive barrier"
    )
    assert "Keep direct sun off the adhesive during application and until it has set." in step_of(
        said, "Insulation boards"
    )
    for title in ("Heavy mesh", "Base coat with standard mesh", "Base coat, leveling pass"):
        assert "Keep direct sun off the base coat during application and until it is set to touch." in step_of(
            said, title
        )
    smoothed = step_of(said, "First smoothing coat")
    assert "Keep direct sun off each smoothing coat during application and until it is set to touch." in smoothed


def test_cloth_stays_up_over_a_fresh_coat_and_a_face_without_it_waits_for_its_shade(tmp_path: Path) -> None:
    said = step_of(told(tmp_path, "D08", {}), "Access and site safety")
    kept = "Keep the shade cloth up until each coat under it is set to touch, after the shift too"
    assert f"E1 South face, E2 West face: {kept}" in said
    assert "E3 Stack house: Begin each coat that may not stand in the sun once the face is out of it" in said


def test_the_form_lets_no_coat_go_that_its_instructions_keep_out_of_sun_and_heat(tmp_path: Path) -> None:
    lines = told(tmp_path, "D12", HEAT).splitlines()
    assert (
        "Limit | boards, base coat | 40 °F to 95 °F | not in sun | 40 °F to 95 °F | max. 75% | wall min. 5 °F above"
        " | – | – | – | no sun, no rain | min. 40 °F, 24 h to 36 h | none | go: all met"
    ) in lines
    (smoothing,) = [line for line in lines if line.startswith("Limit | smoothing | ")]
    assert smoothing.startswith("Limit | smoothing | 50 °F to 90 °F | not in sun | 50 °F to 90 °F |")
    (untold,) = [line for line in told(tmp_path, "D12", UNTOLD).splitlines() if line.startswith("Limit | boards, ")]
    assert untold.startswith("Limit | boards, base coat | 40 °F to 100 °F | not in sun |")


def test_dew_keeps_sealant_off_a_joint_as_the_form_has_it(tmp_path: Path) -> None:
    said = told(tmp_path, "D08", {})
    works = "boards, base coat, smoothing, primer, gloss, sealant"
    assert f"Wall temperature above dew point | {works} | minimum 5 °F\n" in said


def test_sealing_in_months_hotter_than_the_joints_are_computed_for_goes_by_the_air(tmp_path: Path) -> None:
    # The normals of the example: 81 °F in June, 85 °F in July, 83 °F in August; the joints are computed to 80 °F here.
    cooler = {f"J{number}": {"install_high": "80 F"} for number in range(1, 10)}
    said = step_of(told(tmp_path, "D08", {"joints": cooler}), "Sealant joints")
    assert (
        "Shade hotter joints; shade does not cool them below the air: seal before the air passes 80 °F"
        " (mean high 81 °F in June, 85 °F in July, 83 °F in August)."
    ) in said


def test_warmth_lasts_until_a_coat_is_dry_and_a_day_at_least(tmp_path: Path) -> None:
    words = "for 24 h after it or until it is dry, whichever is longer; hours: Form D12d."
    assert words in told(tmp_path, "D12", {})
    assert "during each coat and for 24 h after it or until it is dry, whichever is longer." in told(
        tmp_path, "D05", {}
    )
