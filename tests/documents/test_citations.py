"""Documents cite the controlling text in the edition of the project; what nobody has verified stands in one list."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.output import package
from tests.documents.support import context_of
from tests.support import EXAMPLES, case_of

LIST = "VERIFY BEFORE SUBMITTAL"


def texts_of(case: pipeline.JudgedProject) -> dict[str, str]:
    context = case.context
    made = package.make_package(context.project, context.standards, case.judgment, context.resolve, ("txt",), (), True)
    return {name[:3]: content.decode() for name, content in made.files.items()}


@pytest.fixture(scope="module")
def clean() -> dict[str, str]:
    return texts_of(pipeline.check(EXAMPLES / "clean" / "project.yaml"))


# Where the trade's author read a figure, which no reviewer looks up.
WHERE_READ = [
    "Cornell",
    "assignment",
    "City of Paris",
    "Chicago",
    "Saudi",
    "Virginia",
    "New York",
    "AAMA",
    "library of marine books",
    "from memory",
    "program",
    "undated copy",
]


@pytest.mark.parametrize("words", WHERE_READ)
def test_no_document_says_where_a_figure_was_read(words: str, clean: dict[str, str]) -> None:
    for name, text in clean.items():
        legend = text.partition(LIST)[0] if name == "D05" else text
        legends = [line for line in legend.split("\n") if re.match(r"\[[a-z]+\] ", line)]
        assert not [line for line in legends if words in line], name


@pytest.mark.parametrize(
    ("document", "citation"),
    [
        ("D06", "ASTM C1472, joint width by movement, class, and tolerance"),
        ("D08", "29 CFR 1926.451(b)(3)"),
        ("D06", "ASCE 7-16, tables 26.10-1 and 26.11-1"),
        ("D02", "EIFS | 1407 |"),
        ("D10", "International Building Code 2021, 1404.4"),
        ("D02", "Special inspection | 1705.17.1 |"),
    ],
)
def test_a_document_cites_standard_edition_and_clause(document: str, citation: str, clean: dict[str, str]) -> None:
    assert citation in clean[document]


def test_a_code_is_cited_in_the_edition_of_the_project(tmp_path: Path) -> None:
    # IBC 2012: EIFS in section 1408, special inspection in 1705.15; wind by ASCE 7-10.
    text = texts_of(case_of(tmp_path, {"code": {"model": "ibc", "edition": 2012}}))["D02"]
    assert "International Building Code 2021" not in text
    assert "Special inspection | 1705.15 |" in text


# The project, the source, and how a document cites it. IBC 2012 flashes walls in 1405.4, from memory; IRC in R703.4.
CITED = [
    ({}, "guide_eifs_p24", "Unified Facilities Guide Specification 07 24 00, 3.3, guide only"),
    (
        {"contract": {"procedure": "ufgs_013300"}},
        "guide_eifs_p24",
        "Unified Facilities Guide Specification 07 24 00, 3.3",
    ),
    ({}, "paint_manual_p127", "Unified Facilities Criteria 3-190-06, 7.4.1, guide only"),
    ({"safety": {"rules": "us_osha"}}, "osha_ties", "29 CFR 1926.451(c)(1)"),
    ({"safety": {"rules": "other"}}, "osha_ties", "29 CFR 1926.451(c)(1), guide only"),
    ({}, "irc_grade", "International Residential Code, R703.9.2"),
    ({"code": {"model": "irc", "edition": 2018}}, "irc_grade", "International Residential Code 2018, R703.9.2"),
    ({"code": {"model": "other"}}, "irc_grade", "International Residential Code, R703.9.2, guide only"),
    ({"code": {"model": "ibc", "edition": 2012}}, "wall_flashing", "International Building Code 2012, 1405.4"),
    ({"code": {"model": "irc", "edition": 2018}}, "wall_flashing", "International Residential Code 2018, R703.4"),
    (
        {"code": {"model": "other"}},
        "wall_flashing",
        "International Building Code, flashing of exterior walls, guide only",
    ),
]


@pytest.mark.parametrize(("change", "source", "said"), CITED, ids=[f"{row[1]} {row[0]}" for row in CITED])
def test_a_text_that_nothing_calls_for_is_cited_as_a_guide(
    change: dict[str, Any], source: str, said: str, tmp_path: Path
) -> None:
    context = context_of(tmp_path, change)
    assert context.cite(context.standards.sources[source]).reference == said


def test_what_is_not_verified_bears_one_mark_in_a_document(clean: dict[str, str]) -> None:
    for name, text in clean.items():
        assert len(re.findall(r"^\[p\] Proposed, not verified", text, re.MULTILINE)) <= 1, name


def test_one_list_says_what_to_check_against_which_text(clean: dict[str, str]) -> None:
    assert [name for name, text in clean.items() if LIST in text.upper().split("\n")] == ["D05"]
    assert not any("FIGURES TO CONFIRM" in text.upper() for text in clean.values())
    rows = [line.split(" | ") for line in clean["D05"].partition(LIST)[2].split("\n") if " | " in line]
    assert rows[0] == ["Verify against", "Figure, or method", "Value used", "Used in", "Answer, date"]
    assert "Basis, unless named: common practice, no source; *: from memory." in clean["D05"]
    # Ticked is what the engineer sealed, and that alone; what D19 asks for is answered there, and has no box here.
    boxes = {"": "( ) ", "D19": "", "holds, February 26, 2027": "(x) "}
    assert all(row[0] and row[1] and row[2][:4] == (boxes[row[4]] or row[2][:4]) for row in rows[1:])
    assert not any(row[2].startswith("(") for row in rows[1:] if row[4] == "D19")
    sealed = [row for row in rows[1:] if row[4].startswith("holds")]
    # The seal covers heat, movement joints, wind, and moisture: their texts are the engineer's.
    assert {row[0].partition(",")[0] for row in sealed} == {
        "ASCE 7-16",
        "ASHRAE Handbook",
        "ASTM C1193",
        "ASTM C1472",
        "ASTM E1980",
        "ISO 13788",
    }
    # The text in which a figure was read is named, without what it says.
    (bead,) = [row for row in rows if "Sealant bead depth" in row[1]]
    assert bead[0] == "ASTM C1193"
    assert bead[1].endswith("(read in E. Allen, Architectural Detailing, sealant joints)")
    (gun,) = [row for row in rows if "Spray distance" in row[1]]
    assert gun[:3] == ["Finish manufacturer", "Spray distance", "( ) maximum 24 in"]
    # The contract of the example gives the notice of a witness point; a viewing distance it does not give.
    assert not any("witness point" in row[1] for row in rows)
    (view,) = [row for row in rows if "Viewing distance" in row[1]]
    assert view[0] == "Contract, or RFI" and view[2] == "( ) 10 ft"
    wind = next(row for row in rows if row[0] == "ASCE 7-16, chapters 26 and 30")
    assert wind[1] == "Pressure, strength level*" and wind[3] == "D06"
    # Said once above the table, and not by row.
    assert clean["D05"].partition(LIST)[2].count("from memory") == 1
