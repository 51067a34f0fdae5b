"""The sources of materials that meet have put in writing that these go together.

Why: each source vouches for its own goods only. Where two of them touch and let go, each names the
other, and nobody pays.

passes
    package: {purpose: mockup_submittal}
    parties:
      eifs_source: {name: Ashdown}
      wrb_source: {name: Ashdown}
      finish_source: {name: Birchall}
      sealant_source: {name: Corrie}
    attachments:
      A1: {kind: letter, signed: yes, parties: [eifs_source, finish_source, sealant_source]}
fails SUB-06a at parties.finish_source.name
    package: {purpose: mockup_submittal}
    parties: {eifs_source: {name: Ashdown}, finish_source: {name: Birchall}}
fails SUB-06b at parties.sealant_source.name
    package: {purpose: mockup_submittal}
    parties: {eifs_source: {name: Ashdown}, sealant_source: {name: Corrie}}
fails SUB-06c at parties.wrb_source.name
    package: {purpose: mockup_submittal}
    parties: {eifs_source: {name: Ashdown}, wrb_source: {name: Denholm}}
fails SUB-06d at parties.sealant_source.name
    package: {purpose: mockup_submittal}
    parties: {finish_source: {name: Birchall}, sealant_source: {name: Corrie}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.choice_groups import plain
from specgen.judging.rule import STOP, Found, Rule, draft, found
from specgen.judging.three_valued import every, shown, signed

RULE = Rule(
    "SUB-06",
    "Letters that materials go together",
    remedy="Letters naming both materials and the project.",
    steps="site_conditions",
    documents="D02 D18",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Nobody has put in writing that EIFS and finish go together.",
    needs="package.purpose parties.eifs_source.name parties.finish_source.name attachments.*.kind "
    "attachments.*.signed attachments.*.parties",
    at="parties.finish_source.name",
    basis="review_memory",
)
def eifs_and_finish(project: Any) -> Iterator[Found]:
    """No signed letter speaks for EIFS and finish of two sources."""
    if _unvouched(project, "eifs_source", "finish_source"):
        yield found()


@RULE.clause(
    "b",
    STOP,
    "Nobody has put in writing that EIFS and sealant go together.",
    needs="package.purpose parties.eifs_source.name parties.sealant_source.name attachments.*.kind "
    "attachments.*.signed attachments.*.parties",
    at="parties.sealant_source.name",
    basis="guide_eifs_p21",
)
def eifs_and_sealant(project: Any) -> Iterator[Found]:
    """No signed letter speaks for EIFS and sealant of two sources."""
    if _unvouched(project, "eifs_source", "sealant_source"):
        yield found()


@RULE.clause(
    "c",
    STOP,
    "Nobody has put in writing that EIFS and weather barrier go together.",
    needs="package.purpose parties.eifs_source.name parties.wrb_source.name attachments.*.kind "
    "attachments.*.signed attachments.*.parties",
    at="parties.wrb_source.name",
    basis="review_memory",
)
def eifs_and_barrier(project: Any) -> Iterator[Found]:
    """No signed letter speaks for EIFS and weather barrier of two sources."""
    if _unvouched(project, "eifs_source", "wrb_source"):
        yield found()


@RULE.clause(
    "d",
    STOP,
    "Nobody has put in writing that finish and sealant go together.",
    needs="package.purpose parties.finish_source.name parties.sealant_source.name attachments.*.kind "
    "attachments.*.signed attachments.*.parties",
    at="parties.sealant_source.name",
    basis="review_memory",
)
def finish_and_sealant(project: Any) -> Iterator[Found]:
    """No signed letter speaks for finish and sealant of two sources."""
    if _unvouched(project, "finish_source", "sealant_source"):
        yield found()


def _unvouched(project: Any, one: str, other: str) -> bool:
    """Whether two sources differ and no signed letter names both; a draft owes no letters."""
    return not draft(project) and every(
        lambda: plain(getattr(project.parties, one).name) != plain(getattr(project.parties, other).name),
        lambda: (
            not shown(
                project,
                lambda paper: paper.kind == "letter",
                signed,
                lambda paper: {one, other} <= set(paper.parties),
            )
        ),
    )
