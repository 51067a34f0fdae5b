"""Every report is young enough, every paper is in force, and a test of a wall is of this wall.

Why: what was tested is what was made then, in that build-up. A report that is old, or of another wall,
shows nothing about the one to be built.

passes
    package: {date: 2027-03-01}
    contract: {award_date: 2027-01-11, report_max_age_years: 3}
    elevations: {E1: {wall: W1}}
    attachments: {A1: {kind: test_report, issued_on: 2026-05-04, valid_to: 2029-05-04, assembly: W1}}
fails SUB-03a at attachments.A1.issued_on
    contract: {award_date: 2027-01-11, report_max_age_years: 3}
    attachments: {A1: {kind: test_report, issued_on: 2023-05-04}}
fails SUB-03b at attachments.A1.valid_to
    package: {date: 2027-03-01}
    attachments: {A1: {kind: certificate, valid_to: 2027-02-28}}
fails SUB-03c at attachments.A1.assembly
    walls: {W2: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}}
    elevations: {E1: {wall: W1}}
    attachments: {A1: {kind: test_report, assembly: W2}}
"""

from collections.abc import Iterator
from functools import partial
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.judging.three_valued import some
from specgen.model.dates import older
from specgen.quantities.comparison import less

RULE = Rule(
    "SUB-03",
    "Reports in date and of this wall",
    remedy="New report, or laboratory's statement, declared as deviation.",
    steps="site_conditions",
    documents="D18 D03",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The report is of {found}; at award none may be older than {wanted} years.",
    each="attachments",
    needs="attachments.*.kind attachments.*.issued_on contract.report_max_age_years contract.award_date",
    at="attachments.*.issued_on",
    basis="review_memory",
)
def report_too_old(paper: Any, project: Any) -> Iterator[Found]:
    """A test report was older at award than the contract takes."""
    if paper.kind != "test_report":
        return
    years = project.contract.report_max_age_years
    if older(paper.issued_on, years, project.contract.award_date):
        yield found(paper.issued_on, wanted=years)


@RULE.clause(
    "b",
    STOP,
    "The paper ran out on {found}.",
    each="attachments",
    needs="attachments.*.valid_to package.date",
    at="attachments.*.valid_to",
    basis="review_memory",
)
def paper_ran_out(paper: Any, project: Any) -> Iterator[Found]:
    """A paper ran out before the date of the set."""
    if less(paper.valid_to, project.package.date):
        yield found(paper.valid_to, wanted=project.package.date)


@RULE.clause(
    "c",
    STOP,
    "The report is of another wall: {found}; confirm.",
    each="attachments",
    needs="attachments.*.kind elevations.*.wall attachments.*.assembly",
    basis="review_memory",
)
def another_wall(paper: Any, project: Any) -> Iterator[Found]:
    """A test report is of a wall that no elevation has."""
    if paper.kind != "test_report":
        return
    tested = paper.assembly
    if not some(*(partial(_has, elevation, tested) for elevation in project.elevations)):
        yield found(tested)


def _has(elevation: Any, wall: Any) -> bool:
    """Whether a wall is that of an elevation."""
    return bool(elevation.wall == wall)
