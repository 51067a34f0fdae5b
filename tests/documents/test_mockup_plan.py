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
            {"kind": "free_standing", "width": "8 ft", "height": "9 ft"},
            "Build the mockup free-standing, 8 ft wide and 9 ft high.",
        ),
        ({}, "Kind: [Mockup type]."),
        ({"kind": "in_place", "width": "8 ft", "height": "9 ft"}, "Size: 8 ft wide and 9 ft high."),
        ({"includes": ["day_stop"]}, "Include one end-of-day stop at a joint or corner."),
        ({"includes": ["recoat_patch"]}, "Recoat one panel after the last coat has dried, and leave it in view."),
        (
            {"includes": ["build_up_steps"]},
            "Leave half of the mockup as a stepped build-up, each layer and coat in view.",
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
            "Perform cut and pull tests on a separate test area, not on the face to be kept.",
        ),
        (
            {"destructive_area_apart": "no"},
            "No separate test area is planned: perform cut and pull tests after the evaluation, and mark the places.",
        ),
        ({"kept_to": "2027-10-29"}, "Protect and keep the accepted mockup until October 29, 2027."),
        ({}, "A change in crew, batch, gun, or access requires a new mockup."),
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
    assert f"{SAME}: frame scaffold, platform 14 in from the face, as at E1 South face." in plan
    assert f"{SHADE}: tent, as at E1 South face." in plan
    turned = plan_of(tmp_path / "b", merged(FACES, {"mockup": {**mockup, "facing": "N"}}))
    assert f"{SAME}: boom lift, as at E2." in turned
    assert f"{SHADE}: shade of the wall itself, as at E2." in turned
    unplaced = {"access": {"X1": {"elevation": "drop"}}, "mockup": mockup}
    assert f"{SAME}." in plan_of(tmp_path / "d", merged(FACES, unplaced))
    bare = merged(FACES, {"shade": {"X2": {"kind": "none"}}, "mockup": {**mockup, "facing": "N"}})
    assert f"{SHADE}: none, as at E2." in plan_of(tmp_path / "c", bare)


def test_the_wind_of_the_project_and_the_guns_are_named(tmp_path: Path) -> None:
    guns = {"G1": {"kind": "hvlp"}, "G2": {"kind": "hvlp"}}
    change = {"weather": {"max_spray_wind": "8 mph"}, "guns": guns, "mockup": {"same_equipment": "yes"}}
    plan = plan_of(tmp_path, change)
    assert "Use the spray equipment planned for the work: gun G1, G2 (Document D08, Equipment)." in plan
    limits = "Work within the limits of Document D08, Field conditions"
    assert f"{limits}; do not spray in wind or gusts above 8 mph." in plan
    assert f"{limits}." in plan_of(tmp_path / "b", {})


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
    rows = [line.split(" | ") for line in plan_of(tmp_path, change) if line.startswith("M") and " | " in line]
    assert [row[:3] for row in rows if row[0] != "Mark"] == [
        ["M1", "Aesthetic joint crossing", "V profile, 3/4 in wide by 1/2 in deep"],
        ["M2", "Outside corner", "Corner of E1 South face and E2"],
        ["M3", "Opening with returns", "E1 South face: A, B"],
        ["M3", "Sill of the opening", "E1 South face: A"],
        ["M4", "Termination above grade", "E1 South face: 9 in above soil; E2: 8 in above grade"],
        ["M5", "Each color", "C1, board 2"],
        ["M6", "End-of-day stop at a joint or corner", "Joints and corners at which spraying stops"],
    ]


def days_of(plan: list[str]) -> list[str]:
    """The earliest days of the steps in their order, each once."""
    rows = [line.split(" | ") for line in plan if line.count(" | ") == 4 and not line.startswith("No.")]
    return list(dict.fromkeys(row[1] for row in rows))


DRYING: dict[str, Any] = {
    "coating": {"smoothing": {"dry_hours": 24}, "primer": {"dry_hours": 16}, "gloss": {"dry_hours": 36}},
    "walls": {
        "W1": {"attachment": {"cure_hours": 30}, "base_coat": {"first_pass_dry_hours": 12, "cure_hours": 24}},
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
    off = {"schedule": {"days_off": ["sun", "2027-04-10"]}}
    assert "Day 8, Mon Apr 12" in days_of(plan_of(tmp_path / "b", merged(change, off)))
    worked = {"schedule": {"days_off": ["sun"]}}
    assert "Day 6, Sat Apr 10" in days_of(plan_of(tmp_path / "c", merged(change, worked)))


def test_what_only_the_mockup_shows_stands_in_its_order_of_work(tmp_path: Path) -> None:
    shown = {"mockup": {"includes": ["day_stop", "recoat_patch"]}}
    rows = [line.split(" | ") for line in plan_of(tmp_path, merged(DRYING, shown)) if line.count(" | ") == 4]
    told = {row[3]: row[1:3] for row in rows}
    names = list(told)
    after = names[names.index("Gloss finish") + 1 :]
    assert after == [
        "Gloss finish, beyond the end-of-day stop",
        "Cleaning of spray equipment",
        "Recoated panel",
        "Acceptance of the finish",
    ]
    assert told["Gloss finish"][0] == "Day 7"
    assert told["Gloss finish, beyond the end-of-day stop"] == ["Day 8", "the next working day"]
    assert told["Recoated panel"][0] == "Day 10"
    day, wait = told["Acceptance of the finish"]
    assert (day, wait.split("[")[0]) == ("Day 12", "the recoated panel has dried a minimum of 36 h")


def test_a_day_that_cannot_be_told_is_open_and_without_a_date_the_days_are_numbered(tmp_path: Path) -> None:
    # The first pass of base coat has no drying time here.
    assert days_of(plan_of(tmp_path, {"walls": {"W1": {"attachment": {"cure_hours": 24}}}})) == [
        "Day 1",
        "Day 2",
        "[Drying time]",
        "follows",
    ]


LONGER: dict[str, Any] = {
    "contract": {"variation_review_days": 21},
    "deviations": {"DV1": {"kind": "deviation", "reason": "higher gloss shows more wave"}},
}


def test_the_review_period_is_told_in_one_phrase(tmp_path: Path) -> None:
    contract = {"review_days": 14, "review_day_kind": "calendar"}
    assert "Review period | 14 calendar days" in plan_of(tmp_path / "a", {"contract": contract})
    assert "Review period | [Days for review], [Review day count]" in plan_of(tmp_path / "b", {})
    told = plan_of(tmp_path / "c", merged({"contract": contract}, LONGER))
    assert "Review period | 14 calendar days; 21 with deviations" in told
