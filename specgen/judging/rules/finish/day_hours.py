"""The least area that a day of spraying can end at takes no more hours than the day has.

Why: a day ends at a joint or corner. Where both coats of one column take longer than the day, its second coat goes on
the next day over a film that is no longer fresh, or the day ends within a panel and shows.

passes
    site: {latitude: 41.2 deg}
    elevations:
      E1:
        {facing: N, width: 30 ft, height: 20 ft, openings: {},
         layout: {mode: given, vertical_lines: [10 ft, 20 ft], horizontal_lines: []}}
    joints: {}
    schedule: {shift_start: 06:00, shift_hours: 10, spray_start: 2027-06-07, spray_end: 2027-06-25}
    shade: {X1: {elevation: E1, kind: shade_cloth}}
    crews: {red: {steps: [gloss], rates: {gloss: 300 ft2/h}}}
    coating: {gloss: {touch_dry_hours: 1.5}}
fails FIN-08a at elevations.E1.width
    site: {latitude: 41.2 deg}
    elevations:
      E1:
        {facing: S, width: 30 ft, height: 20 ft, openings: {},
         layout: {mode: given, vertical_lines: [10 ft, 20 ft], horizontal_lines: []}}
    joints: {}
    schedule: {shift_start: 06:00, shift_hours: 10, spray_start: 2027-06-07, spray_end: 2027-06-25}
    shade: {X1: {elevation: E1, kind: natural}}
    crews: {red: {steps: [gloss], rates: {gloss: 300 ft2/h}}}
    coating: {gloss: {touch_dry_hours: 1.5}}
"""

from fractions import Fraction

from specgen.computing.time.usable_hours import round_hours
from specgen.judging.rule import CAUTION, Computed, LaidOut, Rule, Violations, violation
from specgen.laying_out.columns import measure_columns
from specgen.model.absence import read_all
from specgen.model.typed_views import Description, Elevation
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "FIN-08",
    "Hours of a day of gloss",
    remedy="Set joints closer so that a day ends at one, use a second sprayer, or give the face shade cloth or a tent.",
    steps="gloss",
    documents="D07 D13 D14",
)


@RULE.test(
    "a",
    CAUTION,
    "Both gloss coats of the largest area between upright joints take {found}; the shortest day has {wanted}.",
    at="elevation.width",
    basis="practice computed",
)
def longer_than_the_day(
    elevation: Elevation, project: Description, usable_hours: Computed, day_area: Computed, layout: LaidOut
) -> Violations:
    """A column between upright joints needs more hours for its two coats than a day of the season has."""
    (_, working, laid_out), _ = read_all(
        lambda: read_all(usable_hours, day_area, layout),
        # Without a season the hours are those of any year's shortest day.
        lambda: read_all(lambda: project.schedule.spray_start, lambda: project.schedule.spray_end),
    )
    given = {row.symbol: row.value for row in working.inputs}
    has = next(step.value for step in working.steps if step.symbol == "H")
    largest = max((column.area for column in measure_columns(laid_out)), default=Fraction(0))
    per_pass = Quantity(largest, "area", "m2").number(working.unit) / given["r"]
    takes = max(per_pass, given["t"]) + per_pass
    if has > 0 and takes > has + 1e-6:
        yield violation(round_hours(takes), wanted=round_hours(has))
