"""An open platform stands close to the wall, or has a guard in front.

Why: a person at the wall can fall through the gap in front of the platform. Plastering is allowed a
wider gap than other work, so one scaffold may do for the base coat and not for the spray.

passes
    safety: {rules: us_osha}
    access: {A1: {kind: frame_scaffold, front_guard: none, face_gap: 14 in}}
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
fails ACC-05e at access.A1.face_gap
    safety: {rules: us_osha}
    access: {A1: {kind: outrigger, front_guard: none, face_gap: 6 in}}
fails ACC-05f at access.A1.face_gap
    safety: {rules: other}
    access: {A1: {kind: outrigger, front_guard: none, face_gap: 6 in}}
"""

from specgen.judging.rule import Rule

RULE = Rule(
    "ACC-05",
    "Platform distance from the wall, or guardrail",
    remedy="Close the gap, fit a front guardrail, or use personal fall arrest.",
    steps="site_conditions",
    documents="D15",
)

# One platform serves all work at the wall.
CLOSE = (
    "Move the platform to within {access.gap} ({access.gap_plastering} for plastering) of the wall, fit a front "
    "guardrail, or use personal fall arrest."
)

RULE.safety_clauses(
    ("a", "b"),
    "The open platform edge stands {found} from the wall; maximum {wanted} for plastering.",
    when="means_of_access.front_guard = none and means_of_access.face_gap > limit",
    limit="access.gap_plastering",
    remedy=CLOSE,
)

RULE.safety_clauses(
    ("c", "d"),
    "The open platform edge stands {found} from the wall; maximum {wanted} for spraying and other work.",
    when="means_of_access.front_guard = none and means_of_access.face_gap > limit",
    limit="access.gap",
    remedy=CLOSE,
)

RULE.safety_clauses(
    ("e", "f"),
    "The platform of the outrigger scaffold stands {found} from the wall; maximum {wanted}.",
    when="means_of_access.kind = outrigger and means_of_access.front_guard = none and means_of_access.face_gap > limit",
    limit="access.gap_outrigger",
    remedy=(
        "Move the platform to within {access.gap_outrigger} of the wall, fit a front guardrail, or use "
        "personal fall arrest."
    ),
)
