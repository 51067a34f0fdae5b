"""How sentences list values and write units; common practice of print, no source."""

import pytest

from specgen.model.value_text import Listed, write_units


@pytest.mark.parametrize(
    ("values", "spec", "told"),
    [
        (["foreman"], "or", "foreman"),
        (["January", "December"], "and", "January and December"),
        (["foreman", "sprayer", "inspector"], "or", "foreman, sprayer, or inspector"),
        (["foreman", "sprayer"], "", "foreman, sprayer"),
        ([], "and", ""),
    ],
)
def test_a_sentence_joins_values_by_the_word_that_it_asks_for(values: list[str], spec: str, told: str) -> None:
    assert format(Listed(values), spec) == told


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Humidity is 95 %; maximum 85 %.", "Humidity is 95%; maximum 85%."),
        ("Cure for 28 d, or 1 d in heat, or 36.7 d.", "Cure for 28 days, or 1 day in heat, or 36.7 days."),
        ("Dry 21 d.", "Dry 21 days."),
        ("D 14 dries at 3 deg", "D 14 dries at 3 deg"),
    ],
)
def test_percentages_and_days_are_written_as_on_paper(text: str, told: str) -> None:
    assert write_units(text) == told
