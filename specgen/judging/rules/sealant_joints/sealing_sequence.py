"""Sealant is placed at a time when neither it nor the coats spoil one another.

Why: silicone sheds traces of oil onto whatever is near, and a coat sprayed over them draws back in craters.
Any sealant gives off vapor until it has cured, and takes up dust and mist on its skin.

passes
    sealants: {S1: {chemistry: silicone, sequence: after_gloss}}
passes
    sealants: {S1: {chemistry: hybrid, sequence: before_gloss, cure_hours: 72}}
fails SLT-07c at log.1.started_at
    elevations: {E1: {wall: W1}}
    log:
      - {step: second_pass, elevation: E1, date: 2027-06-01, started_at: 08:00, ended_at: "14:00"}
      - {step: sealant, elevation: E1, date: 2027-06-02, started_at: "13:00"}
fails SLT-07d at log.1.started_at
    elevations: {E1: {wall: W1}}
    primer: {dry_hours: 12}
    log:
      - {step: primer, elevation: E1, date: 2027-06-01, started_at: 08:00, ended_at: "14:00"}
      - {step: sealant, elevation: E1, date: 2027-06-01, started_at: "16:00"}
passes
    primer: {dry_hours: 12}
    schedule: {gaps: [{from_step: primer, to_step: sealant, hours: 48}]}
fails SLT-07a at schedule.gaps.0.hours
    schedule: {gaps: [{from_step: second_pass, to_step: sealant, hours: 12}]}
fails SLT-07b at schedule.gaps.0.hours
    primer: {dry_hours: 12}
    schedule: {gaps: [{from_step: primer, to_step: sealant, hours: 4}]}
fails SLT-07e at sealants.S1.sequence
    sealants: {S1: {chemistry: silicone, sequence: before_gloss}}
fails SLT-07f at sealants.S1.sequence
    sealants: {S1: {chemistry: polyurethane, sequence: before_gloss}}
fails SLT-07g at sealants.S1.cure_hours
    sealants: {S1: {chemistry: polyurethane, sequence: before_gloss, cure_hours: 12}}
"""

from fractions import Fraction

from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.judging.site_limits import planned
from specgen.judging.site_work import hours_since, is_told_at
from specgen.model.typed_views import Description, SiteRecordEntry
from specgen.recording.elapsed import hours_text
from specgen.recording.history import History

RULE = Rule(
    "SLT-07",
    "Sealant sequence",
    remedy="Install the sealant after the gloss, with the masking removed first.",
    steps="sealant",
    documents="D08 D14",
)

RULE.clause(
    "a",
    CAUTION,
    "Sealant is planned {found} h after the base coat; usual minimum {wanted} h; "
    "confirm with the sealant manufacturer.",
    when="planned_wait.from_step = second_pass and planned_wait.to_step = sealant and planned_wait.hours < limit",
    limit="sealant.after_base_coat",
    remedy="Wait a minimum of {sealant.after_base_coat}, or the sealant manufacturer's time where that is longer.",
    why="sealant does not bond to a base coat that still gives off water",
)

RULE.clause(
    "b",
    STOP,
    "Sealant is planned {found} h after the primer; the primer dries for a minimum of {wanted} h.",
    when="planned_wait.from_step = primer and planned_wait.to_step = sealant and planned_wait.hours < primer.dry_hours",
    basis="practice",
    remedy="Plan the sealant after the drying time of the primer.",
    why="sealant does not bond to a primer that still gives off water",
)

RULE.clause(
    "e",
    CAUTION,
    "Silicone is installed before the gloss and can cause craters in it.",
    when="sealant.chemistry = silicone and sealant.sequence = before_gloss",
    basis="memory",
)

RULE.clause(
    "f",
    CAUTION,
    "Sealant is installed before the gloss, and no cure time is planned for it.",
    when="sealant.cure_hours is not given and sealant.sequence = before_gloss",
    basis="practice",
    remedy="Plan the sealant manufacturer's cure time, usually minimum {sealant.before_gloss}, or install the "
    "sealant after the gloss.",
    why="gloss over a sealant that has not cured cracks as the sealant shrinks",
)

RULE.clause(
    "g",
    CAUTION,
    "Sealant cures for {found} h before the gloss is sprayed; usual minimum {wanted} h, and the sealant "
    "manufacturer's time governs.",
    when="sealant.sequence = before_gloss and sealant.cure_hours < limit",
    limit="sealant.before_gloss",
    remedy="Wait a minimum of {sealant.before_gloss} or the sealant manufacturer's cure time before the gloss, "
    "or install the sealant after it.",
    why="gloss over a sealant that has not cured cracks as the sealant shrinks",
)


@RULE.test(
    "c",
    CAUTION,
    "Sealant was installed {found} after the base coat; usual minimum {wanted}; confirm with the sealant manufacturer.",
    at="log.started_at",
    limit="sealant.after_base_coat",
    remedy=(
        "Obtain the sealant manufacturer's written word on this wait; pull-test the bead by hand once it has cured, "
        "and replace it where it loses bond."
    ),
    why="sealant does not bond to a base coat that still gives off water",
)
def sealed_on_fresh_base_coat(log: SiteRecordEntry, history: History, project: Description, limit: int) -> Violations:
    """Sealant was installed before the base coat had dried for the usual time."""
    if log.step == "sealant" and is_told_at(log):
        hours = hours_since(log, "second_pass", history, project)
        if hours is not None and hours < limit:
            yield violation(hours_text(hours), wanted=hours_text(Fraction(limit)))


@RULE.test(
    "d",
    STOP,
    "Sealant was installed {found} after the primer; minimum {wanted}.",
    at="log.started_at",
    basis="practice",
    remedy=(
        "Stop. Pull-test the bead by hand once it has cured; where it loses bond, cut it out, clean the faces to "
        "sound, dry primer, and seal again."
    ),
    why="sealant does not bond to a primer that still gives off water",
)
def sealed_on_fresh_primer(log: SiteRecordEntry, history: History, project: Description) -> Violations:
    """Sealant was installed before the primer had dried."""
    if log.step == "sealant" and is_told_at(log):
        hours = hours_since(log, "primer", history, project)
        least = planned(project, "primer", "dry_hours")
        if hours is not None and hours < least.value:
            yield violation(hours_text(hours), wanted=hours_text(Fraction(least.value)), sources=least.sources)
