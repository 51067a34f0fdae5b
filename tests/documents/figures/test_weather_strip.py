"""The strip of a year: black area by hand, forms by cause, words that stand apart, and its text."""

import re
from datetime import datetime
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from specgen.documents.figures.weather_strip import KINDS, draw_strip
from specgen.standards import load_standards
from specgen.terminal.weather_text import FaceSummary, WeatherReport
from specgen.weather.faces import Asked, judge_faces
from specgen.weather.reading import read_hours
from specgen.weather.summary import summarize
from tests.documents.figures.sheets import SVG, ink_of
from tests.support import project_of
from tests.weather.hourly import PUBLIC_YEAR, plain_rows, write_rows

SITE = {"weather": {"max_spray_wind": "8 mph"}}
BOX = re.compile(r"M([\d.]+) ([\d.]+)H([\d.]+)V([\d.]+)H[\d.]+Z")
HOUR = 1.25  # millimeters


def report_of(folder: Path, hours: Path) -> WeatherReport:
    project, data = project_of(folder, SITE), read_hours(hours)
    (face,) = judge_faces(project, load_standards(), data, Asked("gloss", "air", True)).faces
    summary = summarize(data, face.causes)
    told = FaceSummary("", "", face.limits, face.causes, summary)
    return WeatherReport(project, data, "gloss", "air", True, (told,), summary, (), ())


def drawn(report: WeatherReport) -> Any:
    return etree.fromstring(draw_strip(report, report.faces[0]).svg.encode())


def boxes(sheet: Any) -> dict[str, float]:
    """The area of each kind in the strips, in square millimeters, by the path that draws it; fit is the first."""
    paths = [path for path in sheet.iter(f"{SVG}path") if path.getparent() is sheet and not path.get("stroke")]
    return {
        f"{number} {path.get('fill')}": sum(
            (float(right) - float(left)) * (float(foot) - float(top))
            for left, top, right, foot in BOX.findall(path.get("d"))
        )
        for number, path in enumerate(paths)
    }


def test_each_fit_hour_has_its_area_and_each_cause_a_form_of_its_own(tmp_path: Path) -> None:
    rows = plain_rows(240, rain={60: "0.1"}, wind=dict.fromkeys((130, 131, 132), "12"))
    sheet = drawn(report_of(tmp_path, write_rows(tmp_path, rows)))
    areas = boxes(sheet)
    # Ten days of 25 mm, the width of the sheet: 188 fit hours, 25 wet ones, 3 of wind and the 24 that are not known.
    assert areas == {
        "0 #000": pytest.approx(188 * 25 * HOUR),
        "1 none": pytest.approx(25 * 25 * HOUR),
        "2 none": pytest.approx(3 * 25 * HOUR),
        "3 #fff": pytest.approx(24 * 25 * HOUR),
    }
    hatchings = [path.get("d") for path in sheet.iter(f"{SVG}path") if path.get("stroke-width") == "0.13"]
    assert len(set(hatchings)) == len(hatchings) > 3


def test_every_area_of_a_year_lies_in_its_strip(tmp_path: Path) -> None:
    report = report_of(tmp_path, PUBLIC_YEAR)
    sheet = drawn(report)
    day = 250 / 365
    assert sum(boxes(sheet).values()) == pytest.approx(8760 * day * HOUR, rel=0.01)
    assert boxes(sheet)["0 #000"] == pytest.approx(report.whole.fit * day * HOUR, rel=0.01)


def test_no_two_words_overlap_and_the_legend_names_every_kind(tmp_path: Path) -> None:
    for hours in (PUBLIC_YEAR, write_rows(tmp_path, plain_rows(90, datetime(2027, 6, 29)))):
        sheet = drawn(report_of(tmp_path, hours))
        width, size = float(sheet.get("width")[:-2]), float(sheet.get("font-size"))
        found = []
        for text in sheet.iter(f"{SVG}text"):
            wide, rise, fall = ink_of(text.text, size, text.get("font-weight") == "bold")
            x, y = float(text.get("x")), float(text.get("y"))
            left = x - wide if text.get("text-anchor") == "end" else x
            assert left >= 0 and left + wide <= width
            found.append((text.text, left, y - rise, left + wide, y + fall))
        assert set(KINDS.values()) <= {text for text, *_ in found}
        for one, other in combinations(found, 2):
            apart = one[3] <= other[1] or other[3] <= one[1] or one[4] <= other[2] or other[4] <= one[2]
            assert apart, (one[0], other[0])


def test_the_text_has_the_numbers(tmp_path: Path) -> None:
    report = report_of(tmp_path, write_rows(tmp_path, plain_rows(48)))
    assert drawn(report).findtext(f"{SVG}desc") == (
        "Each day is a column, each hour of it a row from 0:00 at the top. 24 of 48 hours are fit for gloss, 24 hours "
        "not known. Fit hours by month: 2027-06 24."
    )


def test_more_than_a_year_goes_on_in_strips_below(tmp_path: Path) -> None:
    rows = [[f"{row[0]}", *row[1:]] for row in plain_rows(24 * 400, datetime(2027, 1, 1))]
    sheet = drawn(report_of(tmp_path, write_rows(tmp_path, rows)))
    assert len([path for path in sheet.iter(f"{SVG}path") if path.get("stroke-width") == "0.35"]) == 2
