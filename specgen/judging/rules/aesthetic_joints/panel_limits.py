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
    remedy="Reduce the panel height to {panel.height}, or declare a deviation with a mockup of the larger panel.",
    steps="aesthetic_joints",
    documents="D07 D08",
)

RULE.clause(
    "a",
    STOP,
    "Panel height limit is {found}; maximum {wanted}, the most that sprays evenly.",
    when="panel_limits.max_height > limit",
    limit="panel.height",
)

RULE.clause(
    "b",
    STOP,
    "Panel area limit is {found}; maximum {wanted}, the most that sprays evenly.",
    when="panel_limits.max_area > limit",
    limit="panel.area",
    remedy="Reduce the panel area to {panel.area}, or declare a deviation with a mockup of the larger panel.",
)

RULE.clause(
    "c",
    CAUTION,
    "Panel width limit is {found}; usual maximum {wanted}; confirm with the coating manufacturer.",
    when="panel_limits.max_width > limit",
    limit="panel.width",
    remedy="Reduce the panel width to {panel.width}, or submit the coating manufacturer's confirmation and show "
    "the wider panel on the mockup.",
)

RULE.clause(
    "d",
    CAUTION,
    "Smallest panel side is {found}; usual minimum {wanted}.",
    when="panel_limits.least_side < limit",
    limit="panel.least_side",
    remedy="Set the smallest panel side to a minimum of {panel.least_side}, or show the narrower panel on the mockup.",
)
