"""The history of a panel from entries of a few days, sorted by hand."""

from datetime import datetime
from pathlib import Path

from specgen.model.record_judgment import RecordJudgment
from specgen.model.status import PanelHistory
from specgen.recording.panel_history import find_history, list_panels
from specgen.standards import load_standards
from tests.recording.records import inspection, job, log, release

PANELS = ("E1-A1", "E1-A2")
ENTRIES = (
    log("2027-06-14", "primer", "07:00-09:00", panels=PANELS, crew="red", batch="P-11"),
    log("2027-06-14", "primer", "06:45", pail="1", batch="P-11", cup_time=28),
    {"in": "log", "date": "2027-06-14", "elevation": "E1", "started_at": "06:30", "air": 60},
    {"in": "log", "date": "2027-06-14", "elevation": "E1", "started_at": "08:00", "air": 63},
    {"in": "log", "date": "2027-06-14", "elevation": "E2", "started_at": "08:10", "air": 70},
    release("2027-06-15", "primer", "07:00"),
    log("2027-06-16", "gloss", "07:00-08:00", panels=PANELS, coat=1),
    {"in": "log", "date": "2027-06-16", "elevation": "E1", "started_at": "06:30", "air": 58},
    log("2027-06-16", "gloss", "06:40", pail="2", coat=1, cup_time=30),
    log("2027-06-16", "gloss", "08:50", pail="3", coat=2, cup_time=31),
    log("2027-06-16", "gloss", "09:00-10:00", panels=PANELS, coat=2),
    log("2027-06-17", "gloss", "09:00-10:00", panels=("E1-A3",), coat=1, masked_panels=("E1-A1",)),
    inspection("2027-06-18", "acceptance", "refused"),
    log("2027-06-21", "gloss", "07:00-08:00", panels=("E1-A1",), coat=1),
)


def history(folder: Path, panel: str, at: str = "") -> PanelHistory:
    project, moment = job(folder, *ENTRIES), datetime.fromisoformat(at) if at else None
    return find_history(project, load_standards(), RecordJudgment(), moment, panel, "E1", in_layout=True)


def test_each_pass_over_a_panel_has_its_pails_and_the_readings_of_its_hours(tmp_path: Path) -> None:
    primer, first, second, _ = history(tmp_path, "E1-A1").passes
    assert (primer.step.name, primer.ended) == ("primer", datetime(2027, 6, 14, 9))
    assert [reading.values["air"] for reading in primer.readings] == [63]  # that of 08:00, within 07:00 to 09:00
    assert [reading.values["air"] for reading in first.readings] == [58]  # none within: the last one before
    assert [[pail.values["pail"] for pail in one.pails] for one in (primer, first, second)] == [["1"], ["2"], ["3"]]


def test_a_pass_after_the_finish_was_inspected_is_a_recoat(tmp_path: Path) -> None:
    assert [one.again for one in history(tmp_path, "E1-A1").passes] == [False, False, False, True]
    assert [one.again for one in history(tmp_path, "E1-A2").passes] == [False, False, False]


def test_releases_and_masking_are_those_of_the_panel(tmp_path: Path) -> None:
    found = history(tmp_path, "E1-A1")
    assert [(one.collection, one.values["step"]) for one in found.signed] == [
        ("release", "primer"),
        ("inspection", "acceptance"),
    ]
    assert [entry.values["date"].day for entry in found.masked] == [17]
    assert not history(tmp_path, "E1-A2").masked


def test_what_was_refused_last_counts_against_the_panel(tmp_path: Path) -> None:
    assert history(tmp_path, "E1-A1").failed
    assert not history(tmp_path, "E1-A1", at="2027-06-17T00:00").failed


def test_only_entries_until_the_moment_count(tmp_path: Path) -> None:
    assert len(history(tmp_path, "E1-A1", at="2027-06-16T08:30").passes) == 2
    assert history(tmp_path, "E1-A1", at="2027-06-01T00:00").passes == ()


def test_panels_are_those_of_the_layouts_and_of_the_log(tmp_path: Path) -> None:
    found = list_panels(job(tmp_path, *ENTRIES), {"E2": ("E2-A1",)})
    assert found == {"E2-A1": "E2", "E1-A1": "E1", "E1-A2": "E1", "E1-A3": "E1"}
