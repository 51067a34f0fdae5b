"""A dark color over EPS has the written yes of the EIFS source.

Why: a dark face in the sun can grow so hot that the board softens and draws back from its skin. The source
knows what its board and base coat have stood elsewhere.

passes
    package: {purpose: mockup_submittal}
    colors: {C1: {lrv: 20}}
fails HEA-05a at colors.C1.lrv
    colors: {C1: {lrv: 14}}
fails HEA-05b at attachments.*.colors
    package: {purpose: mockup_submittal}
    colors: {C1: {lrv: 14}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, draft, found
from specgen.judging.three_valued import every, shown, signed
from specgen.quantities.comparison import less

RULE = Rule(
    "HEA-05",
    "Dark color over EPS",
    remedy="Letter plus HEA-02 passed, or lighter color.",
    steps="gloss",
    documents="D02",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Light reflectance is {found} %; {wanted} % is the usual least over EPS: confirm.",
    each="colors",
    needs="colors.*.lrv",
    limit="color.lrv_least",
)
def dark(color: Any, limit: Any) -> Iterator[Found]:
    """The color is darker than usual over EPS."""
    if less(color.lrv, limit):
        yield found(color.lrv, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "The EIFS source has not agreed in writing to this dark color: confirm.",
    each="colors",
    needs="package.purpose colors.*.lrv attachments.*.kind attachments.*.signed attachments.*.parties "
    "attachments.*.colors",
    limit="color.lrv_least",
)
def dark_without_letter(color: Any, project: Any, limit: Any) -> Iterator[Found]:
    """No signed letter of the EIFS source takes the dark color."""
    if not draft(project) and every(lambda: less(color.lrv, limit), lambda: not _agreed(color, project)):
        yield found()


def _agreed(color: Any, project: Any) -> bool:
    """Whether a signed letter of the EIFS source names the color."""
    return shown(
        project,
        lambda paper: paper.kind == "letter",
        lambda paper: color in paper.colors,
        lambda paper: "eifs_source" in paper.parties,
        signed,
    )
