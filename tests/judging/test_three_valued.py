"""A test that is settled by what is given waits for nothing; one that is not says what it waits for."""

from types import SimpleNamespace
from typing import Any

import pytest

from specgen.judging.three_valued import every, signed, some
from specgen.model.project import Absent


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
        (every, (), True),
        (every, (yes, yes), True),
        (every, (yes, no), False),
        (every, (absent, no), False),
        (every, (no, absent), False),
        (some, (), False),
        (some, (no, yes), True),
        (some, (no, no), False),
        (some, (absent, yes), True),
        (some, (yes, absent), True),
    ],
)
def test_what_is_given_settles_it(joined: Any, tests: Any, outcome: bool) -> None:
    assert joined(*tests) is outcome


@pytest.mark.parametrize(("joined", "tests"), [(every, (yes, absent, other)), (some, (no, absent, other))])
def test_an_absent_value_that_matters_is_named(joined: Any, tests: Any) -> None:
    with pytest.raises(Absent, match=r"joints\.J1\.width"):
        joined(*tests)


def test_a_test_is_not_run_once_it_is_settled() -> None:
    def never() -> bool:
        raise AssertionError

    assert every(no, never) is False
    assert some(yes, never) is True


@pytest.mark.parametrize(
    ("kind", "given", "outcome"),
    [("letter", True, True), ("letter", False, False), ("data_sheet", None, False), ("data_sheet", True, True)],
)
def test_a_signed_paper(kind: str, given: bool | None, outcome: bool) -> None:
    paper = SimpleNamespace(kind=kind, signed=given, get={"signed": given}.get)
    assert signed(paper) is outcome
