"""No panel, and no leg of one, is so narrow that it looks like a leftover.

Why: a strip beside a window catches the light like the panel next to it and is half as wide. The eye finds it first,
and the gun overlaps on it twice.

passes
    joints: {}
    elevations:
      E1:
        {width: 8 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: [4 ft]}}
passes
    joints: {}
    attachments: {LT1: {kind: letter}}
    elevations:
      E1:
        {width: 8 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [5 ft, 7 ft], horizontal_lines: [4 ft], side_consent: LT1}}
fails AJT-02a at elevations.E1.layout.vertical_lines
    joints: {}
    elevations:
      E1:
        {width: 8 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [5 ft, 7 ft], horizontal_lines: [4 ft]}}
fails AJT-02b at elevations.E1.layout.horizontal_lines
    joints: {}
    elevations:
      E1:
        {width: 8 ft, height: 6 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: [5 ft]}}
fails AJT-02c at elevations.E1.layout.vertical_lines
    joints: {}
    elevations:
      E1:
        {width: 5 ft, height: 5 ft, openings: {A: {x: 2 ft, y: 1 ft, width: 3 ft, height: 4 ft}},
         layout: {mode: given, vertical_lines: [], horizontal_lines: []}}
"""

from specgen.judging.panel_text import quantity_like, report_panels
from specgen.judging.rule import CAUTION, LaidOut, Rule, Violations
from specgen.model.layout import Panel
from specgen.model.typed_views import Description, Elevation, PanelLimits
from specgen.quantities.comparison import less

RULE = Rule(
    "AJT-02",
    "Minimum side of panels",
    remedy="Move the joint lines to edges of openings and clear of roofs; submit the architect's written agreement to "
    "what remains.",
    steps="aesthetic_joints",
    documents="D07",
)


@RULE.test(
    "a",
    CAUTION,
    "Panel width {found}; minimum {wanted}.",
    at="elevation.layout.vertical_lines",
    basis="practice",
)
def too_narrow(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels are narrower than the minimum side."""
    limits = project.panel_limits
    narrow = [panel for panel in _list_panels(elevation, layout) if _is_narrow(panel, limits)]
    yield from report_panels(elevation, narrow, lambda panel: panel.width, limits.least_side, least=True)


@RULE.test(
    "b",
    CAUTION,
    "Panel height {found}; minimum {wanted}.",
    at="elevation.layout.horizontal_lines",
    basis="practice",
)
def too_low(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels are lower than the minimum side."""
    limits = project.panel_limits
    low = [panel for panel in _list_panels(elevation, layout) if _is_low(panel, limits)]
    yield from report_panels(elevation, low, lambda panel: panel.height, limits.least_side, least=True)


@RULE.test(
    "c",
    CAUTION,
    "Panel narrowed by an opening, a roof, or the edge of the wall to {found}; minimum {wanted}.",
    at="elevation.layout.vertical_lines",
    basis="practice",
)
def narrow_leg(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels that are large enough have a leg that is not."""
    limits = project.panel_limits
    narrow = [
        panel
        for panel in _list_panels(elevation, layout)
        if less(quantity_like(limits.least_side, panel.least_side), limits.least_side)
        and not _is_narrow(panel, limits)
        and not _is_low(panel, limits)
    ]
    yield from report_panels(elevation, narrow, lambda panel: panel.least_side, limits.least_side, least=True)


def _list_panels(elevation: Elevation, layout: LaidOut) -> tuple[Panel, ...]:
    """The panels whose sides are judged: none where the architect has consented to those that are narrow."""
    panels = layout().panels
    return () if elevation.layout.get("side_consent") else panels


def _is_narrow(panel: Panel, limits: PanelLimits) -> bool:
    return less(quantity_like(limits.least_side, panel.width), limits.least_side)


def _is_low(panel: Panel, limits: PanelLimits) -> bool:
    return less(quantity_like(limits.least_side, panel.height), limits.least_side)
