"""A text that says a figure in both systems is told in one, or in both."""

import pytest

from specgen.quantities.two_systems import tell_in


@pytest.mark.parametrize(
    ("system", "told"),
    [
        ("ip", "up to 60 ft high, 3 ft"),
        ("si", "up to 18.3 m high, 0.9 m"),
        ("both", "up to 60 ft (18.3 m) high, 3 ft (0.9 m)"),
    ],
)
def test_each_figure_is_told_in_the_system_asked_for(system: str, told: str) -> None:
    assert tell_in("up to {60 ft|18.3 m} high, {3 ft|0.9 m}", system) == told


def test_a_text_without_pairs_stays() -> None:
    assert tell_in("p = a * {b}", "si") == "p = a * {b}"
