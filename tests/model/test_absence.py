"""A test that is settled by what is given waits for nothing; one that is not says what it waits for."""

from typing import Any

import pytest

from specgen.model.absence import Absent, all_known, any_known, if_given, read_all


def yes() -> bool:
    return True


def no() -> bool:
    return False


def absent() -> bool:
    raise Absent(("joints", "J1", "width"))


def other() -> bool:
    raise Absent(("joints", "J1", "kind"))


@pytest.mark.parametrize(
    ("joined", "tests", "outcome"),
    [
        (all_known, (), True),
        (all_known, (yes, yes), True),
        (all_known, (yes, no), False),
        (all_known, (absent, no), False),
        (all_known, (no, absent), False),
        (any_known, (), False),
        (any_known, (no, yes), True),
        (any_known, (no, no), False),
        (any_known, (absent, yes), True),
        (any_known, (yes, absent), True),
    ],
)
def test_what_is_given_settles_it(joined: Any, tests: Any, outcome: bool) -> None:
    assert joined(*tests) is outcome


@pytest.mark.parametrize(("joined", "tests"), [(all_known, (yes, absent, other)), (any_known, (no, absent, other))])
def test_an_absent_value_that_matters_is_named(joined: Any, tests: Any) -> None:
    with pytest.raises(Absent) as raised:
        joined(*tests)
    assert raised.value.paths == (("joints", "J1", "width"), ("joints", "J1", "kind"))


def test_a_test_is_not_run_once_it_is_settled() -> None:
    def never() -> bool:
        raise AssertionError

    assert all_known(no, never) is False
    assert any_known(yes, never) is True


def test_values_read_together_are_told_together() -> None:
    assert read_all(yes, lambda: 2) == (True, 2)
    with pytest.raises(Absent) as raised:
        read_all(absent, yes, other)
    assert raised.value.paths == (("joints", "J1", "width"), ("joints", "J1", "kind"))


def test_a_value_that_may_be_absent_is_none() -> None:
    assert if_given(absent) is None
    assert if_given(yes) is True
