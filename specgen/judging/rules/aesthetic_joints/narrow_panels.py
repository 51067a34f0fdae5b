"""No panel, and no leg of one, is so narrow that it looks like a leftover.

Why: a strip beside a window catches the light like the panel next to it and is half as wide. The eye finds it first,
and the gun overlaps on it twice.

passes
    joints: {}
    elevations:
      E1:
        {width: 8 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: [4 ft]}}
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
fails AJT-02d at elevations.E1.layout.consent
    joints: {}
    attachments: {A1: {kind: letter, issued_on: 2027-02-25}}
    elevations:
      E1:
        {width: 8 ft, height: 6 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: [5 ft], consent: A1}}
"""

from collections.abc import Callable
from fractions import Fraction
from typing import Literal

from specgen.judging.panel_text import name_each, quantity_like, report_panels
from specgen.judging.rule import CAUTION, NOTE, LaidOut, Rule, Violations, violation
from specgen.model.absence import if_given
from specgen.model.layout import Panel
from specgen.model.typed_views import Description, Elevation, PanelLimits
from specgen.model.value_text import long_date
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
    """Panels are narrower than the minimum side, and no letter agrees to them."""
    limits = project.panel_limits
    narrow = [panel for panel in _list_disputed(elevation, layout) if _is_narrow(panel, limits)]
    yield from report_panels(elevation, narrow, _find_worst("width"), limits.least_side, least=True)


@RULE.test(
    "b",
    CAUTION,
    "Panel height {found}; minimum {wanted}.",
    at="elevation.layout.horizontal_lines",
    basis="practice",
)
def too_low(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels are lower than the minimum side, and no letter agrees to them."""
    limits = project.panel_limits
    low = [panel for panel in _list_disputed(elevation, layout) if _is_low(panel, limits)]
    yield from report_panels(elevation, low, _find_worst("height"), limits.least_side, least=True)


@RULE.test(
    "c",
    CAUTION,
    "Panel narrowed by an opening, a roof, or the edge of the wall to {found}; minimum {wanted}.",
    at="elevation.layout.vertical_lines",
    basis="practice",
)
def narrow_leg(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels that are large enough have a leg that is not, and no letter agrees to them."""
    limits = project.panel_limits
    narrow = [
        panel
        for panel in _list_disputed(elevation, layout)
        if _has_narrow_leg(panel, limits) and not _is_narrow(panel, limits) and not _is_low(panel, limits)
    ]
    yield from report_panels(elevation, narrow, lambda panel: panel.least_side, limits.least_side, least=True)


@RULE.test(
    "d",
    NOTE,
    "Panels under the minimum side of {wanted}, agreed in writing: {found}.",
    at="elevation.layout.consent",
    basis="practice",
    remedy="Keep the terms of the letter; spray and recoat each of these panels whole.",
)
def agreed_panels(elevation: Elevation, project: Description, layout: LaidOut) -> Violations:
    """Panels are under the minimum side, and the letter that agrees to them is attached."""
    limits, letter = project.panel_limits, elevation.layout.consent
    narrow = [panel for panel in layout().panels if _has_narrow_leg(panel, limits)]
    if narrow:
        least = name_each(elevation, narrow, limits.least_side)
        day = if_given(lambda: letter.issued_on)
        dated = f", {long_date(day)}" if day else ""
        yield violation(f"{least} ({letter.mark}{dated})", wanted=limits.least_side)


def _list_disputed(elevation: Elevation, layout: LaidOut) -> tuple[Panel, ...]:
    """The panels of an elevation; none where a letter agrees to those under the minimum side."""
    return () if if_given(lambda: elevation.layout.consent) else layout().panels


def _find_worst(side: Literal["width", "height"]) -> Callable[[Panel], Fraction]:
    """The side of a rectangle; of any other panel its narrowest leg, which is never more."""
    return lambda panel: getattr(panel, side) if panel.is_rectangle else panel.least_side


def _has_narrow_leg(panel: Panel, limits: PanelLimits) -> bool:
    return less(quantity_like(limits.least_side, panel.least_side), limits.least_side)


def _is_narrow(panel: Panel, limits: PanelLimits) -> bool:
    return less(quantity_like(limits.least_side, panel.width), limits.least_side)


def _is_low(panel: Panel, limits: PanelLimits) -> bool:
    return less(quantity_like(limits.least_side, panel.height), limits.least_side)
