"""What a metric package prints: the round figures of metric work, and no length of inches put into millimeters."""

import re
from pathlib import Path

import pytest

from specgen import pipeline
from specgen.output import package
from tests.support import EXAMPLES, case_of


def texts_of(case: pipeline.JudgedProject) -> dict[str, str]:
    context = case.context
    made = package.make_package(context.project, context.standards, case.judgment, context.resolve, ("txt",), (), True)
    return {name[:3]: content.decode() for name, content in made.files.items()}


@pytest.fixture(scope="module")
def texts() -> dict[str, str]:
    """The documents of the metric example by number."""
    return texts_of(pipeline.check(EXAMPLES / "metric" / "project.yaml"))


# What stands in an inch project, and what a conversion to the millimeter would print.
OF_INCHES = r"\b(10 ft|24 in|1000 ft|100 ft|(3\.05|1\.83|305|30\.5) m|(152|152\.4|203|63\.5|19\.05|25\.4|406) mm)\b"


def test_no_document_prints_a_length_of_inches_or_its_conversion(texts: dict[str, str]) -> None:
    # D06 tells its rules of film and wind in both; the legends name what a published text prints.
    for name, text in texts.items():
        said = re.sub(r"\(metric figure for [^)]*\)?[^)]*\)", "", text)
        assert re.search(OF_INCHES, said) is None, (name, re.search(f".*{OF_INCHES}.*", said))


# Document, and the round figure that stands in it: the rows of tests/standards/test_twins.py.
PRINTED = [
    ("D08", "with the 3 m straightedge"),
    ("D08", "the 3 m and the 600 mm straightedge"),
    ("D08", "Straightedge, 600 mm, with feeler gauges"),
    ("D08", "End the board at least 150 mm["),
    ("D08", "end the board at least 200 mm["),
    ("D08", "Lap the standard mesh by 60 mm["),
    ("D08", "in the first 300 m["),
    ("D08", "between 4 °C["),
    ("D08", "at least 3 °C["),
    ("D08", "from 3 m["),
    ("D10", "600 mm straightedge and feeler gauge"),
    ("D10", "Maximum 1.5 mm[b] off line in 1.5 m["),
    ("D06", "At least 19 mm must stay."),
]


@pytest.mark.parametrize(("document", "words"), PRINTED)
def test_a_document_prints_the_round_figure(document: str, words: str, texts: dict[str, str]) -> None:
    assert words in texts[document]


def test_a_metric_project_goes_by_metric_defaults(tmp_path: Path) -> None:
    # 16 in and 0.4 m, 5 ft and 1.5 m, 10 ft and 3 m, 1/4 in and 6 mm: common practice, no source.
    metric, inches = (case_of(tmp_path, {"package": {"units": units}}) for units in ("si", "ip"))
    of_metric, of_inches = texts_of(metric)["D08"], texts_of(inches)["D08"]
    for words in ("400 mm[", "1.5 m[", "2.3 m²[", "600 mm[", "6 mm[", "280 kPa[", "190 mm["):
        assert f" {words}" in of_metric
    for words in ("16 in (406 mm)[", "5 ft (1.52 m)[", "25 sq ft (2.32 m²)[", "2 ft (0.61 m)[", "1/4 in (6.4 mm)["):
        assert f" {words}" in of_inches
