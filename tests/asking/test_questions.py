"""Who is asked what up to which stage, why, in which form, and by when."""

import datetime
from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.asking.questions import Question, find_role, gather_sheets
from specgen.commands._stages import check_for
from specgen.model.problem import Refused
from tests.asking.asked import lacking, question_about, sheet_of
from tests.documents.example import changed_clean, changed_small, context_of_case
from tests.support import EXAMPLES, SMALL, merged, written

SUBMISSION = datetime.date(2027, 3, 1)  # planned in the example


def test_each_party_is_asked_what_it_owes_and_what_decides_comes_first(tmp_path: Path) -> None:
    asked = gather_sheets(lacking(tmp_path), "work")
    assert {sheet.role: [one.field for one in sheet.questions] for sheet in asked.sheets} == {
        "architect": [
            "code.local_fasteners_required",
            "elevations.E1.critical_light",
            "elevations.E2.critical_light",
            "aesthetic_joint.tolerance",
            "mockup.width",
        ],
        "eifs_source": ["walls.W1.insulation.flame_spread"],
        "sealant_source": ["joints.J1.install_low"],
        "applicator": ["mockup.destructive_area_apart"],
    }
    assert asked.later == 0


def test_a_sheet_says_who_asks_whom_and_by_when(tmp_path: Path) -> None:
    change: dict[str, Any] = {"code": {"local_fasteners_required": "tbd"}}
    change["parties"] = {"applicator": {"contact": "Ida Marsh", "phone": "555 0147", "email": "ida@lark.example"}}
    sheet = sheet_of(gather_sheets(changed_clean(tmp_path, change), "work"), "architect")
    assert (sheet.title, sheet.name) == ("Architect", "Lintel and Quoin Architects")
    assert sheet.return_to == (
        "Lark and Mallow Finishes, Ida Marsh, 555 0147, ida@lark.example; through Almsgrove Building"
    )
    assert sheet.return_by == SUBMISSION


def test_a_question_has_all_that_an_answer_needs(tmp_path: Path) -> None:
    context = lacking(tmp_path)
    assert question_about(context, "joints.J1.install_low") == Question(
        field="joints.J1.install_low",
        question="Joint J1 (opening perimeter): What is the minimum sealing temperature?",
        why="The joint closes further when sealed cold.",
        form="°F",
        example="50 F",
        choices=(),
        holds_up="This submittal; SLT-02, SLT-08; D06 to D08, D11",
        due=SUBMISSION,
    )
    tolerance = question_about(context, "aesthetic_joint.tolerance")
    assert tolerance.question.endswith(" Proposed: 1/16 in; write it to confirm, or correct it.")
    assert question_about(context, "code.local_fasteners_required").choices == ("yes", "no")


def test_a_field_whose_condition_does_not_hold_is_not_asked(tmp_path: Path) -> None:
    change = {"joints": {"J1": {"rod_kind": "tbd", "rod_product": "tbd"}}}
    fields = [
        one.field for one in sheet_of(gather_sheets(changed_clean(tmp_path, change), "work"), "applicator").questions
    ]
    assert "joints.J1.rod_kind" in fields
    change["joints"]["J1"]["rod_kind"] = "none"
    every = (
        one.field for sheet in gather_sheets(changed_clean(tmp_path, change), "work").sheets for one in sheet.questions
    )
    assert "joints.J1.rod_product" not in list(every)


def test_a_stage_asks_what_it_owes_and_counts_the_rest(tmp_path: Path) -> None:
    lacking(tmp_path, {"schedule": {"shift_start": "tbd"}, "contract": {"number": "tbd"}})
    for stage, number in (("verdict", 0), ("mockup", 1), ("work", 2), ("", 2)):
        case, judged = check_for(tmp_path / "project.yaml", stage)
        asked = gather_sheets(context_of_case(case), judged)
        fields = [one.field for sheet in asked.sheets for one in sheet.questions]
        assert len(fields) == number, (stage, fields)


def test_what_a_later_stage_owes_is_counted_where_a_rule_waits_for_it(tmp_path: Path) -> None:
    asked = gather_sheets(changed_small(tmp_path, {}), "verdict")
    fields = [one.field for sheet in asked.sheets for one in sheet.questions]
    assert "walls.W1.insulation.kind" in fields and "tank.relief_valve" not in fields
    assert asked.later > 20


def test_an_absent_list_is_asked_for_as_a_whole_with_the_table_to_enter_it_in(tmp_path: Path) -> None:
    context = changed_clean(tmp_path, {"elevations": {"E1": {"openings": "drop"}}})
    architect = sheet_of(gather_sheets(context, "work"), "architect")
    (openings,) = (one.name for one in architect.wanted if "Openings" in one.name)
    assert (
        openings
        == "Openings with place, size, and flashing (E1); enter on the sheet openings of the workbook, or send a list"
    )
    assert architect.tables == ("openings",)


def test_every_absent_list_names_the_table_of_its_party(tmp_path: Path) -> None:
    asked = gather_sheets(changed_small(tmp_path, {"package": {"purpose": "mockup_submittal"}}), "mockup")
    applicator = sheet_of(asked, "applicator")
    (guns,) = (one.name for one in applicator.wanted if one.name.startswith("Spray guns"))
    assert guns == "Spray guns; enter on the sheet guns of the workbook, or send a list"
    assert {"people", "guns"} <= set(applicator.tables)
    architect = sheet_of(asked, "architect")
    asked_for = [one.name for one in architect.wanted]
    (elevations,) = (one for one in asked_for if one.startswith("Elevations: facing, "))
    assert elevations.endswith("; enter on the sheet elevations of the workbook, or send a list")
    sections = "; enter on the sheet spec_sections of the workbook, or send a list"
    assert f"Specification section for this work, a copy, or none{sections}" in asked_for


def test_what_too_many_members_lack_is_asked_by_their_table(tmp_path: Path) -> None:
    faces = {f"E{n}": {"name": f"Face {n}", "facing": "N"} for n in range(1, 22)}
    change = {"package": {"purpose": "mockup_submittal"}, "elevations": faces}
    sheet = sheet_of(gather_sheets(changed_small(tmp_path, change), "mockup"), "architect")
    assert [one.field for one in sheet.questions if one.field.startswith("elevations.")] == []
    (faces_told,) = (one.name for one in sheet.wanted if one.name.startswith("Elevations"))
    assert faces_told.startswith("Elevations (E1 to E21): Elevation width; Elevation height; ")
    assert faces_told.endswith("; enter on the sheet elevations of the workbook, or send a list")
    (openings,) = (one.name for one in sheet.wanted if one.name.startswith("Openings"))
    assert openings.startswith(
        "Openings with place, size, and flashing (E1 to E21); enter on the sheet openings of the workbook"
    )
    assert {"elevations", "openings", "colors", "criteria"} <= set(sheet.tables)


def test_what_few_members_lack_is_asked_of_each(tmp_path: Path) -> None:
    change = {"package": {"purpose": "mockup_submittal"}, "elevations": {"E1": {"facing": "N"}, "E2": {"facing": "S"}}}
    sheet = sheet_of(gather_sheets(changed_small(tmp_path, change), "mockup"), "architect")
    asked = {one.field for one in sheet.questions}
    assert {"elevations.E1.width", "elevations.E2.width"} <= asked


def test_a_value_of_a_member_that_another_wall_has_is_not_asked_of_this_one(tmp_path: Path) -> None:
    layer = {"kind": "standard", "order": 1}
    walls = {
        "W1": {"mesh": {"layers": [layer, layer | {"order": 2}]}},
        "W2": SMALL["walls"]["W1"] | {"mesh": {"layers": [layer]}},
    }
    sheets = gather_sheets(
        changed_small(tmp_path, {"package": {"purpose": "mockup_submittal"}, "walls": walls}), "mockup"
    ).sheets
    lacking_weight = sorted(one.field for sheet in sheets for one in sheet.questions if one.field.endswith(".weight"))
    assert lacking_weight == [
        f"walls.{where}.weight" for where in ("W1.mesh.layers.0", "W1.mesh.layers.1", "W2.mesh.layers.0")
    ]


def test_a_mark_is_not_asked_for_where_there_is_nothing_to_name(tmp_path: Path) -> None:
    sheets = gather_sheets(changed_small(tmp_path, {"package": {"purpose": "mockup_submittal"}}), "mockup").sheets
    applicator = next(sheet for sheet in sheets if sheet.role == "applicator")
    assert "Respiratory protection program" in [one.name for one in applicator.wanted]
    assert "safety.respirator_program" not in [one.field for one in applicator.questions]


def test_a_document_behind_a_mark_is_sent_and_not_asked_for_as_a_mark(tmp_path: Path) -> None:
    sheet = sheet_of(
        gather_sheets(changed_clean(tmp_path, {"walls": {"W1": {"attachment": {"instructions": "tbd"}}}}), "work"),
        "eifs_source",
    )
    assert sheet.questions == ()
    assert [one.name for one in sheet.wanted] == ["Wall W1 (South face and West face): Instructions for the adhesive"]


def test_a_report_that_is_asked_for_is_not_asked_for_again_as_a_mark() -> None:
    case, stage = check_for(EXAMPLES / "old-wall" / "project.yaml", "mockup")
    owner = sheet_of(gather_sheets(context_of_case(case), stage), "owner")
    report = "Bond report with mode of failure, signed by an independent testing agency (W1)"
    lot_line = "Lot line: distance from the wall; permission past it, or none (W1)"
    signs = "Signs, lights, awnings, pipes on the wall; refixed by whom (W1)"
    assert [one.name for one in owner.wanted] == ["Names: testing agency", lot_line, signs, report]


def test_a_required_document_is_asked_of_the_party_that_owes_it(tmp_path: Path) -> None:
    sheets = gather_sheets(changed_small(tmp_path, {"package": {"purpose": "mockup_submittal"}}), "mockup").sheets
    names = {sheet.role: [one.name for one in sheet.wanted] for sheet in sheets}
    assert "Review of this package, signed and dated" in names["general_contractor"]
    assert any(name.startswith("Data sheets and safety data sheets: ") for name in names["finish_source"])


@pytest.mark.parametrize("name", ["eifs_source", "EIFS manufacturer", "eifs-manufacturer", " Eifs  Source "])
def test_a_party_is_named_by_its_code_or_in_words(tmp_path: Path, name: str) -> None:
    assert find_role(lacking(tmp_path), name) == "eifs_source"


@pytest.mark.parametrize(
    ("name", "role"),
    [
        ("GC", "general_contractor"),
        ("General contractor", "general_contractor"),
        ("A/E", "architect"),
        ("structural engineer", "engineer"),
        ("Coating manufacturer", "finish_source"),
        ("WRB manufacturer", "wrb_source"),
    ],
)
def test_a_party_is_named_as_people_call_it(tmp_path: Path, name: str, role: str) -> None:
    assert find_role(lacking(tmp_path), name) == role


def test_no_name_of_a_file_is_asked_and_the_limits_are_to_be_sent() -> None:
    case, _ = check_for(EXAMPLES / "first-look" / "project.yaml", "closeout")
    sheets = gather_sheets(context_of_case(case), "closeout").sheets
    asked = {one.field for sheet in sheets for one in sheet.questions}
    assert asked.isdisjoint({"coating_system", "firm", "records"})
    wanted = [one.name for sheet in sheets if sheet.role == "finish_source" for one in sheet.wanted]
    assert any(
        one.startswith("Other limits of smoothing, primer, and gloss that their data sheets leave out")
        for one in wanted
    )


def test_the_day_of_completion_is_asked_in_place_of_an_age(tmp_path: Path) -> None:
    change: dict[str, Any] = {"walls": {"W2": {"substrate": {"age_days": "tbd", "completed_on": "tbd"}}}}
    context = lacking(tmp_path, change)
    question = question_about(context, "walls.W2.substrate.completed_on")
    assert question.form == "date: year-month-day"
    every = [one.field for sheet in gather_sheets(context, "work").sheets for one in sheet.questions]
    assert "walls.W2.substrate.age_days" not in every


def test_the_wind_is_asked_before_any_elevation_is_listed(tmp_path: Path) -> None:
    bare = pipeline.check(written(tmp_path, merged(SMALL, {"package": {"purpose": "mockup_submittal"}})))
    every = [one.field for sheet in gather_sheets(context_of_case(bare), "mockup").sheets for one in sheet.questions]
    for field in ("site.wind_speed", "site.exposure", "site.risk_category", "building.mean_roof_height"):
        assert every.count(field) == 1, field


def test_a_party_that_there_is_not_is_refused_with_those_there_are(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="there is no party 'archtect' .did you mean architect."):
        find_role(lacking(tmp_path), "archtect")


DATED: dict[str, Any] = {
    "package": {"purpose": "mockup_submittal", "date": "2027-02-01"},
    "contract": {"review_days": 14, "review_day_kind": "calendar"},
    "mockup": {"planned_on": "2027-04-12"},
    "schedule": {"work_start": "2027-05-17"},
}


# Counted on a calendar: February 1, March 1, and April 12, 2027, are Mondays. Common practice, no source: a working day
# to act on what is returned, three for the contractor to review what it sends on, three for the applicator to check
# and send what came in; the decision stands the working day before the issue, and takes as long as a review.
@pytest.mark.parametrize(
    ("change", "due"),
    [
        # Issued Monday, March 1, decided Friday, February 26, with the architect 14 days before, on Friday the 12th;
        # checked and sent on the 11th, 10th, and 9th.
        ({"schedule": {"submit_on": "2027-03-01"}}, "2027-02-09"),
        # Mockup on Monday, April 12: acted on Friday, April 9, returned Thursday the 8th, with the architect 14 days
        # before, on March 25. Reviewed on the 24th, 23rd, and 22nd: issued Monday, March 22, decided Friday the 19th.
        # With the architect on March 5; checked and sent on the 4th, 3rd, and 2nd.
        ({}, "2027-03-02"),
        # A contractor that is named reviews what the decision needs as well, on March 4, 3, and 2; checked and sent
        # on Monday, March 1, Friday, February 26, and Thursday the 25th.
        ({"parties": {"general_contractor": {"name": "Lark Builders"}}}, "2027-02-25"),
        # 14 working days before April 8: April 7 to 1 are five, March 31 to 29 three, March 26 to 22 five, and March 19
        # the last. Issued three before, on the 16th, decided Monday the 15th. 14 before that: March 12 to 8 and
        # March 5 to 1 are ten, February 26 to 23 four. Three before that: Monday the 22nd, Friday the 19th, the 18th.
        ({"contract": {"review_day_kind": "working"}}, "2027-02-18"),
        # Saturdays are worked and April 2 is not: acted on Saturday, April 10, returned Friday the 9th. 14 before:
        # April 8 to 5 are four, April 3 and 1 two, March 31 to 29 three, March 27 to 23 five. Issued three before, by
        # Monday the 22nd and Saturday the 20th on Friday the 19th, decided on the 18th. 14 before that: March 17 to 15
        # are three, March 13 to 8 six, March 6 to 2 five. Three before that: March 1, Saturday the 27th, the 26th.
        ({"contract": {"review_day_kind": "working"}, "schedule": {"days_off": ["sun", "2027-04-02"]}}, "2027-02-26"),
        # A mockup on Sunday, April 11, has the same two working days before it as one on Monday: April 9 and 8.
        ({"contract": {"review_day_kind": "working"}, "mockup": {"planned_on": "2027-04-11"}}, "2027-02-18"),
        # Checked on Thursday and Friday and on the day itself: before the mockup on Monday, April 12, and before the
        # start on Monday, May 17.
        ({"contract": {"review_days": "tbd"}}, "2027-04-07"),
        ({"contract": {"review_days": "tbd"}, "mockup": "drop"}, "2027-05-12"),
        ({"contract": {"review_days": "tbd"}, "mockup": "drop", "schedule": "drop"}, None),
        # A day before the date of the package dates no answer: the last day does.
        ({"schedule": {"submit_on": "2027-01-29"}}, "2027-03-02"),
        # On the date of the package itself what it lacks is due.
        ({"schedule": {"submit_on": "2027-02-01"}, "mockup": "drop"}, "2027-02-01"),
    ],
)
def test_an_answer_for_the_decision_is_due_a_review_before_the_package_goes_in(
    tmp_path: Path, change: Any, due: str | None
) -> None:
    file = written(tmp_path, merged(merged(SMALL, DATED), change))
    question = question_about(context_of_case(pipeline.check(file)), "parties.owner.name", "mockup")
    assert question.due == (datetime.date.fromisoformat(due) if due else None)


def test_a_figure_that_is_proposed_says_where_it_comes_from(tmp_path: Path) -> None:
    case = pipeline.check(written(tmp_path, merged(SMALL, DATED)))
    question = question_about(context_of_case(case), "aesthetic_joint.tolerance", "mockup")
    # The width of a joint line that may differ unseen: common practice, no source.
    assert "Proposed: 1/16 in" in question.question
    assert question.why.endswith(" Basis of the figure proposed: common practice, no source.")
