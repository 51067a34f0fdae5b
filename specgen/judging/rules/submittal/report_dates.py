"""No report is too old, no document has expired, and a test of a wall is of this wall.

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

from functools import partial

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import any_of, read_all
from specgen.model.dates import is_older
from specgen.model.typed_views import Attachment, Description, Elevation, Wall

RULE = Rule(
    "SUB-03",
    "Test reports current and for this wall",
    remedy="Provide a current report of this wall.",
    steps="site_conditions",
    documents="D18 D03",
)


@RULE.test(
    "a",
    STOP,
    "The report is dated {found}; at award none may be older than {wanted} years.",
    at="attachment.issued_on",
    basis="review_memory",
    remedy="Get a new report, or a statement of the laboratory, and declare a deviation.",
)
def report_too_old(paper: Attachment, project: Description) -> Violations:
    """A test report was older at award than the contract takes."""
    if paper.kind != "test_report":
        return
    years = project.contract.report_max_age_years
    issued, award = read_all(lambda: paper.issued_on, lambda: project.contract.award_date)
    if is_older(issued, years, award):
        yield violation(issued, wanted=years)


RULE.clause(
    "b",
    STOP,
    "The document expired on {found}.",
    when="attachment.valid_to < package.date",
    basis="review_memory",
    remedy="Get a current document.",
)


@RULE.test(
    "c",
    STOP,
    "The report is of another wall: {found}.",
    at="attachment.assembly",
    basis="review_memory",
    remedy="Get a report of this wall, or a statement of the laboratory that it covers this wall.",
)
def another_wall(paper: Attachment, project: Description) -> Violations:
    """A test report is of a wall that no elevation has."""
    if paper.kind != "test_report":
        return
    tested = paper.assembly
    if not any_of(project.elevations.find_referring("wall", tested.mark), partial(_has, tested)):
        yield violation(tested)


def _has(wall: Wall, elevation: Elevation) -> bool:
    """Whether a wall is that of an elevation."""
    return bool(elevation.wall == wall)
