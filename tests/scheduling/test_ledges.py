"""Ledges of board added to the rasped face, dated on paper.

The band is bonded once the face is rasped, cures as the boards do, and is rasped before the face is released: common
practice, no source. An hour for each of the two works is the least (common practice, no source).
"""

from pathlib import Path
from typing import Any

from tests.scheduling.jobs import dates, find, schedule_of

LEDGE: dict[str, Any] = {"kind": "ledge", "elevation": "E1", "width": "6 ft", "height": "1 ft"}
ONE_FACE: dict[str, Any] = {"elevations": {"E2": "drop"}}


def test_a_ledge_is_bonded_cured_and_rasped_before_the_face_is_released(tmp_path: Path) -> None:
    # The face is rasped on Tuesday from 11 to 13. 6 sq ft at 90 sq ft/h are less than an hour: bonded until 14, cured
    # for 24 h, rasped on Wednesday from 14 to 15; released on Thursday at 7, as the shift is over.
    made = schedule_of(tmp_path, {**ONE_FACE, "details": {"L1": LEDGE}})
    assert dates(made, "E1.rasp", "E1.rasp.ledge.1", "E1.rasp.ledge.1.dry", "E1.rasp.ledge.2", "E1.rasp.hold") == [
        "06-29 11:00 to 06-29 13:00",
        "06-29 13:00 to 06-29 14:00",
        "06-29 14:00 to 06-30 14:00",
        "06-30 14:00 to 06-30 15:00",
        "07-01 07:00 to 07-01 07:00",
    ]
    assert {find(made, f"E1.rasp.ledge.{part}").row for part in ("1", "1.dry", "2")} == {"Ledge L1"}


def test_ledges_of_a_face_are_bonded_one_after_the_other(tmp_path: Path) -> None:
    # 180 sq ft at 90 sq ft/h take 2 h, the small one an hour.
    large = {**LEDGE, "width": "18 ft", "height": "10 ft"}
    made = schedule_of(tmp_path, {**ONE_FACE, "details": {"L1": LEDGE, "L2": large}})
    assert find(made, "E1.rasp.ledge.1").row == "Ledges L1, L2"
    assert dates(made, "E1.rasp.ledge.1") == ["06-29 13:00 to 06-30 08:00"]


def test_a_ledge_under_a_cap_is_no_added_board(tmp_path: Path) -> None:
    made = schedule_of(tmp_path, {**ONE_FACE, "details": {"L1": {**LEDGE, "cap": True}}})
    assert dates(made, "E1.rasp.hold") == ["06-29 13:00 to 06-29 13:00"]
