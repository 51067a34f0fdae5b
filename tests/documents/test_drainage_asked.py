"""Who asks for the drainage of a wall, told alike where a draft asks what decides and in its code table."""

import re
from pathlib import Path
from typing import Any

import pytest

from tests.documents.example import drafted

FRAMED = {"wrb": {"kind": "fluid_applied"}, "drainage": {"kind": "grooved_board"}, "framing": {"kind": "wood"}}
DEMANDED = [
    {
        "section": "07 24 00",
        "paragraph": "2.1.A",
        "field": "walls.*.drainage.kind",
        "relation": "=",
        "value": "grooved_board",
    }
]
BELOW = "the drainage efficiency is below 90% by ASTM E2273"
OF_EACH = "for each EIFS with drainage"


def told(folder: Path, kind: str, **more: Any) -> tuple[list[str], str]:
    """Question and answer on drainage in D00, and the row of the code table, without the marks of sources."""
    code = {"model": "ibc", "edition": 2021, "construction_type": kind, "occupancy_groups": ["R-2"]}
    pages = drafted(folder, {"code": code, "walls": {"W1": FRAMED}, **more})
    (question,) = re.findall(r"(?m)^\d+ \| (Drainage behind the board.*) \(ATT-08\) \| W1 \| (.*)$", pages["D00"])
    (row,) = re.findall(r"(?m)^Drained wall, W1 \| .*$", pages["D02"])
    unmarked = [re.sub(r"\[[a-z]\]", "", said) for said in (*question, row)]
    return unmarked[:2], unmarked[2]


# International Building Code 2021, 1407.4.1: EIFS with drainage, of minimum 90 percent by ASTM E2273, is required on
# framed walls of Type V construction in Groups; the efficiency is of every EIFS with drainage.
def test_a_wall_that_the_code_wants_drained_is_said_to_be_in_both_documents(tmp_path: Path) -> None:
    question, row = told(tmp_path, "VB")
    assert question == ["Drainage behind the board, required by the code", BELOW]
    assert " | yes | " in row
    assert row.endswith("; provided by grooved board, drainage efficiency minimum 90%")


def test_a_wall_drained_by_choice_is_said_to_be_in_both_documents(tmp_path: Path) -> None:
    question, row = told(tmp_path, "IIB")
    assert question == ["Drainage behind the board, by choice", f"{BELOW}, the minimum {OF_EACH}"]
    assert " | no | construction type IIB is not type V; drained by choice: grooved board, " in row
    assert row.endswith(f"drainage efficiency minimum 90%, as {OF_EACH}")


def test_a_wall_that_the_specification_wants_drained_cites_its_paragraph_in_both_documents(tmp_path: Path) -> None:
    question, row = told(tmp_path, "IIB", contract={"demands": DEMANDED})
    assert question[0] == "Drainage behind the board, per Section 07 24 00, 2.1.A"
    assert "; drained per Section 07 24 00, 2.1.A: grooved board, " in row


@pytest.mark.parametrize("model", ["other", None])
def test_nobody_is_said_to_want_drainage_while_the_code_is_silent(tmp_path: Path, model: str | None) -> None:
    code = {"model": model} if model else {}
    page = drafted(tmp_path, {"code": code, "walls": {"W1": FRAMED}})["D00"]
    assert "| Drainage behind the board (ATT-08) | W1 |" in page
