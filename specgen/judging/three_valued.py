"""Tests joined so that an absent value leaves a clause open only where it could still matter."""

from collections.abc import Callable, Iterable
from functools import partial
from typing import Any

from specgen.judging.applies import applicable
from specgen.judging.choice_groups import SIGNED_PAPERS
from specgen.model.project import Absent


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


def which(members: Iterable[Any], test: Callable[[Any], bool]) -> tuple[Any, ...]:
    """The members a test holds for. Raises Absent where it is known of none and a missing value leaves one open."""
    held, missing = [], None
    for member in members:
        try:
            if test(member):
                held.append(member)
        except Absent as absent:
            missing = missing or absent
    if missing is not None and not held:
        raise missing
    return tuple(held)


def papers(project: Any) -> tuple[Any, ...]:
    """The attachments; none where the project gives none, for a paper that is not listed is not there."""
    return tuple(project.attachments) if project.attachments.given() else ()


def shown(project: Any, *tests: Callable[[Any], bool]) -> bool:
    """Whether one paper meets all tests; raises Absent where only a value that a paper owes could settle it."""
    return some(*(partial(_meets, paper, tests) for paper in papers(project)))


def _meets(paper: Any, tests: tuple[Callable[[Any], bool], ...]) -> bool:
    """Whether a paper meets all tests; what it neither gives nor owes meets none."""
    try:
        return every(*(partial(test, paper) for test in tests))
    except Absent as absent:
        if applicable(paper.project, absent.path):
            raise
        return False


def somebody(project: Any, role: str) -> bool:
    """Whether a person is named for a role."""
    return some(*(partial(_has_role, person, role) for person in project.people))


def _has_role(person: Any, role: str) -> bool:
    return bool(person.role == role)


def shaded(access: Any, project: Any, kinds: tuple[str, ...]) -> bool:
    """Whether the elevation of a means of access has a shade of one of these kinds."""
    return some(*(partial(_shades, shade, access, kinds) for shade in project.shade))


def _shades(shade: Any, access: Any, kinds: tuple[str, ...]) -> bool:
    return every(lambda: shade.kind in kinds, lambda: shade.elevation == access.elevation)
