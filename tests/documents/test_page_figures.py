"""Figures as pages print them: minus signs, fractions, days. Arithmetic and common practice, no source."""

import pytest

from specgen.documents.page_figures import measure


@pytest.mark.parametrize(
    ("value", "unit", "printed"),
    [
        (-1.0625, "in", "\u22121-1/16\u00a0in"),
        (-0.75, "in", "\u22123/4\u00a0in"),
        (1.0625, "in", "1-1/16\u00a0in"),
        (-50, "d", "\u221250\u00a0days"),
        (1, "d", "1\u00a0day"),
        (-24, "C", "\u221224\u00a0°C"),
        (0.4, "in", "0.4\u00a0in"),
    ],
)
def test_a_figure_below_zero_has_a_minus_sign_and_its_fraction_a_hyphen(value: float, unit: str, printed: str) -> None:
    assert measure(value, unit) == printed
