"""Tests joined so that an absent value leaves a clause open only where it could still matter."""

from collections.abc import Callable
from typing import Any

from ..vocabulary.project import Absent
from .words import SIGNED_PAPERS


def every(*tests: Callable[[], Any]) -> bool:
    """Whether all tests hold; one that fails settles it. Raises Absent where only a missing value could."""
    missing = None
    for test in tests:
        try:
            if not test():
                return False
        except Absent as absent:
            missing = missing or absent
    if missing is not None:
        raise missing
    return True


def some(*tests: Callable[[], Any]) -> bool:
    """Whether any test holds; one that does settles it. Raises Absent where only a missing value could."""
    missing = None
    for test in tests:
        try:
            if test():
                return True
        except Absent as absent:
            missing = missing or absent
    if missing is not None:
        raise missing
    return False


def signed(paper: Any) -> bool:
    """Whether an attachment counts as signed: it says so; a kind that bears no signature never does."""
    given = paper.get("signed")
    if given is not None:
        return bool(given)
    return paper.kind in SIGNED_PAPERS and bool(paper.signed)
