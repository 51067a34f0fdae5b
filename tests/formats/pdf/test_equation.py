"""Equations of the pages: each sign by its kind, read aloud in plain signs."""

import dataclasses
import unicodedata
from pathlib import Path

import pytest

from specgen.formats.pdf.pages import write_pages
from specgen.model.block import Equation
from tests.documents.support import written
from tests.formats.pdf.support import small_set
from tests.formats.pdf.tags import Tag, TaggedPdf


def formula(folder: Path, expression: str, figures: str) -> Tag:
    equation = Equation("closing movement", "W_c", expression, figures, "0.32", "in")
    document = dataclasses.replace(written(folder, "# A\n"), blocks=(equation,))
    (found,) = TaggedPdf(write_pages(small_set(folder, document)).pdf).tree.find("Formula")
    return found


# Variables slant: their letters are those of the mathematical alphabet (Unicode block 1D400 to 1D7FF).
@pytest.mark.parametrize(
    ("expression", "figures", "wanted", "slanted"),
    [
        ("B - (C + d)", "4 - (1 + 2.68)", "Wc=B−(C+d)=4−(1+2.68)=0.32 in", "WBCd"),
        ("A * k", "0.16 * 2", "Wc=A⋅k=0.16⋅2=0.32 in", "WAk"),
        ("max(alpha, b)", "max(0.32, 0.1)", "Wc=max(α,b)=max(0.32,0.1)=0.32 in", "Wαb"),
    ],
)
def test_signs_stand_in_order_and_variables_slant(
    tmp_path: Path, expression: str, figures: str, wanted: str, slanted: str
) -> None:
    found = formula(tmp_path, expression, figures)
    text = found.text()
    letters = [sign for sign in text if 0x1D400 <= ord(sign) <= 0x1D7FF]
    assert unicodedata.normalize("NFKC", "".join(letters)) == slanted
    assert "".join(unicodedata.normalize("NFKC", text).split()) == "".join(wanted.split())
    assert found.alt == f"W_c = {expression} = {figures} = 0.32 in"
