"""A slip in a row of the standards is told at load, with file, line, row and what would be right."""

import itertools
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen import standards
from specgen.standards import load_files
from specgen.standards.rows import Wrong
from specgen.standards.shapes import Known
from specgen.standards.tables import TABLES
from tests.standards.breaking import copied, loaded, told_of

CASES = yaml.load((Path(__file__).parent / "breaks.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)


@pytest.mark.parametrize("case", CASES, ids=[f"{case['file']}: {case['told'][:60]}" for case in CASES])
def test_a_slip_is_told_with_file_line_and_row(case: dict[str, str], tmp_path: Path) -> None:
    told, line = told_of(tmp_path, case["file"], case["before"], case["after"])
    assert told == f"{case['file']}:{line}: {case['told']}"


def test_no_file_goes_without_a_slip() -> None:
    assert {case["file"] for case in CASES} == {file.name for file in standards.FOLDER.glob("*.yaml")}


def test_a_copy_without_a_slip_is_loaded(tmp_path: Path) -> None:
    assert loaded(*copied(tmp_path)).fields


def test_a_step_is_put_between_two_others_without_renumbering(tmp_path: Path) -> None:
    rows, entries = copied(tmp_path)
    text = (rows / "steps.yaml").read_text("utf-8").replace("  follows: site_conditions\n", "  follows: delivery\n")
    text += "\ndelivery:\n  follows: site_conditions\n  title: Delivery\n  article: preparation\n  point: E\n"
    text += "  work: [Count the pails.]\n"
    (rows / "steps.yaml").write_text(text, "utf-8")
    choices = loaded(rows, entries).fields["crews", "*", "steps"].values
    assert choices[:3] == ("site_conditions", "delivery", "old_coating")


# What stands in place of a value to see that no slip ends in anything but its message.
OTHERS: tuple[Any, ...] = ("", "x", [], ["x", "x"], {}, {"say": ["x"]}, "1/0 in", "@x", "{{ limit('x') }}")


@pytest.mark.parametrize("name", TABLES)
@pytest.mark.no_cover
def test_whatever_stands_in_a_row_it_is_made_or_told(name: str) -> None:
    files, made = load_files(standards.FOLDER), {}
    table = TABLES[name]
    for stem, other in TABLES.items():
        known = Known(files, made)
        made[stem] = {row: other.make(row, other.shape.convert(keys, known)) for row, keys in files[stem].items()}
    refused = 0
    for row, keys in files[name].items():
        for key, value in itertools.product((*keys, "more"), OTHERS):
            try:
                table.make(row, table.shape.convert({**keys, key: value}, known))
            except Wrong:
                refused += 1
    assert refused > len(files[name]) * len(OTHERS)
