"""Trends: what is drawn of the readings, and what the figure says without being seen."""

import re
from datetime import date, time, timedelta
from fractions import Fraction
from typing import Any

import pytest
from lxml import etree

from specgen.documents.figures.record_trends import draw, tell_not_drawn
from specgen.model.block import Figure
from tests.documents.figures.sheets import SVG
from tests.documents.records.entries import DAY, context_with, documents_of, make_entries, q

PAIL = {"date": DAY, "elevation": "E1", "step": "gloss", "batch": "B-204"}


def pails(*seconds: str) -> list[tuple[str, dict[str, Any]]]:
    return [("log", {**PAIL, "pail": str(n), "cup_time": q(of, "s")}) for n, of in enumerate(seconds, 1)]


def figures_of(*given: tuple[str, dict[str, Any]], example: str = "clean") -> dict[str, Figure]:
    figures = draw(context_with(make_entries(*given), example))
    return {figure.caption[0].text: figure for figure in figures}  # type: ignore[union-attr]


def test_a_reading_beyond_its_limit_is_a_filled_triangle_and_one_within_an_open_circle() -> None:
    # The window of gloss in the example: 27 to 33 s.
    figure = figures_of(*pails("30", "33", "36", "26.9"))["Cup time after water, gloss, s"]
    root = etree.fromstring(figure.svg.encode())
    paths = [path.get("d") for path in root.iter(f"{SVG}path")]
    triangles = [path for path in paths if re.fullmatch(r"M[\d. ]+L[\d. ]+L[\d. ]+Z", path)]
    circles = [path for path in paths if path.count("L") == 11]
    assert (len(triangles), len(circles)) == (2 + 1, 2 + 1)  # and one of each in the key
    assert "outside 2" in figure.alt


def test_the_text_of_a_figure_has_its_numbers_and_limits() -> None:
    figure = figures_of(*pails("30", "33", "36"))["Cup time after water, gloss, s"]
    assert figure.alt == (
        "Cup time after water, gloss, in s: 3 readings, 30 to 36, from June 15, 2027 to June 15, 2027, minimum 27, "
        "maximum 33, outside 1. Readings: 30, 33, 36."
    )
    texts = [node.text for node in etree.fromstring(figure.svg.encode()).iter(f"{SVG}text")]
    assert {"min. 27", "max. 33", "s", "batch B-204", "pails in their order"} <= set(texts)


def test_the_caption_names_the_limits_with_their_source() -> None:
    figure = next(
        block
        for block in documents_of(context_with(make_entries(*pails("30", "33", "36"))))["D22"].blocks
        if isinstance(block, Figure)
    )
    told = "".join(getattr(part, "text", "") for part in figure.caption)
    assert told.startswith("Cup time after water, gloss, s. Limits: minimum 27 s, maximum 33 s")
    assert told.endswith("a")


def test_nothing_is_drawn_of_two_readings_and_that_is_said() -> None:
    context = context_with(make_entries(*pails("30", "33")))
    assert draw(context) == ()
    assert tell_not_drawn(context) == "Cup time after water, gloss (2 readings)"


def weather(day: int, surface: str, unit: str = "F") -> tuple[str, dict[str, Any]]:
    values = {"air": q("68", "F"), "surface": q(surface, unit), "humidity": Fraction(50), "step": "gloss"}
    return "log", {"date": date(2027, 6, 1) + timedelta(days=day), "started_at": time(12, 0), **values}


def test_the_margin_over_the_dew_point_is_drawn_against_its_least() -> None:
    # Dew point of 68 °F and 50%: 48.7 °F, worked by hand in `test_filled_forms`.
    # The least margin is 5 °F: UFC 3-190-06, 9.6.6.
    figure = figures_of(weather(0, "53"), weather(1, "54"), weather(9, "60"))[
        "Surface above the dew point, primer and gloss, °F"
    ]
    assert "minimum 5, outside 1. Readings: 4.3" in figure.alt
    texts = [node.text for node in etree.fromstring(figure.svg.encode()).iter(f"{SVG}text")]
    assert {"2027-06-01", "2027-06-10"} <= set(texts)


@pytest.mark.parametrize(("unit", "shown"), [("F", "15.6"), ("C", "60")])
def test_a_metric_project_is_drawn_in_its_units(unit: str, shown: str) -> None:
    given = [weather(day, "60", unit) for day in range(3)]
    figure = figures_of(*given, example="metric")["Surface temperature, primer and gloss, °C"]
    assert f"Readings: {shown}, {shown}, {shown}" in figure.alt.replace("15.56", "15.6")


def test_readings_of_one_place_on_paper_are_drawn_once() -> None:
    many = figures_of(*pails(*["30"] * 3000))["Cup time after water, gloss, s"]
    assert len(many.svg) < 400_000


# A mean lets a panel stand outside, so that each reading is held to the tolerance: common practice, no source.
def test_the_gloss_of_the_mockup_is_judged_by_each_reading() -> None:
    given = [("result", {"criterion": "gloss", "reading": of}) for of in ("60 GU; 75 GU", "62", "rough")]
    figure = figures_of(*given)["Gloss of the mockup, gloss units"]
    assert "Readings: 60, 75, 62." in figure.alt
    assert "outside 1." in figure.alt


@pytest.mark.parametrize(
    ("water", "told"),
    [
        ((), "target 4.6"),  # at the most water allowed, 8%: 1.6 / 0.38 * 1.08 = 4.55, up to a tenth, by hand
        ((0, 5), "target 4.3, target 4.5"),  # 1.6 / 0.38 = 4.21; * 1.05 = 4.42
        ((4, 5), "target 4.4, target 4.5"),  # * 1.04 = 4.38
    ],
)
def test_wet_film_is_aimed_at_with_the_water_that_the_pails_hold(water: tuple[int, ...], told: str) -> None:
    primer = {**PAIL, "step": "primer"}
    given = [("log", {**primer, "wet_film": q(mils, "mil")}) for mils in ("4.2", "4.4", "4.1")]
    given += [("log", {**primer, "pail": str(share), "water": Fraction(share)}) for share in water]
    figure = figures_of(*given, example="season")["Wet film, primer, mils"]
    assert re.search(r"(target [\d.]+(, target [\d.]+)*)\. Readings", figure.alt)[1] == told  # type: ignore[index]
