"""A long expression of a working on a line."""

from specgen.documents.expression_text import shorten


def test_a_long_sum_is_told_by_its_first_terms() -> None:
    assert shorten("a + b + c + d + e + f") == "a + b + c + d"
    # Five terms stand on a line, and what is in parentheses is not torn apart.
    assert shorten("a + b + c + d + e") == "a + b + c + d + e"
    assert shorten("(a + b) + c + d + e + f + g") == "(a + b) + c + d + e + f + g"
