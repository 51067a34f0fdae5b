"""What a metric package prints: the round figures of metric work, and nothing in inches, pounds, or Fahrenheit."""

import re
from pathlib import Path

import pytest

from specgen import pipeline
from specgen.output import package
from tests.support import EXAMPLES, case_of

EVERY = ("D02", "D05", "D06", "D08", "D09", "D10")
# The letter of a source behind a figure or a sentence.
MARK = re.compile(r"(?<=\S)\[[a-z]+(?:, [a-z]+)*\]")


def texts_of(case: pipeline.JudgedProject) -> dict[str, str]:
    context = case.context
    made = package.make_package(
        context.project, context.standards, case.judgment, context.resolve, ("txt",), EVERY, True
    )
    return {name[:3]: MARK.sub("", content.decode()) for name, content in made.files.items()}


@pytest.fixture(scope="module")
def texts() -> dict[str, str]:
    """The documents of the metric example by number."""
    return texts_of(pipeline.check(EXAMPLES / "metric" / "project.yaml"))


# Units of one system behind a figure, and signs that stand for it by themselves. Titles of standards have none.
OF_INCHES = (
    r"\b\d[\d/.,-]* ?(in|ft|sq ft|sq in|mils?|psia?|psf|gal|mph|s?cfm|oz|perms?|in/s|lb)\b"
    r"|°F|\bR-\d|\b(inches|feet|foot)\b"
)
OF_METERS = r"\b\d[\d.,]* ?(mm|cm|m|m²|kPa|L|L/s|m/s|mm/s|lx|g/m²)(?![\w²/])|°C"
# A sum in worked lines may pass through any unit; its result may not.
WORKED = re.compile(r" = |^(Outdoor|Indoor) air ", re.MULTILINE)


def find_units(pattern: str, text: str) -> list[str]:
    return [line for line in text.split("\n") if re.search(pattern, line) and not WORKED.search(line)]


def test_a_metric_document_prints_no_other_unit(texts: dict[str, str]) -> None:
    assert {name: find_units(OF_INCHES, text) for name, text in texts.items()} == dict.fromkeys(texts, [])


def test_an_inch_pound_document_prints_no_metric_unit() -> None:
    texts = texts_of(pipeline.check(EXAMPLES / "clean" / "project.yaml"))
    assert {name: find_units(OF_METERS, text) for name, text in texts.items()} == dict.fromkeys(texts, [])


def test_both_systems_stand_side_by_side_where_they_are_asked_for(tmp_path: Path) -> None:
    both = texts_of(case_of(tmp_path, {"package": {"both_units": True}, "joints": {"J1": {"width": "3/4 in"}}}))
    assert "3/4 in (19.1 mm)" in both["D08"]


# Document, and the round figure that stands in it: the rows of tests/standards/test_twins.py.
PRINTED = [
    ("D08", "with the 3 m straightedge"),
    ("D08", "gaps are no more than 3 mm in 3 m and 1.5 mm in 600 mm"),
    ("D08", "Straightedge, 600 mm, and feeler gauges"),
    ("D08", "project a minimum of 20 mm past the finished face"),
    ("D08", "Lap standard mesh a minimum of 60 mm"),
    ("D08", "Seal per ASTM C1481 at measured joint surface temperatures of 6 °C to 28 °C"),
    ("D08", "above dew point | boards, base coat, smoothing, primer, gloss, sealant | minimum 3 °C"),
    ("D08", "from 3 m"),
    ("D10", "600 mm straightedge and feeler gauge"),
    ("D10", "Maximum 1.5 mm off line in 1.5 m"),
    ("D06", "Minimum remaining board: 19 mm."),
]


@pytest.mark.parametrize(("document", "words"), PRINTED)
def test_a_document_prints_the_round_figure(document: str, words: str, texts: dict[str, str]) -> None:
    assert words in texts[document]


def test_a_metric_project_goes_by_metric_defaults(tmp_path: Path) -> None:
    # 16 in and 0.4 m, 5 ft and 1.5 m, 10 ft and 3 m, 1/4 in and 6 mm: common practice, no source.
    metric, inches = (case_of(tmp_path, {"package": {"units": units}}) for units in ("si", "ip"))
    of_metric, of_inches = texts_of(metric)["D08"], texts_of(inches)["D08"]
    for words in ("400 mm", "1.5 m", "2.3 m²", "600 mm", "6 mm", "280 kPa", "190 mm"):
        assert f" {words}" in of_metric
    for words in ("16 in", "5 ft", "25 sq ft", "2 ft", "1/4 in"):
        assert f" {words}" in of_inches
