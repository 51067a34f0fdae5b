"""A figure that another party answered prints with who answered it and when, in every document that prints it."""

import re

import pytest

from tests.running import run_specgen
from tests.support import EXAMPLES

ANSWERS = """answers:
  A1:
    {party: eifs_source, by: L. Ferrow, on: 2027-02-01, sheet: a.xlsx, fields: [walls.W1.attachment.safety_factor = 3]}
  A2:
    {party: finish_source, by: "I. Pane, Quillgloss Coating Works", on: 2027-02-03, fields: [primer.dry_hours = 16]}
  A3:
    {party: architect, by: A. Quoin, on: 2027-02-04, fields: [site.wind_speed = 90 mph]}
"""


@pytest.fixture(scope="module")
def calculations(tmp_path_factory: pytest.TempPathFactory) -> str:
    folder = tmp_path_factory.mktemp("answered")
    for file in (EXAMPLES / "clean").iterdir():
        if file.is_file():
            (folder / file.name).write_bytes(file.read_bytes())
    project = folder / "project.yaml"
    project.write_text(project.read_text("utf-8").replace("answers:\n", ANSWERS, 1), encoding="utf-8")
    words = ("--formats", "txt", "--only", "D06", "--draft")
    done = run_specgen("build", str(folder / "project.yaml"), "--out", str(folder / "out"), *words)
    assert done.code == 0, done
    return (folder / "out" / "D06-calculations.txt").read_text("utf-8")


def letter_of(text: str, legend: str) -> str:
    found = re.search(rf"^\[(\w+)\] {re.escape(legend)}$", text, re.MULTILINE)
    assert found is not None
    return found[1]


def test_the_party_is_named_by_the_project_where_the_answer_does_not_name_it(calculations: str) -> None:
    letter = letter_of(calculations, "Answered by L. Ferrow, Graywether Wall Systems, February 1, 2027")
    assert f"Safety factor, n_s | 3[{letter}]" in calculations


def test_the_party_is_named_once_and_the_answer_stands_before_the_file_of_the_coating(calculations: str) -> None:
    letter = letter_of(calculations, "Answered by I. Pane, Quillgloss Coating Works, February 3, 2027")
    assert f"Primer, t_p | 16 h[{letter}]" in calculations.replace("\u00a0", " ")


def test_what_was_answered_is_no_value_without_a_letter(calculations: str) -> None:
    table = calculations.split("Values without a letter", 1)[1].split("REVIEW", 1)[0]
    assert "Basic wind speed" in table
    engineer = next(line for line in table.splitlines() if line.startswith("Engineer"))
    assert engineer.count("Safety factor on the tested wind load") == 1  # that of W2, which nobody answered


def test_a_value_that_was_changed_since_is_not_told_as_answered(calculations: str) -> None:
    assert "115 mph" in calculations.replace("\u00a0", " ")
    assert "A. Quoin" not in calculations
