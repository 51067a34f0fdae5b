"""An open platform stands close to the wall, or has a guard in front.

Why: a person at the wall can fall through the gap in front of the platform. Plastering is allowed a
wider gap than other work, so one scaffold may do for the base coat and not for the spray.

passes
    safety: {rules: us_osha}
    access: {A1: {front_guard: none, face_gap: 14 in}}
fails ACC-05a at access.A1.face_gap
    safety: {rules: us_osha}
    access: {A1: {front_guard: none, face_gap: 20 in}}
fails ACC-05b at access.A1.face_gap
    safety: {rules: other}
    access: {A1: {front_guard: none, face_gap: 20 in}}
fails ACC-05c at access.A1.face_gap
    safety: {rules: us_osha}
    access: {A1: {front_guard: none, face_gap: 16 in}}
fails ACC-05d at access.A1.face_gap
    safety: {rules: other}
    access: {A1: {front_guard: none, face_gap: 16 in}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, STOP, Found, Rule, found
from specgen.judging.three_valued import every
from specgen.quantities.comparison import more

RULE = Rule(
    "ACC-05",
    "Platform close to the wall, or guarded",
    remedy="Close the gap, or front guard or harness.",
    steps="site_conditions",
    documents="D15",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "For plastering the open platform stands {found} from the wall; {wanted} is the most.",
    each="access",
    lift="never",
    needs="safety.rules access.*.front_guard access.*.face_gap",
    limit="access.gap_plastering",
)
def gap_while_plastering(access: Any, project: Any, limit: Any) -> Iterator[Found]:
    """The gap is too wide even for plastering, under federal rules."""
    if _open(access, project, "us_osha", limit):
        yield found(access.face_gap, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "For plastering the open platform stands {found} from the wall; {wanted} is the most: local law governs, confirm.",
    each="access",
    needs="safety.rules access.*.front_guard access.*.face_gap",
    limit="access.gap_plastering",
)
def gap_while_plastering_elsewhere(access: Any, project: Any, limit: Any) -> Iterator[Found]:
    """The gap is too wide even for plastering, where local law governs."""
    if _open(access, project, "other", limit):
        yield found(access.face_gap, wanted=limit)


@RULE.clause(
    "c",
    STOP,
    "The open platform stands {found} from the wall; {wanted} is the most for this work.",
    each="access",
    lift="never",
    needs="safety.rules access.*.front_guard access.*.face_gap",
    limit="access.gap",
)
def gap(access: Any, project: Any, limit: Any) -> Iterator[Found]:
    """The gap is too wide for spraying and all other work, under federal rules."""
    if _open(access, project, "us_osha", limit):
        yield found(access.face_gap, wanted=limit)


@RULE.clause(
    "d",
    CAUTION,
    "The open platform stands {found} from the wall; {wanted} is the most for this work: local law governs, confirm.",
    each="access",
    needs="safety.rules access.*.front_guard access.*.face_gap",
    limit="access.gap",
)
def gap_elsewhere(access: Any, project: Any, limit: Any) -> Iterator[Found]:
    """The gap is too wide for spraying and all other work, where local law governs."""
    if _open(access, project, "other", limit):
        yield found(access.face_gap, wanted=limit)


def _open(access: Any, project: Any, rules: str, limit: Any) -> bool:
    """Whether these rules apply and an unguarded platform stands off the wall by more than the limit."""
    return every(
        lambda: project.safety.rules == rules,
        lambda: access.front_guard == "none",
        lambda: more(access.face_gap, limit),
    )
