"""The days that hang on sealing and viewing: test beads that must cure, and a viewing that needs a face out of the sun.

Dates by hand from the calendar of 2027.
"""

from pathlib import Path
from typing import Any

from specgen.model.schedule import Activity, Schedule
from tests.documents.support import context_of_example
from tests.documents.test_schedule_document import at, planned, rows_behind
from tests.documents.test_site_record import written_as_draft
from tests.support import merged

JOINTS: dict[str, Any] = {
    "sealants": {"S1": {"pull_cure_days": 14}},
    "joints": {
        "J1": {"kind": "opening_perimeter", "sealant": "S1", "elevation": "E1"},
        "J2": {"kind": "floor_line", "sealant": "S1", "elevation": "E2"},
    },
}


def sealing(*faces: str) -> Schedule:
    """The sealing of some faces, of each on a day of its own from June 28 on."""
    days = {face: f"06-{28 + number}" for number, face in enumerate(faces)}
    works = tuple(
        Activity(f"{face}.sealant", "Sealant joints", "work", at(day), at(day, "10:00"), face, "sealant", "joints")
        for face, day in days.items()
    )
    return Schedule(works, (works[-1].mark,), works[-1].end)


# ASTM C1521 tests sealant in place when it has cured; that a test bead comes first: common practice, no source.
def test_test_beads_are_placed_as_long_before_sealing_as_they_cure(tmp_path: Path) -> None:
    rows = {row[0]: row[1] for row in rows_behind(planned(tmp_path, JOINTS, sealing("E1", "E2")), "Calendar")}
    # 14 days before June 28 are June 14; a bead between board and board alone needs none.
    told = rows["Sealant test beads placed, latest"]
    assert told.startswith("E1 Mon Jun 14, 2027; 14 days")
    (tmp_path / "bare").mkdir()
    bare = merged(JOINTS, {"joints": {"J1": {"kind": "floor_line"}}})
    assert "Sealant test beads placed, latest" not in dict(
        row[:2] for row in rows_behind(planned(tmp_path / "bare", bare, sealing("E1")), "Calendar")
    )


# Common practice, no source: a coat waits in the weather no longer than its manufacturer says, who is asked before; and
# a face that the sun is on from the first hour of the shift to the last is viewed outside it.
def test_a_draft_asks_how_long_the_smoothing_coat_may_stand_open_and_holds_no_viewing_in_the_sun() -> None:
    pages = written_as_draft(context_of_example("metric"))
    asked = "[Maximum time open of the smoothing coat]"
    assert f"open until spraying, from August 16, 2027; {asked}" in pages["D14"]
    assert (
        "How many days may the smoothing coat stand in the weather before primer?"
        in pages["D19"].partition("\nFinish manufacturer")[2]
    )
    lines = pages["D14"].splitlines()
    (calendar,) = (line for line in lines if line.startswith("Viewing without direct sun, E1 | "))
    assert "final viewing, September: no hour of the shift; view on that day before or after the shift" in calendar
    viewed = {line[:2]: line.split(" | ")[-2] for line in lines if " | Final viewing | " in line}
    # In the week of September 6: a day without an hour, and a day with one.
    assert viewed == {"E1": "Fri Sep 10", "E2": "Wed Sep 15, 08:30"}
