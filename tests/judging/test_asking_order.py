"""In which order fields are asked for: what the stops of a wall wait for, counted by hand."""

from dataclasses import replace

from specgen.judging.asking_order import find_shortest_stop, order_fields
from specgen.judging.verdict import list_pending
from specgen.model.field import Path, dotted_path
from specgen.model.finding import NotJudged
from specgen.pipeline import JudgedProject, judge_project
from specgen.reading.draft import read_draft
from specgen.reading.schema import project_schema

BLANK = {("package", "purpose"): "design_draft"}
# Stops, a caution and a clause of another group; ATT-09b looks for a paper.
STOP, OTHER_STOP, CAUTION = ("ATT-01", "a"), ("INS-04", "c"), ("INS-02", "a")


def blank() -> JudgedProject:
    return judge_project(read_draft(BLANK, ("W1",), project_schema()))


def waiting(code: tuple[str, str], *needs: str) -> NotJudged:
    return NotJudged(*code, "W1", needs, ("W1",))


def ordered(*clauses: NotJudged) -> list[str]:
    case = blank()
    judgment = replace(case.judgment, not_judged=clauses)
    return [dotted_path(path) for path in order_fields(project_schema(), judgment, case.rules, "W1")]


def shortest(*clauses: NotJudged, most: int = 9, unknown: tuple[Path, ...] = ()) -> list[str]:
    case = blank()
    judgment = replace(case.judgment, not_judged=clauses)
    found = find_shortest_stop(case.project, judgment, case.rules, "W1", most, unknown)
    return [dotted_path(path) for path in found]


def test_the_name_comes_first_and_a_section_with_more_stops_before_one_with_fewer() -> None:
    told = ordered(
        waiting(CAUTION, "walls.W1.wrb.kind", "walls.W1.drainage.kind"),
        waiting(CAUTION, "walls.W1.wrb.kind"),
        waiting(STOP, "walls.W1.framing.kind", "walls.W1.drainage.kind"),
    )
    assert told[0] == "project.name"
    # Drainage: a stop and a caution; framing: a stop; the barrier: two cautions; then as the schema has them.
    assert told[1:5] == ["walls.W1.drainage.kind", "walls.W1.framing.kind", "walls.W1.wrb.kind", "code.model"]


def test_fields_of_one_section_are_asked_one_behind_the_other() -> None:
    told = ordered(waiting(STOP, "walls.W1.insulation.thickness"), waiting(CAUTION, "walls.W1.wrb.kind"))
    assert told[1:4] == ["walls.W1.insulation.kind", "walls.W1.insulation.thickness", "walls.W1.wrb.kind"]


def test_only_fields_of_the_stage_are_ordered_and_none_that_the_command_tells() -> None:
    told = ordered()
    assert "walls.W1.base_coat.class" not in told
    assert not {"format", "package.purpose"} & {*told}


def test_the_stop_that_the_fewest_answers_settle_is_found() -> None:
    two = waiting(STOP, "aesthetic_joint.depth", "walls.W1.insulation.rasp_allowance")
    one = waiting(OTHER_STOP, "contract.inspection_level")
    assert shortest(two, one) == ["contract.inspection_level"]
    assert shortest(two) == ["aesthetic_joint.depth", "walls.W1.insulation.rasp_allowance"]
    assert shortest(waiting(CAUTION, "contract.inspection_level")) == []
    assert shortest(two, most=1) == []
    assert shortest(two, one, unknown=(("contract", "inspection_level"),)) == shortest(two)


def test_a_stop_that_waits_for_a_list_a_mark_or_a_list_of_members_cannot_be_settled_by_a_line() -> None:
    assert shortest(waiting(STOP, "elevations")) == []
    assert shortest(waiting(STOP, "walls.W1.substrate.bond_report")) == []
    assert shortest(waiting(STOP, "coating_system")) == []


def test_what_keeps_a_wall_from_a_verdict_is_what_is_judged_of_it_at_any_time_or_owed_now() -> None:
    case = blank()
    clauses = (
        waiting(STOP, "walls.W1.attachment.cure_hours"),  # attachment is judged at any time
        waiting(("BAS-01", "a"), "walls.W1.base_coat.passes"),  # a base coat where its field is owed
        waiting(("BAS-01", "b"), "walls.W1.wrb.kind"),
        NotJudged("ATT-01", "a", "W2", ("walls.W2.wrb.kind",), ("W2",)),
    )
    pending = list_pending(replace(case.judgment, not_judged=clauses), "W1")
    assert pending == (clauses[0], clauses[2])
