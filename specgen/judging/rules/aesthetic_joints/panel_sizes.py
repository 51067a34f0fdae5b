"""No panel between joint lines is larger than can be sprayed whole.

Why: a panel is sprayed wet on wet from edge to edge. What a gunner cannot reach before the edge dries stays in sight
as a lap.

passes
    joints: {}
    elevations:
      E1:
        {width: 10 ft, height: 10 ft, openings: {},
         layout: {mode: given, vertical_lines: [5 ft], horizontal_lines: [5 ft]}}
fails AJT-01a at elevations.E1.layout.horizontal_lines
    joints: {}
    elevations:
      E1:
        {width: 8 ft, height: 10 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: [4 ft]}}
fails AJT-01b at elevations.E1.layout.horizontal_lines
    joints: {}
    panel_limits: {max_area: 16 sq ft}
    elevations:
      E1:
        {width: 10 ft, height: 10 ft, openings: {},
         layout: {mode: given, vertical_lines: [5 ft], horizontal_lines: [5 ft]}}
fails AJT-01c at elevations.E1.layout.vertical_lines
    joints: {}
    elevations:
      E1:
        {width: 10 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: [4 ft]}}
"""

from specgen.judging.panel_text import quantity_like, report_panels
from specgen.judging.rule import CAUTION, STOP, LaidOut, Rule, Violations
from specgen.model.layout import Panel
from specgen.model.typed_views import Description, Elevation, PanelLimits
from specgen.quantities.comparison import more

RULE = Rule(
    "AJT-01",
    "Panels no larger than sprays evenly",
    remedy="Add a horizontal joint line, or request a layout.",
    steps="aesthetic_joints",
    documents="D07",
)


@RULE.test(
    "a",
    STOP,
    "Panel height {found}; maximum {wanted}, the most that sprays evenly.",
    at="elevation.layout.horizontal_lines",
    basis="practice",
)
def too_high(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels are higher than the limit."""
    limits = project.panel_limits
    past = [panel for panel in layout().panels if _is_too_high(panel, limits)]
    yield from report_panels(elevation, past, lambda panel: panel.height, limits.max_height)


@RULE.test(
    "b",
    STOP,
    "Panel area {found}; maximum {wanted}, the most that sprays evenly.",
    at="elevation.layout.horizontal_lines",
    basis="practice",
    remedy="Add a joint line, or request a layout.",
)
def too_large(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels have more area than the limit."""
    limits = project.panel_limits
    past = [panel for panel in layout().panels if _is_too_large(panel, limits)]
    yield from report_panels(elevation, past, lambda panel: panel.net_area, limits.max_area)


@RULE.test(
    "c",
    CAUTION,
    "Panel width {found}; usual maximum {wanted}; height and area are within their limits.",
    at="elevation.layout.vertical_lines",
    basis="memory",
    remedy="Add a vertical joint line, or submit the coating manufacturer's confirmation and show the wider panel "
    "on the mockup.",
)
def too_wide(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels are wider than the limit, and within the others."""
    limits = project.panel_limits
    past = [
        panel
        for panel in layout().panels
        if more(quantity_like(limits.max_width, panel.width), limits.max_width)
        and not _is_too_high(panel, limits)
        and not _is_too_large(panel, limits)
    ]
    yield from report_panels(elevation, past, lambda panel: panel.width, limits.max_width)


def _is_too_high(panel: Panel, limits: PanelLimits) -> bool:
    return more(quantity_like(limits.max_height, panel.height), limits.max_height)


def _is_too_large(panel: Panel, limits: PanelLimits) -> bool:
    return more(quantity_like(limits.max_area, panel.net_area), limits.max_area)
