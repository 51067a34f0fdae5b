"""Whether a value meets what the contract asks; what each relation means is common practice, no source."""

from typing import Any

import pytest

from specgen.reading.demand import meets

MET: list[tuple[Any, str, Any, bool]] = [
    ("eps", "in", ("xps", "eps"), True),
    ("eps", "in", ("xps", "mineral_wool"), False),
    ("eps", "in", ("eps",), True),
    ("EPS ", "=", "eps", True),
    (3, ">=", 2, True),
    (3, ">=", 3, True),
    (3, ">=", 4, False),
    (3, "<=", 2, False),
    (3, "<=", 3, True),
    (3, "=", 3, True),
    (3, "=", 2, False),
    (("a", "b"), "=", ("b", "a"), True),
    (("a", "b"), "=", ("a",), False),
    (("a", "b"), ">=", ("a",), True),
    (("a",), ">=", ("a", "b"), False),
    (("a",), "<=", ("a", "b"), True),
    (("a", "b"), "<=", ("a",), False),
    (("a",), "in", ("a", "b"), True),
    (("a", "c"), "in", ("a", "b"), False),
]


@pytest.mark.parametrize(("value", "relation", "wanted", "met"), MET)
def test_a_value_meets_what_is_asked(value: Any, relation: str, wanted: Any, met: bool) -> None:
    assert meets(value, relation, wanted) is met
