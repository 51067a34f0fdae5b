"""The project's own panel limits are no looser than those it is judged by.

Why: A wish for larger panels does not make the spray gun reach farther.

passes
    {panel_limits: {max_width: 5 ft, max_height: 5 ft, max_area: 25 sq ft, least_side: 2 ft}}
fails AJT-07a at panel_limits.max_height
    {panel_limits: {max_height: 6 ft}}
fails AJT-07b at panel_limits.max_area
    {panel_limits: {max_area: 36 sq ft}}
fails AJT-07c at panel_limits.max_width
    {panel_limits: {max_width: 6 ft}}
fails AJT-07d at panel_limits.least_side
    {panel_limits: {least_side: 18 in}}
"""

from specgen.judging.rule import CAUTION, STOP, Rule

RULE = Rule(
    "AJT-07",
    "Panel limits of the project",
    remedy="Take the limits in force, or declare a deviation with a mockup of the larger panel.",
    steps="aesthetic_joints",
    documents="D07 D08",
)

RULE.clause(
    "a",
    STOP,
    "Panels may be {found} high here; {wanted} is the most that can be sprayed and kept even.",
    when="panel_limits.max_height > limit",
    limit="panel.height",
)

RULE.clause(
    "b",
    STOP,
    "Panels may have {found} here; {wanted} is the most that can be sprayed and kept even.",
    when="panel_limits.max_area > limit",
    limit="panel.area",
)

RULE.clause(
    "c",
    CAUTION,
    "Panels may be {found} wide here, more than {wanted}: confirm with the coating manufacturer.",
    when="panel_limits.max_width > limit",
    limit="panel.width",
)

RULE.clause(
    "d",
    CAUTION,
    "Sides of panels may be {found} here; {wanted} is the least.",
    when="panel_limits.least_side < limit",
    limit="panel.least_side",
)
