"""From files to one project: structure, types, side files, references; all faults in one run."""

from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.vocabulary.problem import Problem, Refused
from tests.support import SMALL, case_of, merged, written


def refused(folder: Path, change: Any) -> list[Problem]:
    with pytest.raises(Refused) as raised:
        case_of(folder, change)
    return list(raised.value.problems)


# Kind of field, path, a text that fits, a text that does not, and what is said of it.
KINDS = [
    ("integer", "gloss.coats", "2", "2.5", "no whole number"),
    ("integer", "gloss.coats", "2", "true", "no number"),
    ("integer", "gloss.coats", "2", "9", "lies above 6"),
    ("number", "gloss.dry_hours", "1.5", ".nan", "no number"),
    ("number", "gloss.dry_hours", "24", ".inf", "no number"),
    ("number", "gloss.dry_hours", "24", "24 h", "no number"),
    ("number", "gloss.dry_hours", "24", "9" * 40, "no number"),
    ("percent", "gloss.max_water", "8 %", "101", "lies above 50"),
    ("choice", "gloss.pattern", "cross_hatch", "cross-hatch", "no choice"),
    ("yes_no", "primer.tinted", "yes", "maybe", "neither yes nor no"),
    ("date", "schedule.work_start", "2027-03-01", "2027-02-29", "no date"),
    ("date", "schedule.work_start", "2028-02-29", "01/03/2027", "no date"),
    ("time", "schedule.shift_start", "06:30", "25:00", "no time of day"),
    ("quantity", "site.altitude", "5,200 ft", "5200", "has no unit"),
    ("quantity", "site.altitude", "1600 m", "1600 metres high", "not known"),
    ("quantity", "climate.hot_air", "95 °F", "95 psi", "no unit of temperature"),
    ("quantity", "climate.hot_air", "35 C", "500 F", "lies above"),
    ("bearing", "mockup.facing", "SSW", "up", "no compass point"),
    ("bearing", "mockup.facing", "200", "400", "outside 0 to 360"),
    ("file", "coating_system", "", "../x.yaml", "leaves the project folder"),
    ("file", "firm", "", "/etc/x.yaml", "leaves the project folder"),
    ("list", "site.surroundings", "[dust]", "dust", "a list is wanted"),
    ("list", "site.surroundings", "[dust]", "[dust, mud]", "no choice"),
    ("text", "project.number", "010", "[a]", "a single value is wanted"),
]


@pytest.mark.parametrize(("kind", "path", "good", "bad", "said"), KINDS, ids=[f"{k[0]}-{k[3][:12]}" for k in KINDS])
def test_a_field_takes_what_fits_and_tells_what_does_not(
    kind: str, path: str, good: str, bad: str, said: str, tmp_path: Path
) -> None:
    head = "format: 1\npackage: {purpose: design_draft}\n"
    wall = "walls: {W1: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}}\n"
    section, _, leaf = path.partition(".")

    def text(value: str) -> str:
        named = "project:\n  name: T\n" + (f"  {leaf}: {value}\n" if section == "project" else "")
        own = f"{section}:\n  {leaf}: {value}\n" if leaf else f"{section}: {value}\n"
        return head + wall + named + (own if section != "project" else "")

    if good:
        assert pipeline.check(written(tmp_path, text(good))).project.given(tuple(path.split(".")))
    with pytest.raises(Refused) as raised:
        pipeline.check(written(tmp_path, text(bad)))
    problem = raised.value.problems[0]
    assert said in problem.message
    assert problem.path.startswith(path)
    assert problem.line > 3


def test_an_unknown_key_gets_the_nearest_known_one(tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, {"walls": {"W1": {"atachment": {"method": "mechanical"}}}})
    assert (problem.path, problem.hint) == ("walls.W1.atachment", "did you mean attachment?")
    (problem,) = refused(tmp_path, {"Gloss": {"coats": 2}})
    assert problem.hint == "did you mean gloss?"


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"walls": ["W1"]}, "a mapping is wanted here, not a list"),
        ({"walls": {"W1": "concrete"}}, "a wall is a mapping"),
        ({"gloss": "two coats"}, "a mapping is wanted here"),
        ({"walls": {"W1": {"mesh": {"layers": {"a": {}}}}}}, "a list is wanted here"),
        ({"primer": {"coats": {"a": 1}}}, "a single value is wanted here"),
        ({"crews": {"red": {"rates": {"painting": "3 ft2/h"}}}}, "not known here"),
    ],
)
def test_a_wrong_shape_is_told(change: Any, said: str, tmp_path: Path) -> None:
    assert any(said in problem.message for problem in refused(tmp_path, change))


def test_only_these_are_refused_when_absent(tmp_path: Path) -> None:
    with pytest.raises(Refused) as raised:
        pipeline.check(written(tmp_path, "format: 1\n"))
    assert {p.path for p in raised.value.problems} == {
        "project.name",
        "package.purpose",
        "walls.W1.substrate.kind",
        "walls.W1.attachment.method",
    }


def test_one_whole_wall_is_enough(tmp_path: Path) -> None:
    assert case_of(tmp_path, {"walls": {"W2": {"substrate": {"kind": "tbd"}}}}).judgment.walls.keys() == {"W1", "W2"}


def test_another_format_is_refused(tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, {"format": 2})
    assert (problem.path, problem.hint) == ("format", "write format: 1")


def test_a_mark_that_no_member_has_is_told_with_the_nearest(tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, {"elevations": {"E1": {"wall": "W11"}}})
    assert "'W11' is the mark of no wall" in problem.message
    assert problem.hint == "did you mean W1?"


def test_every_fault_of_every_file_is_told_in_one_run(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "tank": {"volume": "2"}, "guns": {"G1": {"kind": "water"}}}, "firm.yaml")
    problems = refused(tmp_path, {"firm": "firm.yaml", "primmer": {}, "gloss": {"coats": "two"}})
    assert {(p.file, p.path) for p in problems} == {
        ("project.yaml", "primmer"),
        ("project.yaml", "gloss.coats"),
        ("firm.yaml", "guns.G1.kind"),
        ("firm.yaml", "tank.volume"),
    }


def test_a_missing_side_file_is_told_where_it_is_named(tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, {"coating_system": "coat.yaml"})
    assert "coat.yaml" in problem.path
    assert problem.file == "project.yaml"
    assert problem.line > 0


def test_a_missing_second_side_file_is_told_too(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "tank": {"lined": "yes"}}, "firm.yaml")
    (problem,) = refused(tmp_path, {"firm": "firm.yaml", "coating_system": "coat.yaml"})
    assert problem.path == "coating_system: coat.yaml"


def test_a_record_file_is_validated_and_holds_nothing_but_records(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "log": [{"date": "2027-06-15", "step": "gloss", "air": "61 F"}]}, "week.yaml")
    assert case_of(tmp_path, {"records": ["week.yaml"]}).judgment.walls
    written(tmp_path, {"format": 1, "log": [{"date": "2027-06-31"}], "tank": {"lined": "yes"}}, "week.yaml")
    assert {p.path for p in refused(tmp_path, {"records": ["week.yaml"]})} == {"log.0.date", "tank.lined"}
    assert refused(tmp_path, {"records": ["none.yaml"]})[0].path == "records.0: none.yaml"


def test_a_section_of_the_firm_stands_in_one_file_only(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "tank": {"lined": "yes"}}, "firm.yaml")
    (problem,) = refused(tmp_path, {"firm": "firm.yaml", "tank": {"volume": "2 gal"}})
    assert (problem.file, problem.path) == ("firm.yaml", "tank")
    assert "stands also in project.yaml, line" in problem.message


def test_safety_rules_and_safety_programs_may_stand_apart(tmp_path: Path) -> None:
    written(
        tmp_path, {"format": 1, "safety": {"hazcom": "F1"}, "attachments": {"F1": {"title": "Program"}}}, "firm.yaml"
    )
    project = case_of(tmp_path, {"firm": "firm.yaml", "safety": {"rules": "us_osha"}}).project
    assert project.value(("safety", "hazcom")).mark == "firm F1"


def test_a_field_of_another_file_is_told(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "walls": {"W1": {}}}, "firm.yaml")
    assert any("belongs in the project file" in p.message for p in refused(tmp_path, {"firm": "firm.yaml"}))


def test_papers_of_two_files_keep_apart(tmp_path: Path) -> None:
    written(
        tmp_path,
        {"format": 1, "primer": {"instructions": "A1"}, "attachments": {"A1": {"title": "Theirs"}}},
        "coat.yaml",
    )
    project = case_of(tmp_path, {"coating_system": "coat.yaml", "attachments": {"A1": {"title": "Ours"}}}).project
    assert project.value(("primer", "instructions")).title == "Theirs"
    assert project.value(("attachments", "A1", "title")) == "Ours"


def primer_dry(folder: Path, own: Any, theirs: Any) -> dict[str, Any]:
    written(
        folder,
        {
            "format": 1,
            "primer": {"dry_hours": theirs, "instructions": "T1"},
            "attachments": {"T1": {"title": "Their instructions"}},
        },
        "coat.yaml",
    )
    change = {"coating_system": "coat.yaml"} | ({"primer": {"dry_hours": own}} if own else {})
    return {f.code: f for f in case_of(folder, change).judgment.findings}


def test_the_coating_sources_figure_replaces_common_practice(tmp_path: Path) -> None:
    # Common practice asks for 12 h, no source; this source for 8.
    assert "FIN-03d" not in primer_dry(tmp_path, None, 8)
    assert "FIN-03d" not in primer_dry(tmp_path, 10, 8)
    finding = primer_dry(tmp_path, 6, 8)["FIN-03d"]
    assert (finding.found, finding.wanted) == ("6", "8")
    assert "Their instructions (coating T1)" in str(finding.basis)


def test_without_a_source_common_practice_is_the_limit(tmp_path: Path) -> None:
    finding = {f.code: f for f in case_of(tmp_path, {"primer": {"dry_hours": 8}}).judgment.findings}["FIN-03d"]
    assert (finding.found, finding.wanted) == ("8", "12")
    assert str(finding.basis) == "common practice, no source"


def test_tbd_counts_as_absent_wherever_it_stands(tmp_path: Path) -> None:
    case = case_of(tmp_path, {"gloss": "tbd", "elevations": "tbd", "walls": {"W1": {"base_coat": {"passes": "tbd"}}}})
    waiting = {need for n in case.judgment.not_judged for need in n.needs}
    assert {"elevations", "walls.W1.base_coat.passes"} <= waiting


def test_with_one_member_a_reference_goes_without_saying(tmp_path: Path) -> None:
    project = case_of(tmp_path, {"elevations": {"E1": {"width": "9 ft"}}}).project
    assert project.value(("elevations", "E1", "wall")).mark == "W1"
    two = merged(SMALL, {"walls": {"W2": SMALL["walls"]["W1"]}, "elevations": {"E1": {"width": "9 ft"}}})
    assert pipeline.check(written(tmp_path, two)).project.get(("elevations", "E1", "wall")) is None


def test_every_entry_of_the_schema_fits_itself() -> None:
    from specgen.vocabulary.fitting import fitted

    for field in pipeline.schema().fields.values():
        assert field.label and field.owed_by and field.why and field.ring
        for text in filter(None, [field.default, field.least, field.most]):
            if field.kind not in ("bearing",):
                assert fitted(field, text)[1] is None, field.path
        if field.kind not in ("list", "reference"):
            assert fitted(field, field.example)[1] is None, field.path
