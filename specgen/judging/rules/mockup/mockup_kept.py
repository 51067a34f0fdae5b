"""The mockup stands until the work is complete, and cut tests are made beside it.

Why: the last panel is judged by it as the first one was. A mockup that is gone, or cut up, leaves only what
people remember.

passes
    mockup: {kept_to: 2027-10-29, destructive_area_apart: yes}
    contract: {completion_date: 2027-10-29}
fails MOC-07a at mockup.kept_to
    mockup: {kept_to: 2027-08-01}
    contract: {completion_date: 2027-10-29}
fails MOC-07b at mockup.destructive_area_apart
    mockup: {destructive_area_apart: no}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "MOC-07",
    "Mockup kept until completion",
    remedy="Keep the mockup whole until completion.",
    steps="mockup",
    documents="D09",
)

RULE.clause(
    "a",
    CAUTION,
    "The mockup is kept until {found}; the work ends on {wanted}.",
    when="mockup.kept_to < contract.completion_date",
    basis="memory",
    remedy="Keep the mockup until the work is complete.",
)

RULE.clause(
    "b",
    CAUTION,
    "Cut tests are planned on the face that is to be kept.",
    when="mockup.destructive_area_apart = no",
    basis="memory",
    remedy="Set apart an area for cut and pull tests.",
    why="a cut test leaves a scar in the face that the wall is judged by",
)
