"""The contractor has checked and signed the set before it goes out.

Why: a reviewer sends back what the contractor has not signed, without reading it. A signature later
than the set says that somebody signed for another one.

passes
    package:
      purpose: mockup_submittal
      date: 2027-03-01
      contractor_review: {by: J. Ortiz, signed_on: 2027-02-26}
fails SUB-01a at package.contractor_review.signed_on
    package: {purpose: mockup_submittal, contractor_review: {by: J. Ortiz}}
fails SUB-01b at package.contractor_review.signed_on
    package: {date: 2027-03-01, contractor_review: {by: J. Ortiz, signed_on: 2027-03-02}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, draft, found
from specgen.quantities.comparison import more

RULE = Rule(
    "SUB-01",
    "The contractor's signature",
    remedy="Contractor checks and signs.",
    steps="site_conditions",
    documents="D01",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "An unstamped set is returned unread.",
    lift="never",
    needs="package.purpose package.contractor_review.by package.contractor_review.signed_on",
    basis="contract_review",
)
def unsigned(project: Any) -> Iterator[Found]:
    """The set goes out and the contractor's name or the date of his check is missing."""
    review = project.package.contractor_review
    missing = [name for name in ("by", "signed_on") if review.get(name) is None]
    if not draft(project) and missing:
        yield found(at=f"package.contractor_review.{missing[0]}")


@RULE.clause(
    "b",
    STOP,
    "The contractor signed on {found}, after the date of the set ({wanted}).",
    lift="never",
    needs="package.contractor_review.signed_on package.date",
    at="package.contractor_review.signed_on",
    basis="contract_review",
)
def signed_too_late(project: Any) -> Iterator[Found]:
    """The contractor signed after the set was dated."""
    signed_on = project.package.contractor_review.signed_on
    if more(signed_on, project.package.date):
        yield found(signed_on, wanted=project.package.date)
