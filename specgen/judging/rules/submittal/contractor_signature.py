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
    package:
      purpose: mockup_submittal
      date: 2027-03-01
      contractor_review: {by: J. Ortiz, signed_on: 2027-03-02}
"""

from specgen.judging.rule import STOP, Rule, Violations, is_draft, violation
from specgen.model.typed_views import Description

RULE = Rule(
    "SUB-01",
    "Contractor's review signed",
    remedy="Check and sign the submittal.",
    steps="site_conditions",
    documents="D01",
)


@RULE.test(
    "a",
    STOP,
    "The contractor has not signed the submittal; an unsigned set is returned without review.",
    at="package.contractor_review.signed_on",
    basis="contract_review",
    lift="never",
    remedy="Check the set against the contract, then sign and date it.",
)
def unsigned(project: Description) -> Violations:
    """The set goes out and the contractor's name or the date of his check is missing."""
    review = project.package.contractor_review
    missing = [name for name in ("by", "signed_on") if review.get(name) is None]
    if not is_draft(project) and missing:
        yield violation(at=(*review.path, missing[0]))


RULE.clause(
    "b",
    STOP,
    "The contractor signed on {found}, after the date of the set ({wanted}).",
    when="package.purpose != design_draft and package.contractor_review.signed_on > package.date",
    basis="contract_review",
    lift="never",
    remedy="Sign on or before the date of the set, or date the set anew.",
    why="a set that was not signed when it was issued was not reviewed by the contractor",
)
