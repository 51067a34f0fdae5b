"""Primer and gloss: the release of the primer, the second coat, recoats, panels.

Worked out by hand beside each; the order of the work is common practice, no source.
"""

from datetime import datetime
from pathlib import Path

from specgen.model.status import StepState
from specgen.pipeline import judge_entries
from tests.recording.records import area_of, job, log, release, state_of, status, step_of, texts

PRIMED = (log("2027-06-14", "primer", "07:00-09:00"), release("2027-06-15", "primer", "01:00"))  # 9 and 16 h
COAT_1 = log("2027-06-16", "gloss", "07:00-08:00", coat=1)
COAT_2 = log("2027-06-16", "gloss", "09:00-10:00", coat=2)


def test_the_release_of_the_primer_is_that_of_its_work(tmp_path: Path) -> None:
    found = status(tmp_path, PRIMED[0])
    assert [state_of(found, step) for step in ("primer", "release_primer")] == [StepState.DRIES] * 2
    assert step_of(found, "release_primer").until == datetime(2027, 6, 15, 1)
    dry = status(tmp_path, PRIMED[0], at="2027-06-15T01:00")
    assert [state_of(dry, step) for step in ("primer", "release_primer")] == [StepState.DONE, StepState.WAITS]
    assert state_of(status(tmp_path, *PRIMED), "release_primer") is StepState.RELEASED


def test_gloss_is_not_over_before_its_last_coat(tmp_path: Path) -> None:
    between = status(tmp_path, *PRIMED, COAT_1, at="2027-06-16T08:30")
    assert state_of(between, "gloss") is StepState.DRIES
    assert area_of(between, "gloss").until == datetime(2027, 6, 16, 9)  # 1 h until touch-dry
    dry = status(tmp_path, *PRIMED, COAT_1, at="2027-06-16T09:00")
    assert state_of(dry, "gloss") is StepState.UNDER_WAY
    assert area_of(dry, "gloss").coats == (1, 2)
    both = status(tmp_path, *PRIMED, COAT_1, COAT_2)
    assert step_of(both, "gloss").until == datetime(2027, 6, 17, 16)  # 10:00 and 30 h
    assert state_of(status(tmp_path, *PRIMED, COAT_1, COAT_2, at="2027-06-17T16:00"), "gloss") is StepState.DONE


def test_a_second_coat_before_the_first_is_touch_dry_was_begun_too_early(tmp_path: Path) -> None:
    early = status(tmp_path, *PRIMED, COAT_1, log("2027-06-16", "gloss", "08:59-10:00", coat=2))
    assert "coat 2 begun 2027-06-16 08:59, before coat 1 was touch-dry" in texts(area_of(early, "gloss").early)
    assert not early.is_sound
    assert not area_of(status(tmp_path, *PRIMED, COAT_1, COAT_2), "gloss").early


def test_a_second_coat_that_a_clause_tells_of_is_told_once(tmp_path: Path) -> None:
    entries = (*PRIMED, COAT_1, log("2027-06-16", "gloss", "08:59-10:00", coat=2))
    judgment = judge_entries(job(tmp_path, *entries))
    (one,) = (one for one in judgment.nonconformances if one.code == "FIN-07i")
    found = area_of(status(tmp_path, *entries, judgment=judgment), "gloss")
    assert f"nonconformance {one.number}, FIN-07i" in texts(found.reasons)
    assert "touch-dry" not in texts(found.early)


def test_what_is_read_when_a_pass_is_over_stands_against_it_from_its_end(tmp_path: Path) -> None:
    entries = (*PRIMED, COAT_1 | {"equipment_cleaned": False})
    judgment = judge_entries(job(tmp_path, *entries))
    under_way, over = (
        area_of(status(tmp_path, *entries, at=f"2027-06-16T{at}", judgment=judgment), "gloss")
        for at in ("07:59", "08:00")
    )
    assert "AIR-03f" not in texts(under_way.reasons)
    assert "AIR-03f" in texts(over.reasons)


def test_panels_are_held_against_the_first_coat_of_their_own(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        *PRIMED,
        log("2027-06-16", "gloss", "07:00-08:00", coat=1, panels=("E1-A1",)),
        log("2027-06-16", "gloss", "08:00-09:00", coat=1, panels=("E1-A2",)),
        log("2027-06-16", "gloss", "09:00-09:30", coat=2, panels=("E1-A1",)),
    )
    assert not area_of(found, "gloss").early


def test_a_panel_that_is_recoated_after_its_release_counts_by_its_later_pass(tmp_path: Path) -> None:
    panels = ("E1-A1", "E1-A2")
    coats = [log("2027-06-16", "gloss", h, coat=n, panels=panels) for n, h in ((1, "07:00-08:00"), (2, "09:00-10:00"))]
    signed = release("2027-06-18", "gloss", "10:00")
    recoat = log("2027-06-21", "gloss", "07:00-08:00", coat=1, panels=("E1-A2",))
    found = status(tmp_path, *PRIMED, *coats, signed, recoat)
    first, second = step_of(found, "gloss").areas
    assert (first.state, first.panels) == (StepState.RELEASED, panels)
    assert (second.state, second.panels, second.again) == (StepState.DRIES, ("E1-A2",), True)
    assert second.until == datetime(2027, 6, 22, 14)  # 8:00 and 30 h
    assert state_of(found, "gloss") is StepState.DRIES
    again = status(tmp_path, *PRIMED, *coats, signed, recoat, release("2027-06-22", "gloss", "14:00"))
    assert state_of(again, "gloss") is StepState.RELEASED


def test_a_face_that_is_worked_anew_as_a_whole_stands_by_its_later_work_alone(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-10", "mesh", "07:00-09:00"),
        release("2027-06-11", "mesh", "08:00", defects=("mesh_visible",)),
        log("2027-06-12", "mesh", "07:00-09:00"),
        release("2027-06-14", "mesh", "08:00"),
    )
    (area,) = step_of(found, "mesh").areas
    assert (area.state, area.again) == (StepState.RELEASED, True)


def test_panels_of_the_layout_that_no_pass_names_are_missing(tmp_path: Path) -> None:
    def list_panels(elevation: str) -> tuple[str, ...]:
        return (f"{elevation}-A1", f"{elevation}-A2")

    found = status(tmp_path, log("2027-06-14", "primer", "07:00-09:00", panels=("E1-A1",)), panels=list_panels)
    assert step_of(found, "primer").missing == ("E1-A2",)
    assert state_of(found, "primer") is StepState.UNDER_WAY
    both = status(tmp_path, log("2027-06-14", "primer", "07:00-09:00", panels=("E1-A1", "E1-A2")), panels=list_panels)
    assert state_of(both, "primer") is StepState.DRIES


def test_readings_and_pails_begin_no_pass_of_their_own(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        *PRIMED,
        COAT_1,
        COAT_2,
        log("2027-06-16", "gloss", "11:00", air=60, surface=58),
        log("2027-06-16", "gloss", pail="3", cup_time=30),
        at="2027-06-16T23:59",
    )
    (area,) = step_of(found, "gloss").areas
    assert area.ended == datetime(2027, 6, 16, 10)
    assert area.state is StepState.DRIES
