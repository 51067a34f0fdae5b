"""From the project file and the files it names to one project; every fault of all of them in one run.

Which file holds what, and whose figure counts, are rules of this program.
"""

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen import pipeline
from specgen.model.absence import Absent
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.model.source import Kind
from specgen.reading.project import defaults
from specgen.reading.schema import project_schema
from specgen.resolving.limits_in_force import limit_in_force
from tests.support import SMALL, case_of, merged, written

# The small project as text, so that lines can be counted.
HEAD = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial}
walls:
  W1: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}
"""
NEXT = HEAD.count("\n") + 1


def refused(folder: Path, change: Any) -> list[Problem]:
    """What is told of the small project with a change laid over it, or of the small project with lines added."""
    with pytest.raises(Refused) as raised:
        if isinstance(change, str):
            pipeline.check(written(folder, HEAD + change))
        else:
            case_of(folder, change)
    return list(raised.value.problems)


def project_of(folder: Path, more: str) -> Project:
    return pipeline.check(written(folder, HEAD + more)).project


def test_only_these_are_refused_when_absent(tmp_path: Path) -> None:
    with pytest.raises(Refused) as raised:
        pipeline.check(written(tmp_path, "format: 1\n"))
    assert {p.path: p.hint for p in raised.value.problems} == {
        "project.name": "write name: Harbor Clinic",
        "package.purpose": "write one of design_draft, mockup_submittal, work_submittal, resubmittal, closeout",
        "walls.W1.substrate.kind": "write one of concrete, concrete_masonry, aac, icf, stone, stucco, glass_mat_gypsum,"
        " cement_board, plywood, osb, paper_faced_gypsum, existing_coated, existing_brick, metal",
        "walls.W1.attachment.method": "write one of adhesive_full_bed, adhesive_notched_trowel,"
        " adhesive_ribbon_and_dab, mechanical, adhesive_and_mechanical, direct_applied",
    }


# A change that leaves one of the four out, its path, and the line it is told at: that of its nearest parent.
@pytest.mark.parametrize(
    ("text", "path", "line"),
    [
        ("project: {}\n", "project.name", 1),
        ("project: {name: tbd}\n", "project.name", 1),
        ("walls:\n  A: {substrate: {kind: osb},\n    attachment: {}}\n", "walls.A.attachment.method", 3),
        ("walls:\n  A:\n    attachment: {method: mechanical}\n", "walls.A.substrate.kind", 2),
        ("walls: {}\n", "walls.W1.substrate.kind", 1),
    ],
)
def test_what_must_be_given_is_told_where_it_should_stand(text: str, path: str, line: int, tmp_path: Path) -> None:
    section = text.partition(":")[0]
    rest = "".join(part + "\n" for part in HEAD.splitlines()[:-2] if not part.startswith(section))
    wall = "" if section == "walls" else "\n".join(HEAD.splitlines()[-2:]) + "\n"
    with pytest.raises(Refused) as raised:
        pipeline.check(written(tmp_path, text + rest + wall))
    problem = next(p for p in raised.value.problems if p.path == path)
    assert (problem.message, problem.file, problem.line) == ("this must be given", "project.yaml", line)


PURPOSES = "known: design_draft, mockup_submittal, work_submittal, resubmittal, closeout"


def test_a_value_that_does_not_fit_is_told_and_not_missed_as_well(tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, {"package": {"purpose": "design drafft"}})
    assert (problem.path, problem.hint) == ("package.purpose", f"did you mean design_draft? {PURPOSES}")


def test_one_whole_wall_is_enough(tmp_path: Path) -> None:
    wall = {"substrate": {"kind": "tbd"}, "base_coat": {"passes": "2"}}
    assert case_of(tmp_path, {"walls": {"W2": wall}}).judgment.walls.keys() == {"W1", "W2"}


def test_a_member_without_any_value_is_none_beside_others(tmp_path: Path) -> None:
    """One of which a value is said to be unknown, or whose mark is used, is there."""
    base = yaml.safe_dump(SMALL)
    faces = "elevations:\n  E1: {name: South}\n  E2:\n    name:\n    facing:\n"
    faces += "  E3:\n    openings:\n      A:\n        kind:\n"
    case = pipeline.check(written(tmp_path, f"{base}{faces}  E4: {{name: tbd}}\n"))
    assert case.project.members[("elevations",)] == ("E1", "E4")
    assert not [item for item in case.judgment.open_items if item.path.startswith(("elevations.E2", "elevations.E3"))]
    case = pipeline.check(written(tmp_path, f"{base}{faces}joints:\n  J1: {{elevation: E2}}\n"))
    assert case.project.members[("elevations",)] == ("E1", "E2")


@pytest.mark.parametrize(("number", "hint"), [("2", "write format: 1"), ("0", "1 to 99"), ("1e99", "1 to 99")])
def test_another_format_is_refused(number: str, hint: str, tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, {"format": number})
    assert (problem.path, problem.line, problem.hint.partition(";")[0]) == ("format", 1, hint)


def test_a_side_file_of_another_format_is_refused(tmp_path: Path) -> None:
    written(tmp_path, "format: 2\ntank: {lined: yes}\n", "firm.yaml")
    (problem,) = refused(tmp_path, {"firm": "firm.yaml"})
    assert (problem.file, problem.path, problem.hint) == ("firm.yaml", "format", "write format: 1")


# A reference to a mark that no member has: text, path, mark, noun, hint.
DANGLING = [
    ("elevations: {E1: {wall: W11}}\n", "elevations.E1.wall", "W11", "wall", "did you mean W1?"),
    ("elevations: {E1: {wall: w1}}\n", "elevations.E1.wall", "w1", "wall", "did you mean W1?"),
    ("elevations: {E1: {left_meets: E2}}\n", "elevations.E1.left_meets", "E2", "elevation", "known: E1"),
    ("joints: {J1: {sealant: S1}}\n", "joints.J1.sealant", "S1", "sealant", "no sealants are given"),
    ("gloss: {instructions: A14}\n", "gloss.instructions", "A14", "attachment", "no attachments are given"),
    ("mockup: {crew: [red]}\ncrews: {blue: {}}\n", "mockup.crew", "red", "crew", "known: blue"),
]


@pytest.mark.parametrize(("text", "path", "mark", "noun", "hint"), DANGLING, ids=[row[1] for row in DANGLING])
def test_a_mark_that_no_member_has_is_told_with_the_nearest(
    text: str, path: str, mark: str, noun: str, hint: str, tmp_path: Path
) -> None:
    (problem,) = refused(tmp_path, text)
    assert problem.message == f"there is no {noun} {mark!r}"
    assert (problem.path, problem.file, problem.line, problem.hint) == (path, "project.yaml", NEXT, hint)


def test_a_mark_in_a_side_file_that_gives_such_members_is_told_in_that_file(tmp_path: Path) -> None:
    written(tmp_path, "format: 1\nattachments: {A11: {}}\nprimer:\n  instructions: A1\n", "coat.yaml")
    (problem,) = refused(tmp_path, {"coating_system": "coat.yaml"})
    assert (problem.file, problem.path, problem.line) == ("coat.yaml", "primer.instructions", 4)
    assert (problem.message, problem.hint) == ("there is no attachment 'A1'", "did you mean A11?")


def test_with_one_member_a_reference_goes_without_saying(tmp_path: Path) -> None:
    project = case_of(tmp_path, {"elevations": {"E1": {"width": "9 ft"}}}).project
    assert project.value(("elevations", "E1", "wall")).mark == "W1"
    two = merged(SMALL, {"walls": {"W2": SMALL["walls"]["W1"]}, "elevations": {"E1": {"width": "9 ft"}}})
    assert pipeline.check(written(tmp_path, two)).project.get(("elevations", "E1", "wall")) is None


def test_every_fault_of_every_file_is_told_in_one_run_the_project_first_and_by_line(tmp_path: Path) -> None:
    written(tmp_path, "format: 1\ntank: {volume: 2}\nguns: {G1: {kind: water}}\n", "firm.yaml")
    written(tmp_path, "format: 1\ngloss: {coats: two}\n", "coat.yaml")
    written(tmp_path, "format: 1\nlog:\n  - {date: 2027-06-31}\n", "week.yaml")
    problems = refused(
        tmp_path,
        "records: [week.yaml, none.yaml]\ncoating_system: coat.yaml\nfirm: firm.yaml\nprimmer: {}\n"
        "elevations: {E1: {wall: W9, width: 9}}\ncontract: {demands: [{field: gloss.coat}]}\n",
    )
    assert [(p.file, p.path, p.line) for p in problems] == [
        ("project.yaml", "records.1: none.yaml", NEXT),
        ("project.yaml", "primmer", NEXT + 3),
        ("project.yaml", "elevations.E1.wall", NEXT + 4),
        ("project.yaml", "elevations.E1.width", NEXT + 4),
        ("project.yaml", "contract.demands.0.field", NEXT + 5),
        ("coat.yaml", "gloss.coats", 2),
        ("firm.yaml", "tank.volume", 2),
        ("firm.yaml", "guns.G1.kind", 3),
        ("week.yaml", "log.0.date", 3),
    ]


@pytest.mark.parametrize("home", ["firm", "coating_system"])
def test_a_missing_side_file_is_told_at_the_line_that_names_it(home: str, tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, f"\n{home}: side.yaml\n")
    assert (problem.path, problem.file, problem.line) == (f"{home}: side.yaml", "project.yaml", NEXT + 1)
    assert "cannot be read" in problem.message


def test_a_missing_second_side_file_is_told_too(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "tank": {"lined": "yes"}}, "firm.yaml")
    (problem,) = refused(tmp_path, {"firm": "firm.yaml", "coating_system": "coat.yaml"})
    assert problem.path == "coating_system: coat.yaml"
    problems = refused(tmp_path, {"firm": "none.yaml", "coating_system": "coat.yaml"})
    assert {p.path for p in problems} == {"firm: none.yaml", "coating_system: coat.yaml"}


@pytest.mark.parametrize(
    ("content", "said", "file"),
    [
        ("a: b: c\n", "a second colon", "firm.yaml"),
        ("- a\n", "does not begin with a name and a colon", "firm.yaml"),
        ("tank: {volume: \x07}\n", "U+0007", "firm.yaml"),
    ],
)
def test_a_side_file_that_cannot_be_read_is_told(content: str, said: str, file: str, tmp_path: Path) -> None:
    written(tmp_path, content, "firm.yaml")
    (problem,) = refused(tmp_path, {"firm": "firm.yaml"})
    assert said in problem.message
    assert problem.file == file
    assert problem.line > 0


def test_a_side_file_may_stand_in_a_folder_below_and_not_outside(tmp_path: Path) -> None:
    (tmp_path / "job" / "sub").mkdir(parents=True)
    written(tmp_path / "job" / "sub", {"format": 1, "tank": {"lined": "yes"}}, "firm.yaml")
    assert case_of(tmp_path / "job", {"firm": "sub/firm.yaml"}).project.value(("tank", "lined")) is True
    written(tmp_path, {"format": 1, "tank": {"lined": "yes"}}, "firm.yaml")
    (problem,) = refused(tmp_path / "job", {"firm": "../firm.yaml"})
    assert "leaves the project folder" in problem.message
    (tmp_path / "job" / "link.yaml").symlink_to(tmp_path / "firm.yaml")
    (problem,) = refused(tmp_path / "job", {"firm": "link.yaml"})
    assert "points outside the project folder" in problem.message
    assert problem.path == "firm"


def test_a_record_file_is_validated_and_holds_nothing_but_records(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "log": [{"date": "2027-06-15", "step": "gloss", "air": "61 F"}]}, "week.yaml")
    assert case_of(tmp_path, {"records": ["week.yaml"]}).judgment.walls
    written(tmp_path, {"format": 1, "log": [{"date": "2027-06-31"}], "tank": {"lined": "yes"}}, "week.yaml")
    assert {p.path for p in refused(tmp_path, {"records": ["week.yaml"]})} == {"log.0.date", "tank.lined"}


def test_a_section_of_the_firm_that_stands_in_two_files_is_told_with_both_places(tmp_path: Path) -> None:
    written(tmp_path, "format: 1\n\ntank: {lined: yes}\n", "firm.yaml")
    (problem,) = refused(tmp_path, "firm: firm.yaml\ntank: {volume: 2 gal}\n")
    assert (problem.file, problem.path, problem.line) == ("firm.yaml", "tank", 3)
    assert problem.message == f"this stands also in project.yaml, line {NEXT + 1}"
    assert problem.hint == "keep it in one file only"


def test_safety_rules_and_safety_programs_may_stand_apart(tmp_path: Path) -> None:
    written(
        tmp_path, {"format": 1, "safety": {"hazcom": "F1"}, "attachments": {"F1": {"title": "Program"}}}, "firm.yaml"
    )
    project = case_of(tmp_path, {"firm": "firm.yaml", "safety": {"rules": "us_osha"}}).project
    assert project.value(("safety", "hazcom")).mark == "F1"
    assert project.value(("safety", "rules")) == "us_osha"


# Side file, what stands in it, the path that is told, and the file it belongs in.
AWAY = [
    ("firm", "climate: {hot_air: 95 F}", "climate.hot_air", "project"),
    ("firm", "gloss: {coats: 2}", "gloss.coats", "coating system"),
    ("firm", "log: [{date: 2027-06-15}]", "log", "record"),
    ("coating_system", "tank: {lined: yes}", "tank.lined", "firm"),
    ("coating_system", "walls: {W9: {}}", "walls", "project"),
    ("coating_system", "joints: {J1: {width: 1 in}}", "joints.J1.width", "project"),
]


@pytest.mark.parametrize(("home", "content", "path", "owner"), AWAY, ids=[f"{row[2]} in {row[0]}" for row in AWAY])
def test_a_field_of_another_file_is_told_with_the_file_it_belongs_in(
    home: str, content: str, path: str, owner: str, tmp_path: Path
) -> None:
    written(tmp_path, f"format: 1\n{content}\n", "side.yaml")
    told = {(p.file, p.path): p for p in refused(tmp_path, {home: "side.yaml"})}
    problem = told["side.yaml", path]
    assert problem.message == f"this belongs in the {owner} file, not here"
    assert (problem.line, problem.hint) == (2, "move it there")


def test_a_project_file_may_hold_what_a_side_file_would(tmp_path: Path) -> None:
    project = project_of(tmp_path, "tank: {lined: yes}\ngloss: {coats: 2}\n")
    assert project.value(("tank", "lined")) is True
    assert project.value(("gloss", "coats")) == 2
    assert project.maker == {}


def test_papers_of_two_files_keep_apart(tmp_path: Path) -> None:
    theirs = {"primer": {"instructions": "A1"}, "attachments": {"A1": {"title": "Theirs"}, "A2": {"title": "More"}}}
    written(tmp_path, {"format": 1} | theirs, "coat.yaml")
    programs = {"safety": {"hazcom": "A1"}, "attachments": {"A1": {"title": "The firm's"}}}
    written(tmp_path, {"format": 1} | programs, "firm.yaml")
    project = case_of(
        tmp_path,
        {"coating_system": "coat.yaml", "firm": "firm.yaml", "attachments": {"A1": {"title": "Ours"}}},
    ).project
    assert project.members["attachments",] == ("A1", "firm A1", "coating A1", "A2")
    assert project.value(("primer", "instructions")).title == "Theirs"
    assert project.value(("safety", "hazcom")).title == "The firm's"
    assert project.value(("attachments", "A1", "title")) == "Ours"
    place = project.place(("attachments", "A2", "title"))
    assert (place.file, place.path) == ("coat.yaml", "attachments.A2.title")


def test_a_side_file_may_name_a_paper_of_the_project(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "gloss": {"instructions": "A1"}}, "coat.yaml")
    change = {"coating_system": "coat.yaml", "attachments": {"A1": {"title": "Ours"}}}
    assert case_of(tmp_path, change).project.value(("gloss", "instructions")).title == "Ours"


def primer_dry(folder: Path, own: Any, theirs: Any) -> pipeline.JudgedProject:
    """A job whose coating source dries its primer `theirs` hours, and that plans `own`."""
    paper = {"instructions": "T1"}, {"T1": {"title": "Their instructions"}}
    coat = {"format": 1, "primer": {"dry_hours": theirs} | paper[0], "attachments": paper[1]}
    written(folder, coat, "coat.yaml")
    return case_of(folder, {"coating_system": "coat.yaml"} | ({"primer": {"dry_hours": own}} if own else {}))


HOURS = ("primer", "dry_hours")


# Hours of the project, hours of the coating source, the plan, and whether it falls short. A rule of ours.
@pytest.mark.parametrize(
    ("own", "theirs", "plan", "short"), [(None, 8, 8, False), (10, 8, 10, False), (6, 8, 6, True), (12, 16, 12, True)]
)
def test_the_coating_sources_figure_beats_practice_and_the_projects_own_is_the_plan(
    own: Any, theirs: int, plan: int, short: bool, tmp_path: Path
) -> None:
    case = primer_dry(tmp_path, own, theirs)
    assert case.project.value(HOURS) == plan
    assert case.project.maker[HOURS] == theirs
    value, source = limit_in_force(case.project, case.context.standards.limits["primer.dry"])
    assert (value, source.kind, source.reference) == (theirs, Kind.MAKER, "Their instructions (T1)")
    fired = {f.code: f for f in case.judgment.findings}
    assert ("FIN-03d" in fired) is short
    if short:
        assert (fired["FIN-03d"].found, fired["FIN-03d"].wanted) == (str(plan), str(theirs))
        assert "Their instructions (T1)" in str(fired["FIN-03d"].basis)
        assert fired["FIN-03d"].place.file == "project.yaml"


def test_without_a_source_common_practice_is_the_limit_and_the_plan(tmp_path: Path) -> None:
    case = case_of(tmp_path, {"primer": {"dry_hours": 8}})
    finding = {f.code: f for f in case.judgment.findings}["FIN-03d"]
    assert (finding.found, finding.wanted) == ("8", "12")
    assert str(finding.basis) == "common practice, no source"
    assert case_of(tmp_path).project.value(HOURS) == 12
    assert HOURS not in case_of(tmp_path).project.values


def test_every_default_is_a_typed_value_and_an_absent_value_is_told_by_its_path(tmp_path: Path) -> None:
    schema = project_schema()
    assert set(defaults(schema, "ip")) == {path for path, made in schema.fields.items() if made.default}
    with pytest.raises(Absent) as raised:
        case_of(tmp_path).project.value(("walls", "W1", "insulation", "kind"))
    assert raised.value.path == ("walls", "W1", "insulation", "kind")


def test_tbd_counts_as_absent_wherever_it_stands(tmp_path: Path) -> None:
    case = case_of(tmp_path, {"gloss": "tbd", "elevations": "tbd", "walls": {"W1": {"base_coat": {"passes": "tbd"}}}})
    waiting = {need for n in case.judgment.not_judged for need in n.needs}
    assert {"elevations", "walls.W1.base_coat.passes"} <= waiting
    assert not case.project.is_given(("elevations",))
    assert not case.project.is_given(("walls", "W1", "base_coat", "passes"))


def test_tbd_is_the_same_as_nothing_at_all(tmp_path: Path) -> None:
    tbd = case_of(tmp_path, {"gloss": {"coats": "tbd"}, "elevations": "tbd", "code": {"model": "tbd"}, "firm": "tbd"})
    assert tbd.judgment == case_of(tmp_path).judgment


def test_a_project_is_read_the_same_from_any_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    written(tmp_path, {"format": 1, "tank": {"lined": "yes"}}, "firm.yaml")
    far = case_of(tmp_path, {"firm": "firm.yaml"}).judgment
    monkeypatch.chdir(tmp_path)
    assert pipeline.check(Path("project.yaml")).judgment == far


def test_an_empty_member_is_given_only_where_its_mark_is_used(tmp_path: Path) -> None:
    empty = "sealants: {S1: {product: }}\ncolors: {C1: {number: }}\n"
    assert ("sealants",) not in project_of(tmp_path, empty).members
    members = project_of(tmp_path, f"{empty}joints: {{J1: {{sealant: S1}}}}\n").members
    assert members[("sealants",)] == ("S1",)
    assert ("colors",) not in members
