"""The steps of the mockup and the day on which each can begin, by what dries and cures before it."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime
from fractions import Fraction

from specgen.computing.mockup_days import (
    UNTOLD_BARRIER,
    find_mockup_calendar,
    find_mockup_drying,
    find_start_behind,
    has_adhesive_pulls,
)
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.mockup import find_start, list_fluid_walls, list_mockup_walls
from specgen.documents.mockup_tests import has_beads, is_pan_open, name_water_tests
from specgen.documents.steps import StepPage, steps
from specgen.model.calendar import WorkCalendar
from specgen.model.typed_views import root_of
from specgen.quantities.format import format_decimal
from specgen.resolving.drying import BETWEEN, DRYING, count_coats_within

# The mockup cannot wait for itself and has no parapet; equipment is cleaned at the end of the coats that name it.
_LEFT_OUT = {"mockup", "clean_equipment", "metal_caps", "final_viewing"}
_CLEANED = {"primer": ", then cleaning of spray equipment", "gloss": ", cleaning after each coat"}
# What is done once more before each coat of the gloss.
_AGAIN = {"protection": ", again before each coat", "setup": ", again before each coat"}
_VIEWED = "Access and shade cleared from the face, for viewing and color readings"
_TESTS = "Tests of film, adhesion, gloss, and color"
_DAY = 24  # hours
UNTOLD, _FOLLOWS = "Drying time", "follows"
_LAST_COAT = "the last gloss coat"
_MOST_RECOAT = ("gloss", "most_recoat_hours")
_NO_START = date(2001, 1, 1)  # a day that is not printed, for a mockup without a planned start
_RECOAT, _BEAD = "recoat", "test_bead"
# Said once above the table.
_LONGER = re.compile(r", or longer in cool or damp weather(?: per its manufacturer)?")


@dataclass(frozen=True)
class MockupLine:
    """A step of the mockup; `hours` of drying lie between it and the next, None where they are not given.

    The next one is on another day where a stop of the day is shown. `behind` is a step further above that must have
    dried too, and its hours.
    """

    title: str
    wait: str
    point: str
    hours: Fraction | None = Fraction(0)
    ends_day: bool = False
    step: str = ""  # its name, where its day is told elsewhere too
    behind: tuple[str, Fraction] | None = None


def list_lines(context: DocumentContext, composer: Composer) -> tuple[MockupLine, ...]:
    """The steps for the walls of the mockup: access first, what only a mockup shows, acceptance last."""
    taken = steps(context, composer, list_mockup_walls(context))
    ordered = sorted((step for step in taken if step.name not in _LEFT_OUT), key=_rank)
    (mockup,) = (step for step in taken if step.name == "mockup")
    return tuple(_with_preparation(context, composer, tuple(_lines(context, composer, ordered, mockup))))


def _rank(step: StepPage) -> int:
    return {"site_conditions": 0, "acceptance": 2}.get(step.name, 1)


def _lines(
    context: DocumentContext, composer: Composer, ordered: list[StepPage], accepted: StepPage
) -> Iterator[MockupLine]:
    last_coat = "the recoated panel" if _shows(context, "recoat_patch") else _LAST_COAT
    for step in ordered:
        wait = _LONGER.sub("", step.wait)
        if step.name == "gloss":
            dried = _LONGER.sub("", ordered[-1].wait)
            yield from _gloss(context, composer, step, wait, dried)
            yield MockupLine(_TESTS, dried.replace(_LAST_COAT, last_coat), "")
            continue
        if step.name == "wrb" and list_fluid_walls(context):
            yield from _fluid(context, composer, step)
            continue
        if step.name == "sealant":
            yield from _sealant(context, composer, step, wait.replace(_LAST_COAT, last_coat))
            continue
        if step.name == "acceptance":
            yield from _acceptance(context, accepted)
            continue
        if step.name == "substrate" and has_adhesive_pulls(context.project, list_mockup_walls(context)):
            yield from _pulls(context, step)
            continue
        yield MockupLine(
            f"{step.title}{_CLEANED.get(step.name, '')}{_AGAIN.get(step.name, '')}",
            wait.replace(_LAST_COAT, last_coat),
            _point(step),
            _hours_of(context, step.name),
            step=step.name,
        )
        if step.name == "flashings":
            yield from _behind_flashings(context, ordered)


def _acceptance(context: DocumentContext, accepted: StepPage) -> Iterator[MockupLine]:
    """The acceptance, with the face in view, behind the tests and the pull of the sealant that stand before it."""
    if context.project.members.get(("access",)) and context.project.get(("mockup", "same_access")) is not False:
        yield MockupLine(_VIEWED, "", "")
    yield MockupLine("Acceptance of the mockup", "", f"Hold Point {accepted.hold}, Form {accepted.release_form}")


def _pulls(context: DocumentContext, step: StepPage) -> Iterator[MockupLine]:
    """The substrate of concrete, released when the adhesive set on it for its pulls has cured."""
    hours = _hours_of(context, "boards")
    cured = f"a minimum of {_tell(hours)} h" if hours else "per its manufacturer's written instructions"
    yield MockupLine("Adhesive on the concrete, for its pull-off", "", "", hours)
    yield MockupLine(f"{step.title}, with pull-off", f"the adhesive for the pull-off has cured {cured}", _point(step))


def _behind_flashings(context: DocumentContext, ordered: list[StepPage]) -> Iterator[MockupLine]:
    """The water tests of the acceptance form, and the test beads on what the sealant bonds to beside the coats."""
    tests = name_water_tests(context)
    if tests:
        yield MockupLine(tests, "the sill pan is decided on, see D19" if is_pan_open(context) else "", "")
    if has_beads(context) and any(step.name == "sealant" for step in ordered):
        yield MockupLine("Sealant test beads on frame and flashing, or on offcuts of them", "", "", step=_BEAD)


def _fluid(context: DocumentContext, composer: Composer, step: StepPage) -> Iterator[MockupLine]:
    """The barrier, and its release when it has dried, as its thickness is read dry."""
    hours = _hours_of(context, "wrb")
    coats = max(count_coats_within(context.project, "wrb", wall) for wall in list_fluid_walls(context))
    dried = f"a minimum of {_tell(hours)} h" if hours is not None else "per its manufacturer's written instructions"
    for coat in range(1, coats + 1):
        title = f"{step.title}, coat {coat} of {coats}" if coats > 1 else step.title
        wait = f"coat {coat - 1} of the WRB has dried {dried}" if coat > 1 else step.wait
        yield MockupLine(title, wait, "", UNTOLD_BARRIER if hours is None else hours)
    last = f"coat {coats} of the WRB" if coats > 1 else "the WRB"
    yield MockupLine("Release of the WRB", f"{last} has dried {dried}", _point(step))


def _sealant(context: DocumentContext, composer: Composer, step: StepPage, wait: str) -> Iterator[MockupLine]:
    """The sealant, and the hand pull that releases it when it has cured."""
    cure, hours = composer.token(find_pull_cure(context)), _hours_of(context, step.name)
    beads = has_beads(context)
    held = f"; the test beads have cured a minimum of {cure} and hold at the pull" if beads else ""
    behind = (_BEAD, hours or Fraction(0)) if beads else None
    yield MockupLine(step.title, f"{wait}{held}", "", hours, behind=behind)
    yield MockupLine("Sealant hand pull", f"the sealant has cured a minimum of {cure}", _point(step))


def _gloss(context: DocumentContext, composer: Composer, step: StepPage, wait: str, dried: str) -> Iterator[MockupLine]:
    """The gloss, what is sprayed on the day after its stop, and the panel that is recoated when it has dried."""
    title, hours = f"{step.title}{_CLEANED['gloss']}", _hours_of(context, "gloss")
    stop = _shows(context, "day_stop")
    yield MockupLine(title, wait, _point(step), Fraction(0) if stop else hours, ends_day=stop, step=step.name)
    if stop:
        yield MockupLine("Gloss beyond the end-of-day stop, then cleaning", "the next working day", "", hours)
    if _shows(context, "recoat_patch"):
        window = f"{dried}{_tell_window(context, composer)}"
        yield MockupLine("Recoated panel, then cleaning", window, "", hours, step=_RECOAT)


def _tell_window(context: DocumentContext, composer: Composer) -> str:
    """What a panel needs that is recoated later than its gloss allows."""
    if not context.project.is_given(_MOST_RECOAT):
        return ""
    return f"; after {composer.token(context.display(_MOST_RECOAT))}, it is prepared per {_name_instructions(context)}"


def _name_instructions(context: DocumentContext) -> str:
    by = context.project.get(("gloss", "instructions"))
    return f"{by}" if by else "the manufacturer's written instructions"


def _with_preparation(
    context: DocumentContext, composer: Composer, lines: tuple[MockupLine, ...]
) -> Iterator[MockupLine]:
    """The lines, with the preparation of the panel to recoat where these days themselves go past its window."""
    moments = {line.step: moment for line, moment in zip(lines, _list_moments(context, lines), strict=True)}
    gloss, recoat = moments.get("gloss"), moments.get(_RECOAT)
    most = context.project.get(_MOST_RECOAT)
    dated = find_start(context) is not None and most is not None
    days = (recoat.date() - gloss.date()).days if dated and gloss and recoat else 0
    for line in lines:
        if line.step != _RECOAT or not days or days * _DAY <= most:
            yield line
            continue
        maximum = composer.token(context.display(_MOST_RECOAT))
        told = f"; {days} days after its gloss, past the maximum of {maximum}"
        wait = f"{line.wait.partition('; after')[0]}{told}"
        yield MockupLine(f"Preparation of the panel to be recoated, per {_name_instructions(context)}", wait, "")
        yield replace(line, wait="the panel is prepared, dry, and free of dust")


def _shows(context: DocumentContext, detail: str) -> bool:
    return detail in (context.project.get(("mockup", "includes")) or ())


def _point(step: StepPage) -> str:
    return f"{step.point} ({step.point_of})" if step.point_of and step.point else step.point


def find_pull_cure(context: DocumentContext) -> DisplayValue:
    """The longest cure of any sealant before its hand pull; the usual one where no sealant is named."""
    sealants = context.project.members.get(("sealants",), ())
    given = [context.display(("sealants", mark, "pull_cure_days")) for mark in sealants]
    return max(given, key=lambda days: float(days.raw), default=context.limit("sealant.pull_cure"))


def _hours_of(context: DocumentContext, step: str) -> Fraction | None:
    """The hours of drying between a step, or a coat of it, and the next."""
    if step == "sealant":
        return Fraction(float(find_pull_cure(context).raw)) * _DAY
    if step in BETWEEN:
        coats = context.project.get(("smoothing", "coats")) or 0
        return (find_mockup_drying(context.project, step, ("",)) or Fraction(0)) * max(coats - 1, 0)
    return find_mockup_drying(context.project, step, list_mockup_walls(context))


def _tell(hours: Fraction) -> str:
    return format_decimal(hours, 3)


def list_days(context: DocumentContext, lines: tuple[MockupLine, ...]) -> Iterator[str | DisplayValue]:
    """The day on which each step can begin as it prints; open at the first drying time not given."""
    start = find_start(context)
    untold: str | DisplayValue = DisplayValue(f"[{UNTOLD}]", open=True)
    for moment in _list_moments(context, lines):
        if moment is None:
            yield untold
            untold = _FOLLOWS
            continue
        yield f"Day {_number(context, moment)}{_tell_date(moment.date()) if start else ''}"


def list_drying_owners(context: DocumentContext, composer: Composer) -> list[str]:
    """The roles that owe the drying times which the days of the mockup wait for, each once."""
    taken = [step.name for step in steps(context, composer, list_mockup_walls(context)) if step.name in DRYING]
    owed = [DRYING[name] for name in taken if _hours_of(context, name) is None]
    return list(dict.fromkeys(context.project.schema.fields[path].owed_by for path in owed))


def find_last_day(context: DocumentContext, composer: Composer) -> int | None:
    """The number of the day on which the mockup can be accepted; None where a drying time is not given."""
    last = [*_list_moments(context, list_lines(context, composer))][-1]
    return None if last is None else _number(context, last)


def find_mockup_day(context: DocumentContext, composer: Composer, step: str) -> date | None:
    """The day on which a step of the mockup can begin; None without a planned start, or behind untold drying."""
    if find_start(context) is None:
        return None
    lines = list_lines(context, composer)
    moments = zip(lines, _list_moments(context, lines), strict=True)
    return next((moment.date() for line, moment in moments if line.step == step and moment), None)


def _list_moments(context: DocumentContext, lines: tuple[MockupLine, ...]) -> Iterator[datetime | None]:
    """When each step can begin; None behind a drying time that is not given."""
    calendar = find_mockup_calendar(root_of(context.project.root()), dated=find_start(context) is not None)
    moment: datetime | None = _find_begin(context, calendar)
    begun: dict[str, datetime] = {}
    for line in lines:
        if moment is not None and line.behind and line.behind[0] in begun:
            moment = max(moment, find_start_behind(calendar, begun[line.behind[0]], line.behind[1]))
        if moment is not None:
            begun[line.step] = moment
        yield moment
        if moment is None or line.hours is None:
            moment = None
        elif line.ends_day:
            moment = calendar.find_start(calendar.find_shift(moment).end)
        else:
            moment = find_start_behind(calendar, moment, line.hours)


def _find_begin(context: DocumentContext, calendar: WorkCalendar) -> datetime:
    return datetime.combine(find_start(context) or _NO_START, calendar.shift_start)


def _number(context: DocumentContext, moment: datetime) -> int:
    """The number of a day of the mockup, from 1."""
    return (moment.date() - (find_start(context) or _NO_START)).days + 1


def _tell_date(day: date) -> str:
    return f", {day:%a} {day:%b} {day.day}"
