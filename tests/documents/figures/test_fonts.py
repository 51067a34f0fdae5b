"""The fonts shipped with the templates: their signs, their licence, and the table of their advances."""

import pytest
from fontTools.ttLib import TTFont

from specgen.documents.figures.labels import CAPITAL, LEAST_SIZE, measure
from specgen.documents.figures.rendering import FONT_FAMILY
from tests.documents.figures.advances import FONTS, TABLE, make_table

FILES = sorted(FONTS.glob("*.ttf"))


def test_the_table_of_advances_is_that_of_the_fonts():
    assert TABLE.read_text("utf-8") == make_table()


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_each_font_has_the_signs_of_drawings(file):
    assert {chr(code) for code in TTFont(file).getBestCmap()} >= set("±°″′Ø≤½¼⅛→µ²⅜⅝¾⅞×…–éñüß")


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_font_that_was_changed_bears_a_name_of_its_own_and_its_licence(file):
    # SIL Open Font License 1.1, conditions 2 and 3.
    names = TTFont(file)["name"]
    shown = {names.getDebugName(number) for number in (1, 4, 6)}
    licence = (FONTS / "OFL.txt").read_text("utf-8")
    reserved = ("Liberation", "Arimo", "Tinos", "Cousine")
    assert names.getDebugName(1) == FONT_FAMILY
    assert not [word for word in reserved if any(word in name for name in shown)]
    assert all(word in licence for word in reserved)
    assert "Open Font License" in names.getDebugName(13)
    assert "Copyright (c) 2012 Red Hat" in names.getDebugName(0)
    assert "Copyright (c) 2012 Red Hat" in licence
    assert "PERMISSION & CONDITIONS" in licence


def test_there_are_a_regular_and_a_bold_font_and_both_are_small():
    assert [file.stem for file in FILES] == ["SheetSans-Bold", "SheetSans-Regular"]
    assert all(file.stat().st_size < 60_000 for file in FILES)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_the_least_type_has_capitals_and_figures_of_two_millimeters(file):
    font = TTFont(file)
    glyphs, names, units = font["glyf"], font.getBestCmap(), font["head"].unitsPerEm
    for char in "AEHV0123456789":
        high = glyphs[names[ord(char)]].yMax
        assert high / units * LEAST_SIZE >= 2.0
        assert high / units >= CAPITAL - 0.002


def test_a_width_is_the_sum_of_its_advances():
    # Advances of the regular font, in 2048ths of its size: figures 1139, A 1366.
    assert measure("A12", 10) == pytest.approx((1366 + 2 * 1139) / 2048 * 10)
    assert measure("漢", 10) == 10
