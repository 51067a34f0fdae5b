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

from functools import partial

from specgen.judging.choice_groups import normalize
from specgen.judging.papers import SIGNED, naming, of_kind, to_list
from specgen.judging.rule import STOP, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_documented
from specgen.model.absence import all_known, read_all
from specgen.model.typed_views import Description

RULE = Rule(
    "SUB-06",
    "Compatibility letters",
    remedy="Get a signed letter that names both materials and the project.",
    steps="site_conditions",
    documents="D02 D18",
)

# Materials that meet: letter, how the two are called, their manufacturers, where the need of a letter stands.
MEETING = (
    ("a", "EIFS and finish", "eifs_source", "finish_source", "review_memory"),
    ("b", "EIFS and sealant", "eifs_source", "sealant_source", "guide_eifs_p21"),
    ("c", "EIFS and water-resistive barrier", "eifs_source", "wrb_source", "review_memory"),
    ("d", "finish and sealant", "finish_source", "sealant_source", "review_memory"),
)


def unvouched(one: str, other: str, project: Description) -> Violations:
    """Two manufacturers differ and no signed letter names both; a draft owes no letters."""
    letter = (of_kind("letter"), SIGNED, naming(one, other))
    if not is_draft(project) and all_known(
        lambda: _differ(project, one, other), lambda: not is_documented(project, letter)
    ):
        yield violation(to_add=to_list(letter))


def _differ(project: Description, one: str, other: str) -> bool:
    first, second = read_all(lambda: project.parties[one].name, lambda: project.parties[other].name)
    return normalize(first) != normalize(second)


for letter, both, one, other, basis in MEETING:
    RULE.test(
        letter,
        STOP,
        f"No letter confirms that {both} are compatible.",
        at=f"parties.{other}.name",
        basis=basis,
        remedy=f"Get a signed letter from the manufacturers of {both} that names both materials and the project.",
    )(partial(unvouched, one, other))
