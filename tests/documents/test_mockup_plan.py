"""The mockup plan says what the project says of its mockup: each of its sentences, in each of its wordings.

No example has all of them. The order of steps and their waits are held in tests/standards/work_rows.yaml.
"""

from pathlib import Path
from typing import Any

import pytest

from specgen import building
from tests.support import SMALL, merged, written

SAME = "Use the access planned for the work"
SHADE = "Spray under the shade planned for the work"
FACES: dict[str, Any] = {
    "elevations": {"E1": {"name": "South face", "wall": "W1", "facing": "S"}, "E2": {"wall": "W1", "facing": "N"}},
    "access": {
        "X1": {"elevation": "E1", "kind": "frame_scaffold", "face_gap": "14 in"},
        "X2": {"elevation": "E2", "kind": "boom_lift"},
    },
    "shade": {"X1": {"elevation": "E1", "kind": "tent"}, "X2": {"elevation": "E2", "kind": "natural"}},
}


def plan_of(folder: Path, change: Any) -> list[str]:
    """The lines of the mockup plan of the small project with a change, without their numbers."""
    folder.mkdir(exist_ok=True)
    if "coating" in change:
        written(folder, {"format": 1} | change["coating"], "coating.yaml")
        change = {key: value for key, value in change.items() if key != "coating"} | {"coating_system": "coating.yaml"}
    building.build(written(folder, merged(SMALL, change)), folder / "out", ("txt",), ("D09",), draft=True)
    (made,) = (folder / "out").glob("D09*.txt")
    lines = made.read_text("utf-8").splitlines()
    return [line.split(". ", 1)[1] if line.split(". ")[0].isdigit() else line for line in lines]


@pytest.mark.parametrize(
    ("mockup", "sentence"),
    [
        ({"approver": "inspector"}, "The inspector evaluates the mockup on Form D10."),
        ({"approver": "architect"}, "The architect evaluates the mockup on Form D10."),
        ({}, "[Mockup approver] evaluates the mockup on Form D10."),
        ({"location": "north gate", "facing": "SW"}, "Location: north gate; facing southwest."),
        ({"location": "north gate"}, "Location: north gate; facing [Mockup facing]."),
        ({"kind": "in_place"}, "Build the mockup in place. It remains part of the work once accepted."),
        (
            {"kind": "in_place", "includes": ["opening"]},
            "Build the mockup in place. It remains part of the work once accepted. Show on a separate panel, with the "
            "substrate, board, and coats of the work, what the work does not have at this place: an opening of another "
            "size, a joint of another line.",
        ),
        ({}, "Equipment: [Mockup to use production equipment, yes or no]."),
        ({}, "Access: [Mockup to use production access, yes or no]."),
        (
            {"kind": "free_standing", "width": "8 ft", "height": "9 ft"},
            "Build the mockup free-standing, 8 ft wide and 9 ft high.",
        ),
        ({}, "Kind: [Mockup type]."),
        ({"kind": "in_place", "width": "8 ft", "height": "9 ft"}, "Size: 8 ft wide and 9 ft high."),
        ({"includes": ["day_stop"]}, "Include one end-of-day stop at a joint or corner."),
        ({"includes": ["recoat_patch"]}, "Recoat one panel after the last coat has dried, and leave it in view."),
        (
            {"includes": ["build_up_steps"]},
            "Leave half of the width as a stepped build-up, each layer and coat in view.",
        ),
        ({}, "[Details shown by the mockup]"),
        ({}, "Build the mockup with [Crews of the mockup], the production crews."),
        ({"same_equipment": "yes"}, "Use the spray equipment planned for the work (Document D08, Equipment)."),
        (
            {"same_equipment": "no"},
            "The spray equipment differs from that planned for the work: "
            "repeat the mockup with the planned equipment before spraying the work.",
        ),
        ({"same_access": "yes"}, f"{SAME}."),
        (
            {"same_access": "no"},
            "The access differs from that planned for the work: "
            "repeat the mockup from the planned access before spraying the work.",
        ),
        ({"same_shade": "yes"}, f"{SHADE}."),
        (
            {"same_shade": "no"},
            "The shade differs from that planned for the work: "
            "repeat the mockup under the planned shade before spraying the work.",
        ),
        (
            {"destructive_area_apart": "yes"},
            "Perform cut and pull tests on a separate test area, not on the face to be kept; mark it before spraying.",
        ),
        (
            {"destructive_area_apart": "no"},
            "No separate test area is planned: perform cut and pull tests after the evaluation, and mark the places.",
        ),
        ({"kept_to": "2027-10-29"}, "Protect and keep the accepted mockup until October 29, 2027."),
        (
            {},
            "A change in crew, gun, or access, or a batch outside the approved range samples, requires a new mockup; "
            "a spare gun used on the accepted mockup is no change.",
        ),
        (
            {"kind": "free_standing"},
            "Set the mockup on a frame with footing or ballast, braced against wind per local codes and the design "
            "of a licensed design professional. Submit that design, with the wind on cloth and tent, before the frame "
            "is built. Complete frame and substrate before Day 1.",
        ),
        (
            {"kind": "free_standing", "frame": "steel studs on ballast", "planned_on": "2027-04-12"},
            "Set the mockup on steel studs on ballast, braced against wind per local codes and the design "
            # April 12, 2027 is a Monday.
            "of a licensed design professional. Submit that design, with the wind on cloth and tent, before the frame "
            "is built. Complete frame and substrate by April 9, 2027, the last working day before Day 1.",
        ),
    ],
)
def test_the_plan_says_what_the_project_says_of_its_mockup(
    mockup: dict[str, Any], sentence: str, tmp_path: Path
) -> None:
    assert sentence in plan_of(tmp_path, {"mockup": mockup})


@pytest.mark.parametrize("given", ["same_equipment", "same_access", "same_shade", "destructive_area_apart", "includes"])
def test_what_is_not_said_has_no_sentence(given: str, tmp_path: Path) -> None:
    said = {
        "same_equipment": "spray equipment planned for the work",
        "same_access": "access planned for the work",
        "same_shade": "shade planned for the work",
        "destructive_area_apart": "cut and pull tests",
        "includes": "Show each detail",
    }
    assert not [line for line in plan_of(tmp_path, {}) if said[given] in line]


@pytest.mark.parametrize(
    ("crews", "named"),
    [
        (["red"], "Build the mockup with production crew red."),
        (["red", "blue"], "Build the mockup with production crews red and blue."),
        (["red", "blue", "tan"], "Build the mockup with production crews red, blue, and tan."),
    ],
)
def test_the_crews_are_named(crews: list[str], named: str, tmp_path: Path) -> None:
    known = {mark: {"steps": ["mesh"], "size": 2} for mark in ("red", "blue", "tan")}
    assert named in plan_of(tmp_path, {"crews": known, "mockup": {"crew": crews}})


def test_the_access_and_the_shade_are_those_of_the_face_the_mockup_looks_as(tmp_path: Path) -> None:
    mockup = {"facing": "S", "same_access": "yes", "same_shade": "yes"}
    plan = plan_of(tmp_path / "a", merged(FACES, {"mockup": mockup}))
    assert f"{SAME}: frame scaffold, platform 14 in from the finished face, as at E1 South face." in plan
    assert f"{SHADE}: tent, as at E1 South face." in plan
    turned = plan_of(tmp_path / "b", merged(FACES, {"mockup": {**mockup, "facing": "N"}}))
    assert f"{SAME}: boom lift, as at E2." in turned
    assert f"{SHADE}: shade of the wall itself, as at E2." in turned
    unplaced = {"access": {"X1": {"elevation": "drop"}}, "mockup": mockup}
    assert f"{SAME}." in plan_of(tmp_path / "d", merged(FACES, unplaced))
    bare = merged(FACES, {"shade": {"X2": {"kind": "none"}}, "mockup": {**mockup, "facing": "N"}})
    assert f"{SHADE}: none, as at E2." in plan_of(tmp_path / "c", bare)


def test_the_wind_of_the_project_and_the_guns_are_named(tmp_path: Path) -> None:
    guns: dict[str, Any] = {"G1": {"kind": "hvlp"}, "G2": {"kind": "hvlp"}}
    change = {"weather": {"max_spray_wind": "8 mph"}, "guns": guns, "mockup": {"same_equipment": "yes"}}
    plan = plan_of(tmp_path, change)
    assert "Use the spray equipment planned for the work: gun G1, G2 (Document D08, Equipment)." in plan
    limits = "Work within the limits of Document D08, Field conditions"
    assert f"{limits}; do not spray in wind or gusts above 8 mph." in plan
    assert f"{limits}." in plan_of(tmp_path / "b", {})
    spared = plan_of(tmp_path / "c", merged(change, {"guns": {"G1": {"spares": 1}}}))
    assert [line for line in spared if line.endswith("(Document D08, Equipment). Spray one panel with the spare gun.")]


def test_each_detail_has_its_mark_and_what_it_stands_for(tmp_path: Path) -> None:
    change = {
        "aesthetic_joint": {"profile": "v", "width": "3/4 in", "depth": "1/2 in"},
        "elevations": {
            "E1": {
                "name": "South face",
                "wall": "W1",
                "left_end": "outside_corner",
                "left_meets": "E2",
                "grade_clearance": "9 in",
                "grade_is_soil": "yes",
                "openings": {"A": {"kind": "window", "sill_pan": "yes"}, "B": {"kind": "louver"}},
            },
            "E2": {"wall": "W1", "right_end": "outside_corner", "right_meets": "E1", "grade_clearance": "8 in"},
        },
        "colors": {"C1": {"reference": "board 2"}},
        "mockup": {"includes": ["joint_crossing", "outside_corner", "opening", "grade_end", "each_color", "day_stop"]},
    }
    rows = [line.split(" | ") for line in plan_of(tmp_path, change) if line[:1].isdigit() and line.count(" | ") == 3]
    assert [row[:3] for row in rows] == [
        ["1", "Aesthetic joint crossing", "V profile, 3/4 in wide by 1/2 in deep"],
        [
            "2",
            "Outside corner",
            "Corner of E1 South face and E2; return on the mockup minimum 2 ft[p] wide, at the left edge",
        ],
        ["3a", "Opening with returns", "E1 South face: A, B"],
        ["3b", "Sill of the opening", "E1 South face: A"],
        ["4", "Termination above grade", "E1 South face: 9 in above soil; E2: 8 in above grade"],
        ["5", "Color C1", "C1, board 2"],
        ["6", "End-of-day stop at a joint or corner", "Joints and corners at which spraying stops"],
        [
            "7",
            "Test area",
            "Beside the face to be kept, on the same substrate, with every layer and coat; room for 3 tape tests, 3 "
            "pull-offs, coupons",
        ],
    ]


def test_the_steps_show_the_thickness_of_what_lies_below_the_coating(tmp_path: Path) -> None:
    change: dict[str, Any] = {"mockup": {"includes": ["build_up_steps"]}}
    seen = "1 | Stepped build-up | All layers and coats, in order | Each layer and coat in view; thickness of"
    assert f"{seen} base coat, smoothing" in plan_of(tmp_path / "a", change)
    fluid = merged(change, {"walls": {"W1": {"wrb": {"kind": "fluid_applied"}}}})
    plan = plan_of(tmp_path / "b", fluid)
    # The barrier is cut on the test area, as the steps are part of the face to be kept.
    assert f"{seen} base coat, smoothing" in plan
    assert [line for line in plan if line.startswith("2 | Test area") and line.endswith("pull-off, WRB thickness")]


def days_of(plan: list[str]) -> list[str]:
    """The earliest days of the steps in their order, each once."""
    rows = [line.split(" | ") for line in plan if line.count(" | ") == 4 and not line.startswith("No.")]
    return list(dict.fromkeys(row[1] for row in rows))


DRYING: dict[str, Any] = {
    "coating": {"smoothing": {"dry_hours": 24}, "primer": {"dry_hours": 16}, "gloss": {"dry_hours": 36}},
    "walls": {
        "W1": {
            "substrate": {"kind": "cement_board"},
            "attachment": {"cure_hours": 30},
            "base_coat": {"first_pass_dry_hours": 12, "cure_hours": 24},
        },
    },
}


def test_the_days_of_the_steps_count_what_dries_before_them_and_days_off(tmp_path: Path) -> None:
    # April 5, 2027 is a Monday. 30 h of adhesive: 2 days; 12 h and 24 h of base coat: 1 day each; 24 h of
    # smoothing: from Friday over the weekend; 16 h of primer: 1 day; 36 h of gloss: 2 days.
    change = merged(DRYING, {"mockup": {"planned_on": "2027-04-05"}})
    assert days_of(plan_of(tmp_path / "a", change)) == [
        "Day 1, Mon Apr 5",
        "Day 3, Wed Apr 7",
        "Day 4, Thu Apr 8",
        "Day 5, Fri Apr 9",
        "Day 8, Mon Apr 12",
        "Day 9, Tue Apr 13",
        "Day 11, Thu Apr 15",
    ]
    coated = merged(change, {"walls": {"W1": {"wrb": {"kind": "fluid_applied"}}}})
    assert days_of(plan_of(tmp_path / "d", coated))[1:3] == ["Day 2, Tue Apr 6", "Day 4, Thu Apr 8"]
    slow = plan_of(tmp_path / "e", merged(coated, {"walls": {"W1": {"wrb": {"dry_hours": 36}}}}))
    rows = [line.split(" | ") for line in slow if line.count(" | ") == 4]
    told = {row[3]: [row[1], row[2], row[4]] for row in rows}
    assert told["Water-resistive barrier"] == ["Day 1, Mon Apr 5", "–", "–"]
    assert told["Release of the WRB"] == ["Day 3, Wed Apr 7", "the WRB has dried a minimum of 36 h", "Hold point"]
    assert told["Flashings and terminations"][0] == "Day 3, Wed Apr 7"
    # Two coats of 12 h: the first is dry on Monday night, the second is applied on Tuesday and dry that night.
    twice = plan_of(tmp_path / "f", merged(coated, {"walls": {"W1": {"wrb": {"dry_hours": 12, "coats": 2}}}}))
    told = {line.split(" | ")[3]: line.split(" | ")[1:3] for line in twice if line.count(" | ") == 4}
    assert told["Water-resistive barrier, coat 1 of 2"] == ["Day 1, Mon Apr 5", "–"]
    dried = "of the WRB has dried a minimum of 12 h"
    assert told["Water-resistive barrier, coat 2 of 2"] == ["Day 2, Tue Apr 6", f"coat 1 {dried}"]
    assert told["Release of the WRB"] == ["Day 3, Wed Apr 7", f"coat 2 {dried}"]
    off = {"schedule": {"days_off": ["sun", "2027-04-10"]}}
    assert "Day 8, Mon Apr 12" in days_of(plan_of(tmp_path / "b", merged(change, off)))
    worked = {"schedule": {"days_off": ["sun"]}}
    assert "Day 6, Sat Apr 10" in days_of(plan_of(tmp_path / "c", merged(change, worked)))


def test_what_only_the_mockup_shows_stands_in_its_order_of_work(tmp_path: Path) -> None:
    shown = {"mockup": {"includes": ["day_stop", "recoat_patch"]}}
    rows = [line.split(" | ") for line in plan_of(tmp_path, merged(DRYING, shown)) if line.count(" | ") == 4]
    told = {row[3]: row[1:3] for row in rows}
    names = list(told)
    after = names[names.index("Gloss finish, cleaning after each coat") + 1 :]
    assert after == [
        "Gloss beyond the end-of-day stop, then cleaning",
        "Recoated panel, then cleaning",
        # What the acceptance rests on is read first, on the dry film: common practice, no source.
        "Tests of film, adhesion, gloss, and color",
        "Acceptance of the mockup",
    ]
    assert told["Gloss finish, cleaning after each coat"][0] == "Day 7"
    assert told["Gloss beyond the end-of-day stop, then cleaning"] == ["Day 8", "the next working day"]
    assert told["Recoated panel, then cleaning"][0] == "Day 10"
    assert told["Acceptance of the mockup"] == ["Day 12", "–"]
    day, wait = told["Tests of film, adhesion, gloss, and color"]
    assert (day, wait.split("[")[0]) == ("Day 12", "the recoated panel has dried a minimum of 36 h")


def test_the_water_tests_of_an_opening_stand_before_its_boards(tmp_path: Path) -> None:
    # A pan that is covered cannot be poured on: common practice, no source.
    # The test is the one of the form: without a flashing over the opening there is none of it.
    def tests_of(folder: Path, window: dict[str, Any]) -> tuple[list[str], dict[str, str]]:
        openings = {"A": {"kind": "window", **window}}
        shown = {"mockup": {"includes": ["opening"]}, "elevations": {"E1": {"wall": "W1", "openings": openings}}}
        rows = [line.split(" | ") for line in plan_of(folder, merged(DRYING, shown)) if line.count(" | ") == 4]
        return [row[3] for row in rows], {row[3]: row[2] for row in rows}

    names, _ = tests_of(tmp_path / "a", {"sill_pan": "yes", "head_flashing": "yes"})
    water = names.index("Water tests of sill pan and head flashing, Form D10")
    assert names.index("Flashings and terminations") < water < names.index("Insulation boards")
    assert not [name for name in tests_of(tmp_path / "b", {"sill_pan": "no"})[0] if name.startswith("Water test")]
    assert tests_of(tmp_path / "c", {})[1]["Water test of sill pan, Form D10"] == "the sill pan is decided on, see D19"


def test_adhesive_is_pulled_off_concrete_before_boards_are_set_on_it(tmp_path: Path) -> None:
    # 30 h of cure are two days before the release, and two more behind the boards: May 24, 2027 is a Monday.
    concrete = {"walls": {"W1": {"substrate": {"kind": "concrete"}}}, "mockup": {"planned_on": "2027-05-24"}}
    change = merged(DRYING, concrete)
    rows = [line.split(" | ") for line in plan_of(tmp_path, change) if line.count(" | ") == 4]
    told = {row[3]: row[1:3] for row in rows}
    assert told["Adhesive on the concrete, for its pull-off"] == ["Day 1, Mon May 24", "–"]
    cured = "the adhesive for the pull-off has cured a minimum of 30 h"
    assert told["Substrate, with pull-off"] == ["Day 3, Wed May 26", cured]
    assert [told[name][0] for name in ("Insulation boards", "Rasping and leveling")] == [
        "Day 3, Wed May 26",
        "Day 5, Fri May 28",
    ]


def test_test_beads_cure_on_the_frame_before_the_joint_is_sealed(tmp_path: Path) -> None:
    # The gloss is dry on day 9, and the beads of the first day when they have cured for 14: common practice, no source.
    joints = {"J1": {"kind": "opening_perimeter", "runs": "around_opening"}}
    change = merged(DRYING, {"mockup": {"includes": ["opening"]}, "joints": joints})
    rows = [line.split(" | ") for line in plan_of(tmp_path / "a", change) if line.count(" | ") == 4]
    told = {row[3]: row[1] for row in rows}
    assert told["Sealant test beads on frame and flashing, or on offcuts of them"] == "Day 1"
    assert told["Sealant joints"] == "Day 15"
    between = merged(DRYING, {"joints": {"J1": {"kind": "eifs_to_eifs"}}})
    assert not [line for line in plan_of(tmp_path / "b", between) if "test beads" in line]


def test_access_is_off_the_face_when_the_mockup_is_viewed(tmp_path: Path) -> None:
    # Nobody sees a face from 10 ft through a scaffold that stands before it: common practice, no source.
    cleared = "Access and shade cleared from the face, for viewing and color readings"
    change = merged(DRYING, {"access": {"X1": {"kind": "system_scaffold"}}})
    names = [line.split(" | ")[3] for line in plan_of(tmp_path / "a", change) if line.count(" | ") == 4]
    assert names[-2:] == [cleared, "Acceptance of the mockup"]
    apart = merged(change, {"mockup": {"same_access": "no"}})
    assert not [line for line in plan_of(tmp_path / "b", apart) if cleared in line]


def test_a_panel_recoated_past_its_window_is_prepared_first(tmp_path: Path) -> None:
    # By the days above the gloss is sprayed on Tuesday, April 13, beyond the stop on Wednesday, and dry on Friday, 36 h
    # later: 3 days are 72 h, more than 48.
    shown = {"mockup": {"includes": ["day_stop", "recoat_patch"], "planned_on": "2027-04-05"}}
    window = {"coating": {"gloss": {"most_recoat_hours": 48}}}
    plan = plan_of(tmp_path / "a", merged(merged(DRYING, shown), window))
    told = {line.split(" | ")[3]: line.split(" | ")[1:3] for line in plan if line.count(" | ") == 4}
    by = "the manufacturer's written instructions"
    day, wait = told[f"Preparation of the panel to be recoated, per {by}"]
    assert day == "Day 12, Fri Apr 16"
    assert "dried a minimum of 36 h" in wait and "; 3 days after its gloss, past the maximum of 48 h" in wait
    assert told["Recoated panel, then cleaning"] == [day, "the panel is prepared, dry, and free of dust"]
    wide = {"coating": {"gloss": {"most_recoat_hours": 72}}}
    plan = plan_of(tmp_path / "b", merged(merged(DRYING, shown), wide))
    assert not [line for line in plan if "Preparation of the panel" in line]


def test_a_day_that_cannot_be_told_is_open_and_without_a_date_the_days_are_numbered(tmp_path: Path) -> None:
    # The first pass of base coat has no drying time here.
    cures = {"substrate": {"kind": "cement_board"}, "attachment": {"cure_hours": 24}}
    assert days_of(plan_of(tmp_path, {"walls": {"W1": cures}})) == [
        "Day 1",
        "Day 2",
        "[Drying time]",
        "follows",
    ]


DATED: dict[str, Any] = {
    "package": {"purpose": "design_draft", "date": "2027-03-22"},
    "parties": {"general_contractor": {"name": "Hale Builders"}},
    "contract": {"review_days": 10, "review_day_kind": "working"},
    "colors": {"C1": {"kind": "standard"}},
    "mockup": {"planned_on": "2027-05-24", "duration_days": 42},
    "schedule": {"submit_on": "2027-05-03", "work_start": "2027-07-26"},
}


def test_a_draft_tells_the_decision_and_both_reviews_before_its_mockup(tmp_path: Path) -> None:
    # Weekends off: 10 working days end on Friday, April 30, begin behind April 16; 3 of the contractor behind April 13,
    # 3 to check and send behind April 8. From Monday, May 3, 3 and 10 working days end on Thursday, May 20.
    plan = plan_of(tmp_path, DATED)
    first = plan.index("Replies needed for the decision on the walls, latest | April 8, 2027")
    assert [line.split("[")[0] for line in plan[first + 1 : first + 6]] == [
        "Decision on the walls, latest | April 30, 2027",
        "Submittal for the mockup | May 3, 2027",
        "Contractor's own review | 3",
        "Review period | 10 working days",
        "Review complete | May 20, 2027",
    ]
    assert "Start of mockup | May 24, 2027" in plan


def test_a_date_that_the_steps_leave_no_time_for_is_not_told_as_held(tmp_path: Path) -> None:
    # Drafted on the day of its submittal, Monday, May 3: a reply on the 4th, 3 working days to check and send, 3 of the
    # contractor, and 10 of review end on Wednesday, May 26, the decision; 13 of review from Thursday end on June 15.
    plan = plan_of(tmp_path, merged(DATED, {"package": {"date": "2027-05-03"}}))
    assert "Decision on the walls, earliest | May 26, 2027" in plan
    held = "as planned, cannot be held"
    assert f"Submittal for the mockup | May 27, 2027, earliest; May 3, 2027, {held}" in plan
    assert f"Start of mockup | June 15, 2027, earliest; May 24, 2027, {held}" in plan
    assert f"Start of work on the wall | July 27, 2027, earliest; July 26, 2027, {held}" in plan


LONGER: dict[str, Any] = {
    "contract": {"variation_review_days": 21},
    "deviations": {"DV1": {"kind": "deviation", "reason": "higher gloss shows more wave"}},
}


def test_the_review_period_is_told_in_one_phrase(tmp_path: Path) -> None:
    contract = {"review_days": 14, "review_day_kind": "calendar"}
    assert "Review period | 14 calendar days" in plan_of(tmp_path / "a", {"contract": contract})
    assert "Review period | [Days for review], [Review day count]" in plan_of(tmp_path / "b", {})
    told = plan_of(tmp_path / "c", merged({"contract": contract}, LONGER))
    assert "Review period | 14 calendar days; 21 days with deviations" in told


SEALED: dict[str, Any] = {
    "sealants": {"S1": {"pull_cure_days": 7}, "S2": {"pull_cure_days": 9}},
    "joints": {"J1": {"kind": "floor_line", "sealant": "S1"}},
}


def test_the_mockup_is_accepted_when_its_slowest_sealant_has_cured(tmp_path: Path) -> None:
    # The gloss is dry on day 9: then nine days of cure, or the usual fourteen (common practice, no source).
    rows = [line.split(" | ") for line in plan_of(tmp_path / "a", merged(DRYING, SEALED)) if line.count(" | ") == 4]
    assert [row[1:] for row in rows[-3:]] == [
        ["Day 9", "the last gloss coat has dried a minimum of 36 h[a]", "Sealant joints", "–"],
        ["Day 18", "the sealant has cured a minimum of 9 days", "Sealant hand pull", "Hold point (sealant adhesion)"],
        ["Day 18", "–", "Acceptance of the mockup", "Hold Point 2, Form D10"],
    ]
    usual = merged(DRYING, {"joints": SEALED["joints"], "sealants": {"S1": {"chemistry": "silicone"}}})
    last = [line for line in plan_of(tmp_path / "b", usual) if "Sealant hand pull" in line][0]
    assert "Day 23 | the sealant has cured a minimum of 14 days" in last


def test_access_comes_first_and_the_last_day_is_counted_with_the_first(tmp_path: Path) -> None:
    change = merged(DRYING, {"mockup": {"planned_on": "2027-04-05", "duration_days": 10}})
    plan = plan_of(tmp_path / "a", change)
    first = next(line for line in plan if line.startswith("1 | Day 1"))
    assert "Access and site safety" in first
    assert "Last day of mockup | April 14, 2027" in plan
    least = "10 calendar days; the order of work takes a minimum of 11 calendar days"
    assert f"Duration of mockup, evaluation included | {least}" in plan
    longer = plan_of(tmp_path / "b", merged(change, {"mockup": {"duration_days": 11}}))
    assert "Duration of mockup, evaluation included | 11 calendar days" in longer


def test_a_sample_color_ordered_before_the_review_is_over_is_at_the_risk_of_who_orders_it(tmp_path: Path) -> None:
    change: dict[str, Any] = {
        "contract": {"review_days": 14, "review_day_kind": "calendar"},
        "colors": {"C1": {"kind": "custom", "lead_time_days": 21}},
        "mockup": {"duration_days": 14},
        "schedule": {"submit_on": "2027-03-01", "color_sample_order_on": "2027-03-08"},
    }
    order = "Order of sample color (C1) | "
    early = f"{order}March 8, 2027, before review is complete, at the applicator's risk"
    assert early in plan_of(tmp_path / "a", change)
    later = merged(change, {"schedule": {"color_sample_order_on": "2027-03-15"}})
    assert f"{order}March 15, 2027" in plan_of(tmp_path / "b", later)


TWO_WALLS: dict[str, Any] = {
    "walls": {
        "W1": {"substrate": {"kind": "glass_mat_gypsum"}, "wrb": {"kind": "fluid_applied"}},
        "W2": {"substrate": {"kind": "concrete_masonry"}, "wrb": {"kind": "none"}, "drainage": {"kind": "none"}},
    },
    "elevations": {
        "E1": {"wall": "W1", "grade_clearance": "9 in", "grade_is_soil": "yes"},
        "E2": {"wall": "W2", "grade_clearance": "8 in", "grade_is_soil": "no"},
    },
    "mockup": {"includes": ["grade_end"]},
}


def test_the_mockup_copies_the_walls_it_names(tmp_path: Path) -> None:
    unnamed = plan_of(tmp_path / "a", TWO_WALLS)
    assert "Build-up: [Walls whose build-up the mockup shows]." in unnamed
    block = plan_of(tmp_path / "b", merged(TWO_WALLS, {"mockup": {"walls": ["W2"]}}))
    (told,) = [line for line in block if line.startswith("Build-up of wall")]
    assert told.startswith("Build-up of wall W2: concrete masonry, ")
    (row,) = [line for line in block if "Termination above grade" in line]
    assert row == "1 | Termination above grade | E2: 8 in above paving | Back-wrap, clearance"
    assert not [line for line in block if "Water-resistive barrier" in line and " | " in line]


def test_what_does_not_fit_the_finished_part_is_told_as_reduced(tmp_path: Path) -> None:
    shown = {"includes": ["full_panel", "opening", "recoat_patch", "build_up_steps"], "width": "8 ft", "height": "8 ft"}
    rows = [line for line in plan_of(tmp_path / "a", {"mockup": shown}) if " | " in line]
    (panel,) = [row for row in rows if row.startswith("1 | Full panel")]
    assert "on the mockup 4 ft by 5 ft" in panel  # half of 8 ft is stepped; panels go up to 5 ft by 5 ft
    assert [row.split(" | ")[1] for row in rows if "reduced in size on the mockup" in row] == [
        "Opening with returns",
        "Recoated panel",
    ]
    wide = plan_of(tmp_path / "b", {"mockup": {**shown, "width": "20 ft"}})
    assert not [line for line in wide if "on the mockup" in line and " | " in line]


def test_the_plan_tells_what_of_the_joints_of_the_work_the_mockup_keeps(tmp_path: Path) -> None:
    """A window on the lines, heavy mesh that ends on one, and a corner at the right of the face the mockup looks as."""
    face = {
        **{"name": "South face", "wall": "W1", "facing": "S", "width": "9 ft", "height": "9 ft", "floor_lines": {}},
        **{"right_end": "outside_corner", "base_above_grade": "6 in"},
        "openings": {"A": {"kind": "window", "x": "4 ft", "y": "3 ft", "width": "2 ft", "height": "3 ft"}},
        "layout": {"mode": "given", "vertical_lines": ["4 ft"], "horizontal_lines": ["3 ft"]},
        "impact_zones": [{"from": "0 ft", "to": "3 ft 6 in", "class": "high"}],
    }
    mockup = {"facing": "S", "includes": ["opening", "outside_corner", "each_mesh_zone"]}
    rows = plan_of(tmp_path / "a", {"elevations": {"E1": face}, "joints": {}, "mockup": mockup})
    assert [row.split(" | ")[2] for row in rows if row.startswith("1 | Opening")] == [
        "E1 South face: A; aesthetic joints end on its corners"
    ]
    assert any("minimum 2 ft[p] wide, at the right edge" in row for row in rows)
    assert any(row.startswith("3 | Each mesh zone") and "; edge at an aesthetic joint" in row for row in rows)


def test_the_spare_gun_sprays_the_panel_on_which_color_is_evaluated(tmp_path: Path) -> None:
    gun = {"guns": {"G1": {"spares": 1}}}
    mockup = {"same_equipment": "yes", "includes": ["full_panel", "opening", "each_color"]}
    told = plan_of(tmp_path / "a", gun | {"mockup": mockup})
    said = "Spray the panel at place 3 with the spare gun; read its gloss and film as those of the full panel."
    assert [line for line in told if line.endswith(said)]


def test_a_meeting_with_a_date_stands_among_the_dates_and_what_is_left_behind_the_mockup(tmp_path: Path) -> None:
    schedule = {"meeting_on": "2027-04-01", "work_start": "2027-04-20"}
    mockup = {"planned_on": "2027-04-05", "duration_days": 11}
    plan = plan_of(tmp_path / "a", merged(DRYING, {"mockup": mockup, "schedule": schedule}))
    assert "Preinstallation meeting | April 1, 2027" in plan
    assert "1 | Day 1, Mon Apr 5 | – | Access and site safety | Witness point" in plan
    left = "Left for weather, holds, and a second viewing"
    assert f"{left} | 4 calendar days" in plan  # April 5 with its eleven days ends on the 15th; 16 to 19 are left
    full = merged(DRYING, {"mockup": mockup, "schedule": {"work_start": "2027-04-16"}})
    assert not [line for line in plan_of(tmp_path / "b", full) if line.startswith(left)]


def test_a_panel_recoated_behind_the_window_of_its_gloss_is_prepared(tmp_path: Path) -> None:
    shown = merged(DRYING, {"mockup": {"includes": ["recoat_patch"]}})
    plan = plan_of(tmp_path / "a", merged(shown, {"coating": {"gloss": {"most_recoat_hours": 72}}}))
    assert [line for line in plan if "Later than 72 h after its gloss, prepare it per the manufacturer" in line]
    (row,) = [line for line in plan if "Recoated panel, then" in line]
    assert "; after 72 h, it is prepared per the manufacturer's written instructions[a] | Recoated panel" in row
    assert not [line for line in plan_of(tmp_path / "b", shown) if "prepare" in line and "recoat" in line.lower()]


def test_what_the_mockup_does_not_show_is_named(tmp_path: Path) -> None:
    change: dict[str, Any] = merged(
        TWO_WALLS,
        {
            "elevations": {"E2": {"openings": {"DR1": {"kind": "door"}, "LV1": {"kind": "louver"}}}},
            "joints": {"J1": {"elevation": "E1"}, "J5": {"elevation": "E2"}},
            "details": {"PA1": {"kind": "parapet", "elevation": "E1"}},
            "mockup": {"walls": ["W1"]},
        },
    )
    (row,) = [line for line in plan_of(tmp_path / "a", change) if "Not on the mockup" in line]
    assert row == (
        "– | Not on the mockup | Wall W2; joint J5; openings DR1, LV1; detail PA1 | "
        "The first of each in place, before the rest"
    )
    assert not [line for line in plan_of(tmp_path / "b", {"mockup": {"includes": ["full_panel"]}}) if "Not on" in line]


def test_a_mockup_apart_from_the_work_shows_the_joint_of_its_opening_alone(tmp_path: Path) -> None:
    around = {"elevation": "E1", "kind": "opening_perimeter", "runs": "around_opening", "width": "3/4 in"}
    floor = {"elevation": "E1", "kind": "floor_line", "runs": "horizontal", "width": "1 in"}
    change: dict[str, Any] = {
        "elevations": {"E1": {"wall": "W1"}},
        "joints": {"J1": around | {"depth": "3/8 in"}, "J2": floor | {"depth": "1/2 in"}},
        "mockup": {"kind": "free_standing", "includes": ["opening", "sealant_joint"]},
    }
    lines = plan_of(tmp_path, change)
    assert [line for line in lines if line.startswith("2 | Sealant joint | J1, 3/4 in by 3/8 in | ")]
    assert [line for line in lines if line.startswith("– | Not on the mockup | ") and "oint J2" in line]
