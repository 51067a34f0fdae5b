"""The bars of the schedule: forms and dates as a reader sees them, on sheets that hold eight elevations."""

import re
from datetime import date, datetime, timedelta
from itertools import combinations
from pathlib import Path

import pytest
from lxml import etree

from specgen.documents.figures._bar_sheet import LEAST_SIZE, MOST_HEIGHT, WIDTH, Bar, BarRow, BarSheet
from specgen.documents.figures.drawings import draw_named
from specgen.model.block import Figure
from specgen.model.schedule import Activity, Schedule
from tests.documents.figures.test_sections import boxes_of, words_of
from tests.documents.support import context_of_example
from tests.documents.test_schedule_document import at, make, planned

SPACE = "{http://www.w3.org/2000/svg}"
STEPS = (
    *("substrate", "boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1"),
    *("smoothing_2", "primer", "release_primer", "gloss", "acceptance", "metal_caps", "sealant", "final_viewing"),
)


def crowd(faces: int) -> Schedule:
    """Every step on so many elevations, a day each."""
    day = datetime.fromisoformat("2027-05-03T07:00")
    made = [
        Activity(f"E{n}.{step}", step, "work", day + timedelta(n + k), day + timedelta(n + k, hours=8), f"E{n}", step)
        for n in range(1, faces + 1)
        for k, step in enumerate(STEPS)
    ]
    made.sort(key=lambda one: one.start)
    return Schedule(tuple(made), (made[-1].mark,), made[-1].end)


def paths_of(figure: Figure, kind: str) -> list[str]:
    """The strokes of a kind, those of the legend too."""
    root = etree.fromstring(figure.svg.encode())
    return [
        part for node in root.iter(f"{SPACE}path") if node.get("id") == kind for part in node.get("d").split("M")[1:]
    ]


def test_work_drying_release_and_weather_are_told_apart_by_form(tmp_path: Path) -> None:
    (sheet,) = draw_named("schedule_bars", planned(tmp_path))
    # Boards, primer and two days of gloss; each kind once more in the legend.
    counts = {kind: len(paths_of(sheet, kind)) for kind in ("work", "drying", "hold", "open", "weather")}
    assert counts == {"work": 5, "drying": 2, "hold": 2, "open": 2, "weather": 2}
    assert {"work in the shift", "drying, by the clock", "release of a hold point", "weather days"} <= set(
        words_of(sheet)
    )
    assert not paths_of(sheet, "wait") and "planned wait" not in words_of(sheet)


def test_a_planned_wait_is_a_broken_line(tmp_path: Path) -> None:
    wait = Activity("E1.boards.wait.0", "Wait", "drying", at("06-22"), at("06-25"), "E1", "boards")
    plan = make()
    (sheet,) = draw_named(
        "schedule_bars", planned(tmp_path, schedule=Schedule((*plan.activities, wait), plan.chain, plan.end))
    )
    assert len(paths_of(sheet, "wait")) == 2


def test_no_work_is_drawn_on_days_off(tmp_path: Path) -> None:
    # From Friday, June 25 to Monday, June 28: a stroke before the weekend and one behind it, and that of the legend.
    rasp = Activity("E1.rasp", "Rasp", "work", at("06-25", "10:00"), at("06-28", "08:00"), "E1", "rasp")
    (sheet,) = draw_named("schedule_bars", planned(tmp_path, schedule=Schedule((rasp,), (rasp.mark,), rasp.end)))
    assert len(paths_of(sheet, "work")) == 3


def test_nothing_is_told_by_color(tmp_path: Path) -> None:
    (sheet,) = draw_named("schedule_bars", planned(tmp_path))
    colors = set(re.findall(r'(?:fill|stroke)="(#[0-9a-f]+)"', sheet.svg))
    assert all(len(set(re.findall("..", color[1:] if len(color) == 7 else color[1:] * 2))) == 1 for color in colors)


def test_a_bar_stands_over_its_dates() -> None:
    # Four days of a plan from Monday 3 May, 172 mm wide: a day is 43 mm, and noon of the second one 64.5 from the left.
    bars = (Bar("work", at("05-03", "00:00"), at("05-04", "12:00")), Bar("hold", at("05-06"), at("05-06")))
    sheet = BarSheet((BarRow("Boards", bars=bars),), lambda day: day.weekday() >= 5)
    assert (sheet.days, sheet.per_day) == (4, 43)
    assert sheet.place(at("05-04", "12:00")) - sheet.place(at("05-03", "00:00")) == 64.5
    figure = sheet.finish("Schedule", "bars")
    assert [word for word in words_of(figure) if word.startswith("May")] == ["May 3", "May 4", "May 5", "May 6"]


def test_days_off_are_bands_where_a_day_is_wide_enough() -> None:
    def bands(days: int) -> int:
        end = datetime(2027, 5, 3) + timedelta(days)
        sheet = BarSheet((BarRow("A", bars=(Bar("work", datetime(2027, 5, 3), end),)),), _is_weekend)
        return etree.fromstring(sheet.finish("A", "A").svg.encode()).find(f"{SPACE}path").get("d").count("M")

    # Two weeks from a Monday have two weekends, and the legend has a band.
    assert bands(13) == 5


def _is_weekend(day: date) -> bool:
    return day.weekday() >= 5


def test_the_text_for_those_who_do_not_see_it_has_the_dates(tmp_path: Path) -> None:
    (sheet,) = draw_named("schedule_bars", planned(tmp_path))
    for told in (
        "Review, Mon Mar 1 to Mon Mar 15",
        "E1 South face:",
        "Insulation boards (governs), Mon Jun 21, 06:00 to Wed Jun 23, 09:15",
        "Weather days: 2 (governs), Mon Jul 5, 06:00 to Tue Jul 6, 16:00.",
    ):
        assert told in sheet.alt


def test_a_project_without_dates_has_no_bars() -> None:
    assert draw_named("schedule_bars", context_of_example("first-look")) == ()


@pytest.mark.parametrize("faces", [1, 2, 8, 40])
def test_many_elevations_go_on_sheets_that_fit_the_page(faces: int, tmp_path: Path) -> None:
    named = {f"E{n}": {"name": f"Face {n} of the long street side", "wall": "W1"} for n in range(1, faces + 1)}
    plain = {"elevations": named, "shade": "drop", "access": "drop"}
    sheets = draw_named("schedule_bars", planned(tmp_path, plain, crowd(faces)))
    # Two elevations of a head and 16 steps fill a sheet of 40 rows. Where one sheet does not hold all, the whole job
    # stands before them, a row for each elevation.
    assert len(sheets) == {1: 1, 2: 1, 8: 1 + 4, 40: 1 + 20}[faces]
    heads = [word for sheet in sheets for word in words_of(sheet) if word.startswith("E")]
    assert set(heads) >= {f"E{n} Face {n} of the long street side" for n in range(1, faces + 1)}
    for number, sheet in enumerate(sheets, 1):
        assert sheet.width == WIDTH and sheet.height <= MOST_HEIGHT
        if faces > 2:
            assert f"sheet {number} of {len(sheets)}" in sheet.caption[0].text


@pytest.mark.parametrize("example", ["clean", "metric"])
def test_words_are_large_enough_within_the_sheet_and_apart(example: str) -> None:
    for sheet in draw_named("schedule_bars", context_of_example(example)):
        assert float(etree.fromstring(sheet.svg.encode()).get("font-size")) >= LEAST_SIZE
        boxes = boxes_of(sheet)
        for word, left, top, right, bottom in boxes:
            assert left >= 0 and right <= sheet.width and top >= 0 and bottom <= sheet.height, word
        for one, other in combinations(boxes, 2):
            apart = one[3] <= other[1] or other[3] <= one[1] or one[4] <= other[2] or other[4] <= one[2]
            assert apart, (one[0], other[0])
