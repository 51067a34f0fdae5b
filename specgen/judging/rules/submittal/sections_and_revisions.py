"""The set cites sections there are, keeps a system together, lists what changed, and answers every comment.

Why: a reviewer files by section number and judges a system as a whole. Pieces that come one by one wait
for each other, a change that is not pointed out may be taken for an oversight, and a comment left without
an answer brings the set back.

passes
    package: {revision: 1, changes: [E2 joint lines moved to jambs]}
    contract:
      spec_sections: [{number: 07 24 00}]
      items:
        I1: {section: 07 24 00, group: action, due_on: 2027-03-01}
        I2: {section: 07 24 00, group: action, due_on: 2027-03-01}
fails SUB-07a at contract.items.I1.section
    contract:
      spec_sections: [{number: 07 24 00}]
      items: {I1: {section: 07 24 13}}
fails SUB-07b at contract.items.I1.due_on
    contract:
      items:
        I1: {section: 07 24 00, group: action, due_on: 2027-03-01}
        I2: {section: 07 24 00, group: action, due_on: 2027-03-15}
fails SUB-07c at package.changes
    package: {revision: 1, changes: []}
fails SUB-07d at comments.C2.answer
    package: {revision: 1}
    comments:
      C1: {text: Show the floor line joint, answer: Joint J2 added}
      C2: {text: Name the sealant}
fails SUB-07e at package.review.action
    package: {revision: 1, review: {action: revise_and_resubmit}}
"""

import datetime
from functools import partial
from typing import NamedTuple

from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.model.absence import Absent, all_known, any_of
from specgen.model.field import Path
from specgen.model.project import asked_once
from specgen.model.typed_views import Description, SpecificationSection, SubmittalItem

RULE = Rule(
    "SUB-07",
    "Section numbers, whole systems, listed changes and answered comments",
    remedy="Correct the register and the changes.",
    steps="site_conditions",
    documents="D01 D03",
)


@RULE.test(
    "a",
    CAUTION,
    "The register cites section {found}, which is not among the specification sections.",
    at="submittal_item.section",
    basis="guide_submittals_memory contract_review",
    remedy="Correct the section number, or add the section.",
)
def no_such_section(item: SubmittalItem, project: Description) -> Violations:
    """An item stands under a section that the specification does not have."""
    cited = item.section
    if not any_of(project.contract.spec_sections, partial(_numbered, cited)):
        yield violation(cited)


@RULE.test(
    "b",
    CAUTION,
    "Items of one system are split over packages: {found}.",
    at="submittal_item.due_on",
    basis="guide_submittals_memory contract_review",
    remedy="Submit the whole system as one package.",
)
def system_split(item: SubmittalItem, project: Description) -> Violations:
    """Action items of one section fall due on different days."""
    register = _sort(project)
    system = register.systems.get(_packed(item.section)) if item.mark in register.settled else None
    if system is not None and len(system.dates) > 1:
        yield violation(system.told)
    elif item.mark in register.closed:
        return
    elif len(register.loose) + (system.size if system is not None else 0) > 1:
        unknown = (*(system.unknown if system is not None else ()), *register.unknown)
        if unknown:
            raise Absent(*unknown)


@RULE.test(
    "c",
    CAUTION,
    "Revision {found} lists no changes.",
    at="package.changes",
    basis="guide_submittals_memory contract_review",
    remedy="List the changes since the last issue.",
    why="a reviewer who has to search for the changes reviews the whole set again",
)
def changes_not_listed(project: Description) -> Violations:
    """A later revision says nothing of what changed."""
    if project.package.revision > 0 and not project.package.changes:
        yield violation(project.package.revision)


RULE.clause(
    "d",
    STOP,
    "A comment of the last review has no answer.",
    when="package.revision > 0 and comment.answer is not given",
    basis="contract_review review_memory",
    lift="never",
    remedy="Answer each comment, and say where in the set the answer is found.",
    why="a comment without an answer comes back with the next review",
)


@RULE.test(
    "e",
    CAUTION,
    "The last review says {found}, and none of its comments is listed.",
    at="package.review.action",
    basis="contract_review review_memory",
    remedy="List each comment of the review with its answer, or say in the changes that there was none.",
    why="comments that are not listed cannot be answered",
)
def comments_not_listed(project: Description) -> Violations:
    """The set comes back from a review that had something to say, and answers none of it."""
    review = project.package.review
    if all_known(
        lambda: project.package.revision > 0,
        lambda: review.action in _WITH_COMMENTS,
        lambda: not project.comments.is_given(),
    ):
        yield violation(review.action)


_MOST_TOLD = 12  # items whose marks a finding lists
# Actions of a review that come with comments.
_WITH_COMMENTS = ("approved_as_noted", "make_corrections_noted", "revise_and_resubmit", "rejected")


def _numbered(cited: str, section: SpecificationSection) -> bool:
    """Whether a section of the specification has a number, however it is spaced."""
    return _packed(section.number) == _packed(cited)


class _System(NamedTuple):
    """The items that go to the reviewer for action under one section; their dates, and what is not known."""

    size: int
    told: str  # their marks, as long as a sentence bears
    dates: frozenset[datetime.date]
    unknown: tuple[Path, ...]


class _Register(NamedTuple):
    """The items of the register by what is known of them."""

    systems: dict[str, _System]  # by section
    settled: frozenset[str]  # marks of the items of those systems
    closed: frozenset[str]  # marks of the items that ask for no action
    loose: frozenset[str]  # marks of the items that may belong to any system
    unknown: tuple[Path, ...]  # what is not known of those


@asked_once
def _sort(project: Description) -> _Register:
    """The register, looked into once for all its items."""
    found: dict[str, list[SubmittalItem]] = {}
    closed, loose, unknown = set(), set(), list[Path]()
    for item in project.contract.items:
        try:
            if item.group == "action":
                found.setdefault(_packed(item.section), []).append(item)
            else:
                closed.add(item.mark)
        except Absent as absent:
            loose.add(item.mark)
            unknown += absent.paths
    settled = frozenset(item.mark for items in found.values() for item in items)
    systems = {section: _gather(items) for section, items in found.items()}
    return _Register(systems, settled, frozenset(closed), frozenset(loose), tuple(unknown))


def _gather(items: list[SubmittalItem]) -> _System:
    """The system of some items; an item without a date leaves open whether they are apart."""
    dates, unknown = set(), list[Path]()
    for item in items:
        try:
            dates.add(item.due_on)
        except Absent as absent:
            unknown += absent.paths
    first = ", ".join(item.mark for item in items[:_MOST_TOLD])
    rest = len(items) - _MOST_TOLD
    told = f"{first}, and {rest} more" if rest > 0 else first
    return _System(len(items), told, frozenset(dates), tuple(unknown))


def _packed(number: str) -> str:
    """A section number without its spaces."""
    return "".join(number.split())
