"""Where the work stands: the state of each step on each elevation and area, what comes next, and who owes what."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, time
from enum import StrEnum
from fractions import Fraction
from typing import Literal, NamedTuple

from specgen.model.record import Entry
from specgen.model.standard import Step

END_OF_DAY = time(23, 59)  # where a day stands without an hour


class StepState(StrEnum):
    """How far a step is; of several areas the one that stands first here is that of the elevation."""

    FAILED = "failed"
    UNDER_WAY = "under_way"
    DRIES = "dries"
    WAITS = "waits"
    RELEASED = "released"
    DONE = "done"
    SKIPPED = "skipped"
    NOT_BEGUN = "not_begun"


class Moment(NamedTuple):
    """A moment in local time; of an entry without an hour the end of its day."""

    at: datetime
    timed: bool = True

    @property
    def earliest(self) -> datetime:
        """The first moment that is meant: the beginning of the day where no hour is told."""
        return self.at if self.timed else datetime.combine(self.at.date(), time())


def tell_time(moment: datetime) -> str:
    """`2027-06-15 10:00`."""
    return moment.strftime("%Y-%m-%d %H:%M")


def tell_moment(moment: Moment) -> str:
    """`2027-06-15 10:00`, the day alone where no hour is told."""
    return tell_time(moment.at) if moment.timed else moment.at.date().isoformat()


class Remark(NamedTuple):
    """What is to be told of entries, in words."""

    text: str
    entries: tuple[Entry, ...] = ()


class Hours(NamedTuple):
    """The least hours behind a step, and where they stand."""

    hours: Fraction
    source: str


class Signature(NamedTuple):
    """The release that counts: when, by whom, and its entry; None where the project file tells it."""

    moment: Moment
    by: str
    entry: Entry | None = None


class Party(NamedTuple):
    """Who owes something: the role, and how the party is named in a sentence."""

    role: str
    name: str


@dataclass(frozen=True)
class AreaStatus:
    """The state of a step on one area of an elevation; the whole of it where `area` is empty."""

    state: StepState
    area: str = ""  # as it is written
    again: bool = False  # whether it was worked anew after a release
    panels: tuple[str, ...] = ()
    crews: tuple[str, ...] = ()
    began: Moment | None = None
    ended: datetime | None = None  # the last pass; None where no end is written
    until: datetime | None = None  # the end of drying
    coats: tuple[int, int] = (1, 1)  # applied, due
    released: Signature | None = None
    reasons: tuple[Remark, ...] = ()  # why it failed
    pending: tuple[Remark, ...] = ()  # without disposition, of work that was accepted since
    early: tuple[Remark, ...] = ()  # why it was begun too early
    remarks: tuple[Remark, ...] = ()  # releases that do not count, what is missing

    @property
    def fails_at_release(self) -> bool:
        """Whether it failed for its release alone, so that the work itself may be right."""
        against = [entry.collection for remark in self.reasons for entry in remark.entries]
        return self.state is StepState.FAILED and bool(against) and set(against) == {"release"}


@dataclass(frozen=True)
class StepStatus:
    """The state of a step on an elevation, and that of each area that is recorded apart."""

    step: Step
    state: StepState
    areas: tuple[AreaStatus, ...] = ()
    hours: Hours | None = None
    until: datetime | None = None  # of what dries
    releaser: Party | None = None  # of a hold point
    missing: tuple[str, ...] = ()  # areas and panels that the step has not reached

    @property
    def early(self) -> tuple[Remark, ...]:
        """Why it was begun too early."""
        return tuple(remark for area in self.areas for remark in area.early)

    @property
    def pending(self) -> tuple[Remark, ...]:
        """The nonconformances without disposition, of work that was accepted since."""
        return tuple(remark for area in self.areas for remark in area.pending)


class NextStep(NamedTuple):
    """What comes next on an elevation, from when, and whose release it waits for."""

    step: Step
    start: datetime | None  # None where no hour can be told
    goes_on: bool = False  # whether it has begun already
    latest: datetime | None = None  # the end of the recoat time
    hold: Step | None = None  # the step that has to be released first
    releaser: Party | None = None
    correct: bool = False  # whether what failed has to be corrected first
    areas: tuple[str, ...] = ()  # those that are free already
    deadlines: tuple[tuple[str, datetime], ...] = ()  # the end of the recoat time of each area; latest is the first
    release_anew: bool = False  # whether the release alone is what failed


class Owed(NamedTuple):
    """What a party owes on an elevation."""

    party: Party
    what: Literal["release", "inspection", "signature", "correction", "entry", "disposition"]
    step: Step
    elevation: str
    about: str = ""
    since: datetime | None = None  # from when it can be given; None for now


@dataclass(frozen=True)
class FaceStatus:
    """Where the work on an elevation stands."""

    elevation: str
    name: str
    wall: str
    steps: tuple[StepStatus, ...]
    next: tuple[NextStep, ...]  # the first step that is not over, then those that go on beside it
    owed: tuple[Owed, ...] = ()
    remarks: tuple[Remark, ...] = ()


@dataclass(frozen=True)
class ProjectStatus:
    """Where the work on all elevations stands at a moment; None where nothing is recorded and none is asked for."""

    at: datetime | None
    counted: int  # entries until then
    faces: tuple[FaceStatus, ...]
    remarks: tuple[Remark, ...] = ()
    failed: tuple[Remark, ...] = ()  # what stands against entries that belong to no step

    @property
    def is_sound(self) -> bool:
        """Whether nothing failed and nothing was begun too early."""
        return self.is_sound_on(self.faces)

    def is_sound_on(self, faces: Iterable[FaceStatus]) -> bool:
        """Whether nothing failed, waits for a disposition, or was begun too early on these elevations, or on none."""
        steps = [step for face in faces for step in face.steps]
        against = (step.state is StepState.FAILED or step.early or step.pending for step in steps)
        return not self.failed and not any(against)


@dataclass(frozen=True)
class PanelPass:
    """A pass of a step over a panel, with the pails and the readings of the weather that belong to it."""

    entry: Entry
    step: Step
    began: Moment
    ended: datetime | None
    again: bool  # whether it is a recoat
    pails: tuple[Entry, ...] = ()
    readings: tuple[Entry, ...] = ()  # of its hours, else the nearest of that day and face


@dataclass(frozen=True)
class PanelHistory:
    """What is recorded of a panel until a moment."""

    panel: str
    elevation: str
    at: datetime | None
    in_layout: bool
    passes: tuple[PanelPass, ...] = ()
    masked: tuple[Entry, ...] = ()  # gloss beside it, from whose overspray it was masked
    signed: tuple[Entry, ...] = ()  # releases and inspections of its coats, in the order of time
    against: tuple[Remark, ...] = ()  # nonconformances of these entries
    failed: bool = False  # whether a stop among these stands, or what was signed last was refused
