"""The data of a line of the PDF: what may break, and what is copied from the page as it stands."""

import pytest

from specgen.formats.pdf.line_data import describe_words


@pytest.mark.parametrize("address", ["office@thimbleandsons.example", "a.very.long.name.of.a.person@a-firm.co.example"])
def test_an_address_is_copied_from_the_page_as_it_is_written(address: str) -> None:
    assert describe_words(address) == address
    assert describe_words(f"Send to {address} at once") == f"Send to {address} at once"


def test_another_word_longer_than_a_narrow_cell_may_break_anywhere() -> None:
    made = describe_words("Donaudampfschifffahrtsgesellschaft")
    assert made == "\u200b".join("Donaudampfschifffahrtsgesellschaft")
    assert describe_words("Schifffahrtsgesellschaft") == "Schifffahrtsgesellschaft"
