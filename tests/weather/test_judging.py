"""Hours by hand: limits inclusive, the hold through the next 24 hours, what is missing, causes and windows."""

from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from specgen.model.problem import Refused
from specgen.standards import load_standards
from specgen.weather.faces import Asked, FaceHours, Judged, judge_faces
from specgen.weather.judging import BIT, first_cause, list_causes
from specgen.weather.reading import read_hours
from specgen.weather.summary import Window, count_months, find_windows, join_faces
from specgen.weather.sunshine import find_sunshine, list_dark
from tests.support import project_of
from tests.weather.hourly import START, plain_rows, write_rows

SHIFT = {"schedule": {"shift_start": "06:00", "shift_hours": 10}}
SITE = {
    "weather": {"max_spray_wind": "8 mph"},
    "site": {"latitude": "40 deg"},
    "elevations": {"E1": {"facing": "N"}},
}


def judge(
    folder: Path, rows: list[list[str]], change: Any = None, all_hours: bool = True, step: str = "gloss"
) -> Judged:
    project = project_of(folder, SITE | (change or {}))
    data = read_hours(write_rows(folder, rows))
    return judge_faces(project, load_standards(), data, Asked(step, "air", all_hours))


def only(judged: Judged) -> FaceHours:
    (face,) = judged.faces
    return face


def fit(face: FaceHours) -> list[int]:
    return [at for at, bits in enumerate(face.causes) if not bits]


def test_every_hour_is_fit_but_the_last_24(tmp_path: Path) -> None:
    face = only(judge(tmp_path, plain_rows(48)))
    assert fit(face) == list(range(24))
    assert {tuple(list_causes(bits)) for bits in face.causes[24:]} == {("end of file",)}


# A reading of hour 10, whether it is fit, and what else it takes: the limits are those of the gloss, each inclusive.
EDGES = [
    ({"air": {10: "50"}}, True, ""),
    ({"air": {10: "49.9"}}, False, "air cold"),
    ({"air": {10: "90"}}, True, ""),
    ({"air": {10: "90.1"}}, False, "wall hot"),
    ({"humidity": {10: "85"}, "air": {10: "70"}}, False, "near dew point"),
    ({"humidity": {10: "85.1"}}, False, "humid"),
    ({"wind": {10: "8"}}, True, ""),
    ({"wind": {10: "8.1"}}, False, "wind"),
    ({"wind": {10: ""}}, False, "reading missing"),
    ({"wind": {10: "1048"}}, False, "reading missing"),
    ({"rain": {10: "0.01"}}, False, "rain"),
]


@pytest.mark.parametrize(("change", "is_fit", "cause"), EDGES)
def test_a_limit_itself_is_within(change: Any, is_fit: bool, cause: str, tmp_path: Path) -> None:
    face = only(judge(tmp_path, plain_rows(48, **change)))
    assert (not face.causes[10]) is is_fit
    assert cause in ("", *list_causes(face.causes[10]))


@pytest.mark.parametrize(("column", "cell", "cause"), [("air", "49", "cold in hold"), ("rain", "0.1", "rain in hold")])
def test_the_hold_is_this_hour_and_each_of_the_next_24(column: str, cell: str, cause: str, tmp_path: Path) -> None:
    face = only(judge(tmp_path, plain_rows(72, **{column: {40: cell}})))
    # Hours 16 to 39 have hour 40 in their next 24; 15 has not, and 41 is past it.
    assert fit(face) == [*range(16), *range(41, 48)]
    assert list_causes(face.causes[16]) == [cause]


def test_an_hour_missing_in_the_hold_leaves_it_unknown_but_not_what_fails_anyway(tmp_path: Path) -> None:
    rows = plain_rows(72, wind={20: "12"})
    del rows[40]
    face = only(judge(tmp_path, rows))
    assert fit(face) == [*range(16), *range(41, 48)]
    assert list_causes(face.causes[30]) == ["reading missing"]
    assert list_causes(face.causes[20]) == ["wind"]
    assert list_causes(face.causes[40]) == ["reading missing"]


def test_boards_wait_for_a_day_after_frost(tmp_path: Path) -> None:
    face = only(judge(tmp_path, plain_rows(80, air={10: "32"}), step="boards"))
    assert fit(face) == list(range(35, 56))  # frost in hour 10, gone for 24 hours behind hour 34
    assert "frost before" in list_causes(face.causes[34])


def test_the_shift_may_cross_midnight(tmp_path: Path) -> None:
    night = {"schedule": {"shift_start": "22:00", "shift_hours": 4, "night_work": True}}
    face = only(judge(tmp_path, plain_rows(72), night, all_hours=False))
    assert {START.hour + at % 24 for at in fit(face)} == {22, 23, 0, 1}


def test_only_whole_hours_of_the_shift_count(tmp_path: Path) -> None:
    half = {
        "schedule": {"shift_start": "06:30", "shift_hours": 2.5},
        "shade": {"S": {"elevation": "E1", "kind": "tent"}},
    }
    face = only(judge(tmp_path, plain_rows(48), half, all_hours=False))
    assert fit(face) == [7, 8]


def test_a_tent_keeps_rain_off_and_a_heated_one_the_cold(tmp_path: Path) -> None:
    rows = plain_rows(48, rain={12: "0.2"}, air={13: "45"})
    tent = {"shade": {"S": {"elevation": "E1", "kind": "tent", "heated": False}}} | SHIFT
    heated = {"shade": {"S": {"elevation": "E1", "kind": "tent", "heated": True}}} | SHIFT
    cold = only(judge(tmp_path, rows, tent, all_hours=False))
    assert list_causes(cold.causes[8]) == ["cold in hold"]
    # Nothing of the hold counts in it, so that the last hours of the file are known too.
    assert fit(only(judge(tmp_path, rows, heated, all_hours=False))) == [*range(6, 16), *range(30, 40)]
    assert list_causes(only(judge(tmp_path, rows, heated)).causes[8]) == ["rain in hold", "cold in hold"]


def test_a_wall_in_the_sun_is_lost_and_one_behind_cloth_is_not(tmp_path: Path) -> None:
    south = {"elevations": {"E1": {"facing": "S"}}} | SHIFT
    face = only(judge(tmp_path, plain_rows(48), south, all_hours=False))
    # At 40 degrees north on 14 June the sun comes round to the south wall some minutes after 8:00 solar time and leaves
    # it before 16:00: it stands due east when its height has the sine sin 23.3 / sin 40, which is at 8:06.
    assert fit(face) == [6, 7]
    cloth = south | {"shade": {"S": {"elevation": "E1", "kind": "shade_cloth"}}}
    assert fit(only(judge(tmp_path, plain_rows(48), cloth, all_hours=False))) == list(range(6, 16))


def test_observed_shade_stands_in_place_of_the_sun_of_its_month(tmp_path: Path) -> None:
    seen = [{"month": "jun", "from": "09:00", "to": "11:00"}]
    south = {"elevations": {"E1": {"facing": "S", "shade_hours": seen}}} | SHIFT
    assert fit(only(judge(tmp_path, plain_rows(48), south, all_hours=False))) == [9, 10]


def test_beyond_the_polar_circle_the_sun_does_not_set_and_does_not_rise(tmp_path: Path) -> None:
    june = read_hours(write_rows(tmp_path, plain_rows(24, datetime(2027, 6, 21))))
    assert not any(list_dark(find_sunshine(june, 70)))
    winter = read_hours(write_rows(tmp_path, plain_rows(24, datetime(2027, 12, 21))))
    assert all(list_dark(find_sunshine(winter, 70)))
    # Just outside it the sun of December comes up around noon.
    polar = SHIFT | {"site": {"latitude": "66 deg"}, "elevations": {"E1": {"facing": "N"}}}
    december = only(judge(tmp_path, plain_rows(48, datetime(2027, 12, 21)), polar, all_hours=False))
    assert [at for at in range(6, 16) if "dark" not in list_causes(december.causes[at])] == [11, 12]


def test_what_an_elevation_lacks_is_told_and_the_others_are_judged(tmp_path: Path) -> None:
    two = SHIFT | {"elevations": {"E1": {"facing": "N"}, "E2": {"name": "Alley"}}}
    judged = judge(tmp_path, plain_rows(48), two, all_hours=False)
    assert [face.elevation for face in judged.faces] == ["E1"]
    assert judged.left_out == ("E2 is not judged (give elevations.E2.facing, or --all-hours)",)
    with pytest.raises(Refused, match="give schedule.shift_start, schedule.shift_hours, or --all-hours"):
        judge(tmp_path, plain_rows(48), all_hours=False)


def test_a_step_that_there_is_not_or_has_no_limits_is_refused(tmp_path: Path) -> None:
    for step, told in (
        ("glos", "did you mean gloss?"),
        ("equipment", "has no weather limits"),
        ("heavy_mesh", "has no step"),
    ):
        with pytest.raises(Refused, match=told):
            judge(tmp_path, plain_rows(48), step=step)


def test_a_modeled_wall_needs_its_color(tmp_path: Path) -> None:
    project = project_of(tmp_path, SITE)
    data = read_hours(write_rows(tmp_path, plain_rows(48)))
    with pytest.raises(Refused, match="E1 is not judged"):
        judge_faces(project, load_standards(), data, Asked("gloss", "model", True))
    with pytest.raises(Refused, match="has no column surface"):
        judge_faces(project, load_standards(), data, Asked("gloss", "reading", True))


STARTS = [datetime(2027, 6, 14, hour) for hour in range(6, 16)]
WIND, SHIFT_BIT, LAST, GONE = (BIT[cause] for cause in ("wind", "outside shift", "end of file", "reading missing"))


def test_windows_are_told_with_what_ended_them() -> None:
    causes = [0, 0, WIND | BIT["humid"], 0, SHIFT_BIT | WIND, 0, 0, LAST, GONE, 0]
    assert find_windows(STARTS, causes) == [
        Window(datetime(2027, 6, 14, 6), datetime(2027, 6, 14, 8), 2, "humid, wind"),
        Window(datetime(2027, 6, 14, 9), datetime(2027, 6, 14, 10), 1, "end of shift"),
        Window(datetime(2027, 6, 14, 11), datetime(2027, 6, 14, 13), 2, "end of file"),
        Window(datetime(2027, 6, 14, 15), datetime(2027, 6, 14, 16), 1, "end of file"),
    ]
    assert find_windows(STARTS[:2], [WIND, GONE]) == []


def test_months_count_each_hour_once_by_the_first_cause() -> None:
    causes = [0, 0, WIND | BIT["rain"], 0, SHIFT_BIT | WIND, WIND, LAST | WIND, LAST, GONE, GONE]
    (month,) = count_months(STARTS, causes).values()
    assert (month.worked, month.fit, month.unknown, month.lost) == (9, 3, 4, {"rain": 1, "wind": 1})
    assert first_cause(LAST | WIND) == "end of file"


def test_several_faces_are_fit_where_any_is() -> None:
    joined = join_faces([[0, WIND, WIND, SHIFT_BIT, WIND], [WIND, 0, GONE, SHIFT_BIT, BIT["rain"]]])
    assert joined == [0, 0, GONE, SHIFT_BIT, WIND | BIT["rain"]]
