"""Each coat dries for its hours, is dry and even, and is released before the next is sprayed.

Why: water that a coat shuts in comes out as blisters and dull patches. Once the next coat is on, nobody can see what
lies below it.

passes
    elevations: {E1: {wall: W1}}
    release:
      - {step: smoothing_2, elevation: E1, date: 2027-06-15, time: "11:00", hours_dry: 24, wall_dry: yes}
      - {step: primer, elevation: E1, date: 2027-06-16, time: 07:00, hours_dry: 15, even_look: yes}
    log:
      - {step: primer, elevation: E1, date: 2027-06-15, started_at: "13:00", ended_at: "16:00"}
      - {step: gloss, elevation: E1, date: 2027-06-16, started_at: 07:30}
fails FIN-07a at log.0.step
    elevations: {E1: {wall: W1}}
    log: [{step: primer, elevation: E1, date: 2027-06-16, started_at: 07:30}]
fails FIN-07b at release.0.hours_dry
    smoothing: {dry_hours: 24}
    release: [{step: smoothing_2, hours_dry: 20}]
fails FIN-07c at release.0.wall_dry
    release: [{step: smoothing_2, wall_dry: no}]
fails FIN-07d at release.0.even_look
    release: [{step: smoothing_2, even_look: no}]
fails FIN-07e at log.0.step
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, elevation: E1, date: 2027-06-16, started_at: 07:30}]
fails FIN-07f at release.0.hours_dry
    primer: {dry_hours: 12}
    release: [{step: primer, hours_dry: 8}]
fails FIN-07g at release.0.moisture_reading
    primer: {release_moisture: 12}
    release: [{step: primer, moisture_reading: 15}]
fails FIN-07h at release.0.even_look
    release: [{step: primer, even_look: no}]
fails FIN-07i at log.1.started_at
    elevations: {E1: {wall: W1}}
    gloss: {touch_dry_hours: 2}
    log:
      - {step: gloss, coat: 1, elevation: E1, date: 2027-06-16, started_at: 07:30, ended_at: 09:00}
      - {step: gloss, coat: 2, elevation: E1, date: 2027-06-16, started_at: "10:59"}
fails FIN-07j at release.0.hours_dry
    elevations: {E1: {wall: W1}}
    release: [{step: primer, elevation: E1, date: 2027-06-15, time: "20:00", hours_dry: 12}]
    log: [{step: primer, elevation: E1, date: 2027-06-15, started_at: "13:00", ended_at: "16:00"}]
"""

from fractions import Fraction

from specgen.judging.released_before import Point, is_released
from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.judging.site_limits import planned
from specgen.judging.site_work import hours_dried, hours_since, is_told_at, tells_of_work
from specgen.model.absence import if_given
from specgen.model.typed_views import Description, Release, SiteRecordEntry
from specgen.recording.elapsed import hours_text
from specgen.recording.history import History

RULE = Rule(
    "FIN-07",
    "Release of each coat",
    remedy="Wait out the drying time, read the meter, look at the face, and sign the release; then spray.",
    steps="smoothing_2 release_primer primer gloss",
    documents="D11 D12d",
)

SMOOTHING = Point(of=("smoothing_2",), releases=("smoothing_2",), inspections=("smoothing_2",))
LAST_SMOOTHING = "(release.step = smoothing_2 or (release.step = smoothing_1 and smoothing.coats = 1))"
ONE_SMOOTHING = Point(of=("smoothing_1",), releases=("smoothing_1", "smoothing_2"), inspections=SMOOTHING.inspections)
PRIMER = Point(of=("primer",), releases=("primer", "release_primer"), inspections=("release_primer", "primer"))
# Hours are written down in whole ones: up to half an hour is rounding.
ROUNDING = Fraction(1, 2)
WITHDRAW = "Withdraw the release. Release the area again when it has dried {wanted} by the record; "


@RULE.test(
    "a",
    STOP,
    "The primer was begun before the smoothing was released.",
    at="log.step",
    basis="practice",
    step="primer",
    remedy=(
        "Stop spraying. Prime no further area until its smoothing is released; let what was primed dry, and look there "
        "for blisters and loss of bond before the gloss."
    ),
)
def primed_before_release(log: SiteRecordEntry, history: History, project: Description) -> Violations:
    """Primer was sprayed on smoothing that was not released."""
    if log.step == "primer" and is_told_at(log):
        point = ONE_SMOOTHING if project.smoothing.coats == 1 else SMOOTHING
        if not is_released(log, point, history):
            yield violation()


@RULE.test(
    "b",
    STOP,
    "The smoothing was released after {found}; minimum {wanted}.",
    at="release.hours_dry",
    basis="practice",
    remedy=f"{WITHDRAW}prime it only then.",
)
def smoothing_released_early(release: Release, history: History, project: Description) -> Violations:
    """Smoothing was released before its drying time was up."""
    if release.step == "smoothing_2" or (release.step == "smoothing_1" and project.smoothing.coats == 1):
        yield from _list_early(release, history, project, "smoothing")


RULE.clause(
    "c",
    STOP,
    "The smoothing was released while the wall was damp.",
    when=f"{LAST_SMOOTHING} and release.wall_dry = no",
    basis="practice",
    remedy="Withdraw the release. Dry the wall, find where the water comes from, and release the area when it is dry.",
)

RULE.clause(
    "d",
    STOP,
    "The smoothing was released while it looked uneven.",
    when=f"{LAST_SMOOTHING} and release.even_look = no",
    basis="practice",
    remedy="Withdraw the release. Let dark spots dry, mend rough ones, and release the area when it looks even.",
)


@RULE.test(
    "e",
    STOP,
    "The gloss was begun before the primer was released.",
    at="log.step",
    basis="practice",
    step="gloss",
    remedy=(
        "Stop spraying. Gloss no further area until its primer is released; let what was sprayed dry, and look there "
        "for blisters, dull patches, and loss of bond."
    ),
)
def glossed_before_release(log: SiteRecordEntry, history: History) -> Violations:
    """Gloss was sprayed on primer that was not released."""
    if log.step == "gloss" and is_told_at(log) and not is_released(log, PRIMER, history):
        yield violation()


@RULE.test(
    "f",
    STOP,
    "The primer was released after {found}; minimum {wanted}.",
    at="release.hours_dry",
    basis="practice",
    step="release_primer",
    remedy=f"{WITHDRAW}spray gloss on it only then.",
)
def primer_released_early(release: Release, history: History, project: Description) -> Violations:
    """Primer was released before its drying time was up."""
    if release.step in ("primer", "release_primer"):
        yield from _list_early(release, history, project, "primer")


RULE.clause(
    "g",
    STOP,
    "The meter read {found} when the primer was released; maximum {wanted}.",
    when="release.step in {primer, release_primer} and release.moisture_reading > primer.release_moisture",
    basis="practice",
    step="release_primer",
    remedy=(
        "Withdraw the release. Let the area dry, and release it when the meter reads {wanted} or less on each panel."
    ),
)

RULE.clause(
    "h",
    STOP,
    "The primer was released while it looked uneven.",
    when="release.step in {primer, release_primer} and release.even_look = no",
    basis="practice",
    step="release_primer",
    remedy="Withdraw the release. Let damp spots dry, respray thin ones, and release the area when it looks even.",
)


@RULE.test(
    "i",
    STOP,
    "This coat of gloss was begun {found} after the one before it; minimum {wanted}.",
    at="log.started_at",
    basis="practice",
    step="gloss",
    remedy=(
        "Stop. Let both coats dry, view them against the mockup for runs, wrinkles, and dull patches, and recoat to a "
        "natural break where they show."
    ),
)
def next_coat_early(log: SiteRecordEntry, history: History, project: Description) -> Violations:
    """A further coat of gloss went on before the one below it was dry to touch."""
    if log.step != "gloss" or not tells_of_work(log) or log.coat < 2:
        return
    hours = hours_since(log, "gloss", history, project, coat=log.coat - 1)
    if hours is not None:
        least = planned(project, "gloss", "touch_dry_hours")
        if hours < least.value:
            yield violation(hours_text(hours), wanted=hours_text(least.value), sources=least.sources)


@RULE.test(
    "j",
    CAUTION,
    "The release states {found} of drying; by the site record it was {wanted}.",
    at="release.hours_dry",
    basis="practice",
    remedy="Correct the release to the hours of the site record, or the record where that is wrong, and sign it again.",
    why="whoever sprays next trusts the hours that were signed",
)
def hours_overstated(release: Release, history: History, project: Description) -> Violations:
    """A release states more hours of drying than there were between the work and its signature."""
    stated = if_given(lambda: release.hours_dry)
    hours = None if stated is None else hours_dried(release, history, project)
    if stated is not None and hours is not None and stated > hours + ROUNDING:
        yield violation(hours_text(Fraction(stated)), wanted=hours_text(hours))


def _list_early(release: Release, history: History, project: Description, coat: str) -> Violations:
    """A release before the drying time of a coat was up: by the record, else by the hours that it states."""
    hours = hours_dried(release, history, project)
    hours = Fraction(release.hours_dry) if hours is None else hours
    least = planned(project, coat, "dry_hours")
    if hours < least.value:
        yield violation(hours_text(hours), wanted=hours_text(Fraction(least.value)), sources=least.sources)
