"""What judging adds up to: verdicts, open items, findings with their subjects. The behavior is ours."""

import dataclasses
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen import pipeline
from specgen.judging.applies import applicable
from specgen.model.field import Field, dotted_path
from specgen.model.field import Path as FieldPath
from specgen.model.finding import Judgment, Severity, Verdict
from specgen.model.project import Project
from specgen.terminal.report import format_report
from tests.judging.clause_cases import JUDGED
from tests.support import EXAMPLES, SMALL, case_of, merged, project_of, told_by

# A wall on which every clause that counts for a plain yes can be judged, and none fires.
WHOLE: dict[str, Any] = merged(
    SMALL,
    {
        "code": {
            "model": "ibc",
            "edition": 2021,
            "local_fasteners_required": "no",
            "construction_type": "IIB",
            "occupancy_groups": ["B"],
            "required_r_value": "R-6",
            "wind_standard": "asce_7_16",
        },
        "building": {"eifs_top": "30 ft", "stories": 2, "mean_roof_height": "30 ft", "enclosure": "enclosed"},
        "climate": {
            "hot_air": "95 F",
            "peak_wall_irradiance": "760 W/m2",
            "months": [{"month": "jan", "mean_min": "20 F", "mean_max": "36 F", "mean_humidity": 70}],
        },
        "contract": {"inspection_level": "periodic"},
        "site": {"latitude": "40 deg", "altitude": "300 ft", "wind_speed": "115 mph", "exposure": "B"},
        "gloss_target": {"units": 60, "angle": 60, "tolerance": 5},
        "aesthetic_joint": {"depth": "1/2 in"},
        "elevations": {"E1": {"facing": "W", "reflecting_surface_near": "no"}},
        "colors": {
            "C1": {
                "lrv": 44,
                "emittance": 0.8,
                "solar_reflectance": 0.62,
                "solar_reflectance_method": "C1549",
                "emittance_method": "C1371",
                "metallic": "no",
            }
        },
        "mockup": {"criteria": []},
        "gloss": {"permeance": "8 perm"},
        "walls": {
            "W1": {
                "framing": {"kind": "none"},
                "substrate": {"kind": "concrete", "age_days": 60, "condition": []},
                "wrb": {"kind": "none"},
                "attachment": {"method": "adhesive_full_bed", "ultimate_strength": "180 psf", "safety_factor": 3},
                "layers": [
                    {"name": "wall", "r_value": "R-2", "permeance": "1.5 perm"},
                    {"name": "board", "r_value": "R-7.2", "permeance": "2.5 perm"},
                    {"name": "coat", "r_value": "R-0.1", "permeance": "6 perm"},
                ],
                "drainage": {"kind": "none"},
                "base_coat": {"class": "PB"},
                "insulation": {
                    "kind": "eps",
                    "thickness": "2 in",
                    "rasp_allowance": "1/16 in",
                    "c578_type": "I",
                    "e2430": "yes",
                    "aged": "yes",
                    "flame_spread": 20,
                    "smoke_developed": 300,
                    "r_value": "R-7.2",
                    "board_joint_to_reveal": "4 in",
                    "board_joint_to_opening_corner": "8 in",
                },
            }
        },
    },
)


def verdicts(judgment: Judgment) -> dict[str, Verdict]:
    """The verdict of each wall by its mark."""
    return {mark: wall.verdict for mark, wall in judgment.walls.items()}


@pytest.mark.parametrize(
    ("change", "verdict"),
    [
        ({}, Verdict.YES),
        ({"walls": {"W1": {"insulation": {"kind": "mineral_wool"}}}}, Verdict.NO),
        ({"walls": {"W1": {"substrate": {"age_days": 20}}}}, Verdict.WITH_MEASURES),
        ({"walls": {"W1": {"insulation": {"c578_type": "drop"}}}}, Verdict.NOT_YET_KNOWN),
        # No drainage is due on concrete, but a drained wall has rules of its own.
        ({"walls": {"W1": {"drainage": "drop"}}, "code": {"model": "irc"}}, Verdict.NOT_YET_KNOWN),
        ({"code": {"local_fasteners_required": "yes"}}, Verdict.NO),
        ({"code": {"local_fasteners_required": "drop"}}, Verdict.NOT_YET_KNOWN),
        ({"walls": {"W1": {"base_coat": {"passes": 1}}}}, Verdict.NO),
        # Stops of other groups hold the package, not the wall.
        ({"smoothing": {"coats": 1}}, Verdict.YES),
        ({"gloss": {"dry_hours": 6}}, Verdict.YES),
        # A stop beside a caution is a stop; an open clause beside a stop changes nothing, beside a caution it waits.
        ({"walls": {"W1": {"substrate": {"age_days": 20}, "base_coat": {"passes": 1}}}}, Verdict.NO),
        ({"walls": {"W1": {"substrate": {"age_days": 20}, "insulation": {"aged": "drop"}}}}, Verdict.NOT_YET_KNOWN),
        ({"walls": {"W1": {"base_coat": {"passes": 1}, "insulation": {"aged": "drop"}}}}, Verdict.NO),
        # Groups that may decide but need not be judged: little of the base coat is known here.
        ({"walls": {"W1": {"base_coat": {"class": "PB"}, "mesh": "drop"}}}, Verdict.YES),
        # A stop that a deviation answers, but nobody has approved, stands.
        (
            {
                "walls": {"W1": {"base_coat": {"passes": 1}}},
                "deviations": {"D1": {"answers": ["BAS-01"]}},
            },
            Verdict.NO,
        ),
        # A lifted stop is a measure.
        (
            {
                "walls": {"W1": {"base_coat": {"passes": 1}}},
                "deviations": {"D1": {"answers": ["BAS-01"], "approved_on": "2027-01-01"}},
            },
            Verdict.WITH_MEASURES,
        ),
    ],
)
@pytest.mark.no_cover
def test_a_wall_has_the_verdict_of_what_fired_and_what_waits(change: Any, verdict: Verdict, tmp_path: Path) -> None:
    judgment = case_of(tmp_path, change, WHOLE).judgment
    assert verdicts(judgment) == {"W1": verdict}, judgment.walls


def test_a_finding_on_an_elevation_counts_for_its_own_wall_only(tmp_path: Path) -> None:
    second = {
        "walls": {"W2": WHOLE["walls"]["W1"]},
        "elevations": {
            "E1": {"wall": "W1", "grade_clearance": "3 in"},
            "E2": {
                "wall": "W2",
                "grade_clearance": "9 in",
                "facing": "W",
                "reflecting_surface_near": "no",
            },
        },
    }
    assert verdicts(case_of(tmp_path, second, WHOLE).judgment) == {"W1": Verdict.NO, "W2": Verdict.YES}


def test_a_fired_clause_is_one_finding_with_all_its_subjects(tmp_path: Path) -> None:
    walls = {
        "W1": {"attachment": {"cure_hours": 12}},
        "W2": merged(SMALL["walls"]["W1"], {"attachment": {"cure_hours": 8}}),
        "W3": merged(SMALL["walls"]["W1"], {"attachment": {"cure_hours": 30}}),
    }
    (finding,) = (f for f in case_of(tmp_path, {"walls": walls}).judgment.findings if f.code == "FIN-03a")
    assert finding.subjects == ("W1", "W2")
    assert finding.found == "12 (W1); 8 (W2)"
    assert finding.message == ("W1: The adhesive cures 12 h; minimum 24 h. W2: The adhesive cures 8 h; minimum 24 h.")
    assert finding.place.path == "walls.W1.attachment.cure_hours"


def test_subjects_that_say_the_same_share_a_sentence(tmp_path: Path) -> None:
    walls = {
        "W1": {"attachment": {"method": "mechanical"}},
        "W2": merged(SMALL["walls"]["W1"], {"attachment": {"method": "mechanical"}}),
    }
    (finding,) = (f for f in case_of(tmp_path, {"walls": walls}).judgment.findings if f.code == "ATT-01a")
    assert (finding.subjects, finding.found) == (("W1", "W2"), "mechanical")
    assert finding.message.count("fasteners") == 1


def test_a_clause_that_cannot_be_judged_is_neither_fired_nor_passed(tmp_path: Path) -> None:
    judgment = case_of(tmp_path).judgment
    waiting = {n.code for n in judgment.not_judged}
    assert "BAS-01b" in waiting
    assert not waiting & {f.code for f in judgment.findings}
    assert all(n.needs for n in judgment.not_judged)


def test_an_absent_collection_is_one_open_item_and_holds_its_clauses(tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {"package": {"purpose": "mockup_submittal"}}).judgment
    (item,) = (i for i in judgment.open_items if i.path.startswith("sealants"))
    assert (item.path, item.ring) == ("sealants", "mockup")
    assert {"SLT-04a", "SLT-04d"} <= set(item.holds_up)


@pytest.mark.parametrize(
    ("purpose", "rings", "stops"),
    [
        ("design_draft", {"verdict"}, False),
        ("mockup_submittal", {"verdict", "mockup"}, True),
        ("work_submittal", {"verdict", "mockup", "work"}, True),
        ("resubmittal", {"verdict", "mockup", "work"}, True),
        ("closeout", {"verdict", "mockup", "work", "closeout"}, True),
    ],
)
def test_a_purpose_owes_its_rings(purpose: str, rings: set[str], stops: bool, tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {"package": {"purpose": purpose}}).judgment
    assert {item.ring for item in judgment.open_items} == rings
    assert judgment.stops_when_open is stops
    assert judgment.stopped is stops


def test_a_draft_counts_the_rings_it_does_not_owe(tmp_path: Path) -> None:
    later = case_of(tmp_path).judgment.later_rings
    assert set(later) == {"mockup", "work", "closeout"}
    assert later["mockup"] > later["closeout"] > 0


def test_optional_fields_and_fields_that_do_not_apply_are_owed_by_nobody(tmp_path: Path) -> None:
    case = case_of(tmp_path, {"package": {"purpose": "closeout"}, "code": {"model": "irc"}})
    paths = {item.path for item in case.judgment.open_items}
    assert not paths & {
        "code.construction_type",
        "contract.demands",
        "deviations",
        "walls.W1.substrate.bond_limit",
        "code.cited_eifs_section",
    }
    assert "walls.W1.substrate.age_days" in paths


def test_papers_are_not_judged_in_a_draft(tmp_path: Path) -> None:
    papers = {"safety": {"rules": "us_osha"}}
    assert "ACC-07a" not in {f.code for f in case_of(tmp_path, papers).judgment.findings}
    submittal = merged(papers, {"package": {"purpose": "mockup_submittal"}})
    fired = {f.code: f for f in case_of(tmp_path, submittal).judgment.findings}
    assert fired["ACC-07a"].severity is Severity.STOP


def test_a_stop_of_the_whole_project_decides_every_wall(tmp_path: Path) -> None:
    second = {
        "code": {"local_fasteners_required": "yes"},
        "walls": {"W2": WHOLE["walls"]["W1"]},
        "elevations": {"E1": {"wall": "W1"}, "E2": WHOLE["elevations"]["E1"] | {"wall": "W2"}},
    }
    judgment = case_of(tmp_path, second, WHOLE).judgment
    assert verdicts(judgment) == {"W1": Verdict.NO, "W2": Verdict.NO}
    assert [wall.deciding for wall in judgment.walls.values()] == [("ATT-03a",), ("ATT-03a",)]


def test_a_wall_that_waits_says_for_which_clauses(tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {"walls": {"W1": {"insulation": {"aged": "drop"}}}}, WHOLE).judgment
    (wall,) = judgment.walls.values()
    assert (wall.undecided, wall.fields, wall.deciding) == (("INS-03",), ("walls.W1.insulation.aged",), ())


# A barrier on sheathing whose bond report is owed in a submittal and not given; its base coat is known.
SUBMITTED: dict[str, Any] = merged(
    WHOLE,
    {
        "package": {"purpose": "mockup_submittal"},
        "walls": {
            "W1": {
                "substrate": {"kind": "glass_mat_gypsum", "age_days": "drop", "condition": []},
                "wrb": {"kind": "fluid_applied"},
            }
        },
    },
)


def test_the_want_of_a_document_makes_no_wall_a_no_and_is_named(tmp_path: Path) -> None:
    (wall,) = case_of(tmp_path, {}, SUBMITTED).judgment.walls.values()
    assert wall.verdict is Verdict.NOT_YET_KNOWN
    assert "ATT-07c" in wall.deciding
    assert "bond report of the adhesive on the WRB" in wall.documents


def test_a_stop_beside_the_want_of_a_document_is_a_no(tmp_path: Path) -> None:
    change = {"walls": {"W1": {"wrb": {"kind": "building_wrap"}}}}
    assert verdicts(case_of(tmp_path, change, SUBMITTED).judgment) == {"W1": Verdict.NO}


def test_a_draft_may_leave_the_base_coat_open_and_a_submittal_waits_for_it(tmp_path: Path) -> None:
    purposes = {"design_draft": (), "mockup_submittal": ("BAS-01",)}
    for purpose, waits in purposes.items():
        (wall,) = case_of(tmp_path, {"package": {"purpose": purpose}}, WHOLE).judgment.walls.values()
        assert tuple(rule for rule in wall.undecided if rule == "BAS-01") == waits


def test_a_measure_beside_what_is_open_is_counted_and_settles_nothing(tmp_path: Path) -> None:
    change = {"walls": {"W1": {"substrate": {"age_days": 20}, "insulation": {"aged": "drop"}}}}
    case = case_of(tmp_path, change, WHOLE)
    (wall,) = case.judgment.walls.values()
    assert (wall.verdict, wall.measures) == (Verdict.NOT_YET_KNOWN, 1)
    report = format_report(case.project, case.judgment)
    told = "W1 not yet known: nothing known so far speaks against it; still to be shown: EPS board aged before use;"
    assert f"{told} so far 1 measure" in " ".join(report.split())


def test_one_clause_may_fire_on_one_subject_pass_on_another_and_wait_for_a_third(tmp_path: Path) -> None:
    wall = SMALL["walls"]["W1"]
    walls = {
        "W1": {"base_coat": {"passes": 1}},
        "W2": merged(wall, {"base_coat": {"passes": 2}}),
        "W3": wall,
    }
    judgment = case_of(tmp_path, {"walls": walls}).judgment
    (finding,) = (f for f in judgment.findings if f.code == "BAS-01a")
    assert finding.subjects == ("W1",)
    assert [(n.subject, n.needs) for n in judgment.not_judged if n.code == "BAS-01a"] == [
        ("W3", ("walls.W3.base_coat.passes",))
    ]


def test_an_open_item_names_every_clause_it_holds_up_once(tmp_path: Path) -> None:
    walls = {"W2": SMALL["walls"]["W1"]}
    judgment = case_of(tmp_path, {"walls": walls, "package": {"purpose": "closeout"}}).judgment
    held: dict[str, set[str]] = {}
    for waiting in judgment.not_judged:
        for need in waiting.needs:
            held.setdefault(need, set()).add(waiting.code)
    items = {item.path: item for item in judgment.open_items}
    assert len(items) == len(judgment.open_items)
    assert all(len(set(item.holds_up)) == len(item.holds_up) for item in items.values())
    assert {path: set(item.holds_up) for path, item in items.items() if item.holds_up} == {
        path: codes for path, codes in held.items() if path in items
    }
    # Each wall owes its own: an open item for each of the two.
    assert {"walls.W1.insulation.kind", "walls.W2.insulation.kind"} <= set(items)


@pytest.mark.parametrize(
    ("substrate", "owed"), [("concrete", True), ("concrete_masonry", True), ("osb", False), ("glass_mat_gypsum", False)]
)
def test_a_field_is_owed_only_where_it_applies(substrate: str, owed: bool, tmp_path: Path) -> None:
    change = {"package": {"purpose": "mockup_submittal"}, "walls": {"W1": {"substrate": {"kind": substrate}}}}
    judgment = case_of(tmp_path, change).judgment
    assert ("walls.W1.substrate.age_days" in {item.path for item in judgment.open_items}) is owed


# What follows takes values away from descriptions and asks what becomes of the clauses. Two things must hold whatever
# is taken: a clause that can no longer be judged waits and is not counted as passed, and what is absent fires nothing.

NEEDED = {("package", "purpose"), ("project", "name")}


def lacking(project: Project, *paths: FieldPath) -> Project:
    """The project without these values, be they its own or the coating source's."""
    values = {path: value for path, value in project.values.items() if path not in paths}
    maker = {path: value for path, value in project.maker.items() if path not in paths}
    return dataclasses.replace(project, values=values, maker=maker)


def judged(project: Project) -> Judgment:
    return pipeline.judge_project(project).judgment


def owed_values(project: Project) -> list[FieldPath]:
    """The given values that leave a hole: those that somebody owes and nothing else fills."""
    fields = {path: project.schema.field_at(path) for path in project.values if path not in NEEDED}
    return [p for p, made in fields.items() if made and _owed(made)]


def _owed(field: Field) -> bool:
    return field.ring != "optional" and not (field.default or field.derived or field.optional)


def is_paper(project: Project, path: FieldPath) -> bool:
    """Whether a value is a paper or a signature: its absence is what a clause may tell."""
    made = project.schema.field_at(path)
    told = path[0] in ("attachments", "deviations", "comments") or path[:2] == ("package", "contractor_review")
    return told or (made is not None and made.to == "attachments")


def fired(judgment: Judgment) -> set[tuple[str, str]]:
    return {(finding.code, subject) for finding in judgment.findings for subject in finding.subjects}


def waiting(judgment: Judgment) -> set[tuple[str, str]]:
    return {(clause.code, clause.subject) for clause in judgment.not_judged}


def codes(hits: set[tuple[str, str]]) -> set[str]:
    return {code for code, _ in hits}


# These two ask for a paper for each material described; a material no longer described is owed none.
OF_WHAT_IS_DESCRIBED = {"SUB-02a", "SUB-02c"}

FIRES = [
    pytest.param(code, case, id=f"{code}-{n}")
    for code, cases in JUDGED.items()
    if code not in OF_WHAT_IS_DESCRIBED
    for n, case in enumerate(cases["fires"])
]


@pytest.mark.no_cover
@pytest.mark.parametrize(("code", "case"), FIRES)
def test_a_fired_clause_that_loses_an_owed_value_fires_still_or_waits(
    code: str, case: dict[str, Any], tmp_path: Path
) -> None:
    project = project_of(tmp_path, case["project"])
    assert told_by(project, code).fires
    for path in owed_values(project):
        less = lacking(project, path)
        told = told_by(less, code)
        # A field that no longer applies once it is gone is owed by nobody, and its clause speaks of nothing.
        if applicable(less, path, told.context.look):
            assert told.fires or told.waits, dotted_path(path)


WHOLE_CASES = {name: pipeline.check(EXAMPLES / name / "project.yaml") for name in ("clean", "stops")}
OWED = {name: owed_values(case.project) for name, case in WHOLE_CASES.items()}


@st.composite
def thinned(draw: st.DrawFn) -> tuple[pipeline.JudgedProject, Project, set[FieldPath]]:
    """An example, the same with some of its owed values taken away, and which."""
    name = draw(st.sampled_from(sorted(WHOLE_CASES)))
    gone = draw(st.sets(st.sampled_from(OWED[name]), min_size=1, max_size=25))
    return WHOLE_CASES[name], lacking(WHOLE_CASES[name].project, *gone), gone


def test_the_examples_fire_much_and_nothing() -> None:
    assert len(WHOLE_CASES["stops"].judgment.findings) > 20
    walls = verdicts(WHOLE_CASES["clean"].judgment)
    assert walls
    assert set(walls.values()) == {Verdict.YES}


@settings(max_examples=30)
@given(thinned())
def test_a_wall_never_gains_a_plain_yes_by_what_is_left_out(
    case: tuple[pipeline.JudgedProject, Project, set[FieldPath]],
) -> None:
    whole, less = verdicts(case[0].judgment), verdicts(judged(case[1]))
    assert [wall for wall, verdict in less.items() if verdict is Verdict.YES and whole[wall] is not Verdict.YES] == []


@settings(max_examples=30)
@given(thinned())
def test_what_is_left_out_fires_nothing_but_the_want_of_a_paper(
    case: tuple[pipeline.JudgedProject, Project, set[FieldPath]],
) -> None:
    whole, less, gone = case
    if not any(is_paper(whole.project, path) for path in gone):
        assert codes(fired(judged(less))) <= codes(fired(whole.judgment))


@settings(max_examples=30)
@given(thinned())
def test_a_clause_fires_on_a_subject_or_waits_for_it_and_never_both(
    case: tuple[pipeline.JudgedProject, Project, set[FieldPath]],
) -> None:
    judgment = judged(case[1])
    assert not fired(judgment) & waiting(judgment)
    assert all(clause.needs for clause in judgment.not_judged)


@settings(max_examples=30)
@given(thinned())
def test_a_value_left_out_is_an_open_item_of_its_ring_or_counted_there(
    case: tuple[pipeline.JudgedProject, Project, set[FieldPath]],
) -> None:
    _, less, gone = case
    made = pipeline.judge_project(less)
    listed = {item.path for item in made.judgment.open_items}
    # A stop for want of it tells it in place of the open item.
    listed |= {line.path for finding in made.judgment.of(Severity.STOP) for line in finding.to_add}
    for path in gone:
        field = less.schema.field_at(path)
        assert field is not None
        if field.home != "record" and applicable(less, path, made.context.look):
            assert dotted_path(path) in listed or made.judgment.later_rings[field.ring] > 0, dotted_path(path)
