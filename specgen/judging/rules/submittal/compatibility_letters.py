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

from specgen.judging.choice_groups import plain
from specgen.judging.rule import STOP, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_documented, is_signed
from specgen.model.absence import all_known, read_all
from specgen.model.typed_views import Description

RULE = Rule(
    "SUB-06",
    "Letters that materials go together",
    remedy="Letters naming both materials and the project.",
    steps="site_conditions",
    documents="D02 D18",
)


@RULE.test(
    "a",
    STOP,
    "Nobody has put in writing that EIFS and finish go together.",
    at="parties.finish_source.name",
    basis="review_memory",
)
def eifs_and_finish(project: Description) -> Violations:
    """No signed letter speaks for EIFS and finish of two sources."""
    if _unvouched(project, "eifs_source", "finish_source"):
        yield violation()


@RULE.test(
    "b",
    STOP,
    "Nobody has put in writing that EIFS and sealant go together.",
    at="parties.sealant_source.name",
    basis="guide_eifs_p21",
)
def eifs_and_sealant(project: Description) -> Violations:
    """No signed letter speaks for EIFS and sealant of two sources."""
    if _unvouched(project, "eifs_source", "sealant_source"):
        yield violation()


@RULE.test(
    "c",
    STOP,
    "Nobody has put in writing that EIFS and weather barrier go together.",
    at="parties.wrb_source.name",
    basis="review_memory",
)
def eifs_and_barrier(project: Description) -> Violations:
    """No signed letter speaks for EIFS and weather barrier of two sources."""
    if _unvouched(project, "eifs_source", "wrb_source"):
        yield violation()


@RULE.test(
    "d",
    STOP,
    "Nobody has put in writing that finish and sealant go together.",
    at="parties.sealant_source.name",
    basis="review_memory",
)
def finish_and_sealant(project: Description) -> Violations:
    """No signed letter speaks for finish and sealant of two sources."""
    if _unvouched(project, "finish_source", "sealant_source"):
        yield violation()


def _unvouched(project: Description, one: str, other: str) -> bool:
    """Whether two sources differ and no signed letter names both; a draft owes no letters."""
    return not is_draft(project) and all_known(
        lambda: _differ(project, one, other),
        lambda: (
            not is_documented(
                project,
                lambda paper: paper.kind == "letter",
                is_signed,
                lambda paper: {one, other} <= set(paper.parties),
            )
        ),
    )


def _differ(project: Description, one: str, other: str) -> bool:
    first, second = read_all(lambda: project.parties[one].name, lambda: project.parties[other].name)
    return plain(first) != plain(second)
