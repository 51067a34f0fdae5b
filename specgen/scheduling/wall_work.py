"""The work on an elevation as tasks: its steps in order, each behind what dries and who releases the step before it."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from specgen.computing.calendars import to_stretch
from specgen.computing.sealing_hours import find_sealing_hours
from specgen.computing.shaded_hours import find_shaded_hours
from specgen.model.absence import Absent, read_all
from specgen.model.field import Path
from specgen.model.hour_calendar import MonthHours, sum_stretches
from specgen.model.standard import Standards, Step
from specgen.model.typed_views import Elevation, root_of
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask
from specgen.scheduling.applying import list_steps
from specgen.scheduling.coats import Pass, list_barrier, list_coats, list_gloss, list_primer
from specgen.scheduling.crews import find_rates, offer_work, require_rates
from specgen.scheduling.joint_length import find_joint_length
from specgen.scheduling.ledges import list_added_ledges, list_ledge_work
from specgen.scheduling.metal_length import BY_LENGTH, find_metal_length
from specgen.scheduling.spray_hours import SPRAYED, find_spray_hours
from specgen.scheduling.step_area import find_step_area
from specgen.scheduling.tasks import GivenDay, Task, take
from specgen.scheduling.viewing_hours import VIEWED, find_viewing_hours
from specgen.scheduling.waits import Gap, Wait, find_sealant_cure, find_tape_stay, find_wait, is_sealed_first, list_gaps
from specgen.weather.heat import find_sunless

# Of the whole project, or within the hour that each day of spraying keeps for setup and cleaning.
_APART = ("equipment", "mockup", "setup", "clean_equipment")
# Steps that cover the face, so that none goes by without the hours of a crew; of the others some have no output.
_COVERING = frozenset(
    ("boards", "rasp", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "primer", "gloss")
)
# Steps whose material may bear no sun until it is set.
SUNLESS = ("wrb", "boards", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2")
_RELEASES = ("release_primer", "acceptance", "final_viewing")  # their titles say that they are releases
_READIED = (*SPRAYED, "protection")  # masking is not left on a wall that waits for its season
# What a crew does in a step that is a viewing: a row of its own, as the viewing begins behind it.
TAKEN_DOWN = {"final_viewing": "Taking down the scaffold"}
MASKED = "Preparation for gloss"


@dataclass
class ElevationWork:
    """The tasks of an elevation in the making, and what each next one waits for.

    `color` are the marks of the deliveries of its color; `untimed` gathers steps that no crew has an output for.
    """

    elevation: Elevation
    standards: Standards
    ask: Ask
    starts_behind: tuple[str, ...]
    color: tuple[str, ...]
    not_before: GivenDay | None
    spray_start: GivenDay | None
    untimed: dict[str, None]
    behind: tuple[str, ...] = ()  # what the next task waits for
    gaps: dict[str, list[str]] = field(default_factory=dict)  # by step the planned waits that end before it
    tasks: list[Task] = field(default_factory=list)

    def list_tasks(self) -> list[Task]:
        """The tasks from the first step to the last. Raises Absent with what a step lacks, Refused."""
        self.behind = self.starts_behind
        steps, missing = list(self._list_steps()), list[Path]()
        for number, step in enumerate(steps, 1):
            try:
                self._add_step(step, {other.name for other in steps[number:]})
            except Absent as absent:
                missing += absent.paths
        if missing:
            raise Absent(*dict.fromkeys(missing))
        return self.tasks

    def _list_steps(self) -> Iterator[Step]:
        """The steps that the wall takes, in order; sealant that comes first stands before the gloss."""
        steps = list_steps(self.elevation.project, self.standards, self.elevation.wall.mark)
        taken = {step.name: step for step in steps if step.name not in _APART}
        sealant = taken.pop("sealant", None) if is_sealed_first(root_of(self.elevation)) else None
        for name, step in taken.items():
            if name == "gloss" and sealant is not None:
                yield sealant
            yield step

    def _add_step(self, step: Step, later: set[str]) -> None:
        project = root_of(self.elevation)
        passes, wait = read_all(lambda: self._list_passes(step), lambda: self._find_wait(step))
        if not passes and (step.name in _COVERING or (step.name == "sealant" and find_rates(project, step.name))):
            wait = None  # no coat dries that is not there, and no joint cures
        self.behind = (*self.behind, *self.gaps.pop(step.name, ()))
        for number, one in enumerate(passes, 1):
            part = f".{number}" if len(passes) > 1 else ""
            if step.name == "gloss" and (number == 1 or one.in_one_shift and not one.then_dry):
                self._add_masking(one, part, len(passes))
            self._add_work(step, one, part)
            if one.then_dry and number < len(passes):
                self._add_wait(step, Wait(one.then_dry, None), f"{part}.dry", "drying between coats")
        worked = self.behind
        if wait is not None:
            self._add_wait(step, wait, ".dry", "cure" if step.name in ("boards", "sealant") else "drying")
        if step.name == "rasp" and passes:
            self._add_ledges(step)
        if step.point == "H":
            self._add_hold(step)
        for gap in list_gaps(project, step.name, wait):
            if gap.to_step in later:
                self._add_gap(step, gap, worked)

    def _list_passes(self, step: Step) -> list[Pass]:
        """The stretches of work of a step; none where no crew has an output for one that does not cover the face."""
        project = root_of(self.elevation)
        find = require_rates if step.name in _COVERING else find_rates
        rates, size = read_all(lambda: find(project, step.name), lambda: self._find_size(step.name))
        if not rates:
            if step.name not in _RELEASES:
                self.untimed[step.title] = None
            return []
        if step.name == "gloss":
            return list_gloss(self.elevation, rates, size, self.ask)
        if step.name == "primer":
            return list_primer(self.elevation, rates, size)
        if step.name == "wrb":
            return list_barrier(self.elevation, rates, size)
        return list_coats(project, step.name, rates, size) if size.amount else []

    def _find_size(self, step: str) -> Quantity:
        """What the output of a step is held against: an area, of sealant the length of joints, of metal its own."""
        if step == "sealant" and find_rates(root_of(self.elevation), step):
            return find_joint_length(self.elevation, self.ask)
        if step in BY_LENGTH and find_rates(root_of(self.elevation), step):
            return find_metal_length(self.elevation, step, self.ask)
        return find_step_area(self.elevation, step)

    def _find_wait(self, step: Step) -> Wait | None:
        if step.name == "sealant":
            return find_sealant_cure(root_of(self.elevation), self.standards)
        return find_wait(self.elevation.project, self.standards, step.name, self.elevation.wall.mark)

    def _add_masking(self, one: Pass, part: str, count: int) -> None:
        """The preparation again before the gloss, of each day area before it; the tape of the primer is off by then."""
        step = self.standards.steps["protection"]
        rates = find_rates(root_of(self.elevation), step.name)
        if not rates:
            return
        size = find_step_area(self.elevation, step.name)
        offers = offer_work(rates, Quantity(size.amount / count, "area", size.unit))
        title = f"{MASKED}, {one.title}" if count > 1 else MASKED
        mark = f"{self.elevation.mark}.{step.name}.gloss{part}"
        after = (*self.behind, *self.color)
        start = self.spray_start or self.not_before
        within = find_tape_stay(root_of(self.elevation))
        touch_dry = to_stretch(Fraction(root_of(self.elevation).gloss.get("touch_dry_hours") or 0))
        within = None if within is None else within - touch_dry
        task = Task(mark, title, "work", offers, after, start, goes_on=True, within=within, row=MASKED)
        self._add(task, step)

    def _add_ledges(self, step: Step) -> None:
        """Board added as ledges: bonded to the rasped face, cured, and rasped before the face is released."""
        ledges = list_added_ledges(self.elevation)
        boards = self.standards.steps["boards"]
        cure = self._find_wait(boards) if ledges else None
        for number, one in enumerate(list_ledge_work(self.elevation) if ledges else (), 1):
            hours = self._find_hours(boards.name) if number == 1 else ()
            title, mark = f"{one.row}, {one.title}", f"{self.elevation.mark}.{step.name}.ledge.{number}"
            self._add(
                Task(mark, title, "work", one.offers, self.behind, self.not_before, hours=hours, row=one.row), step
            )
            if number == 1 and cure is not None:
                dry = f"{mark}.dry"
                task = Task(dry, f"{one.row}, cure", "drying", take(cure.length), self.behind, source=cure.source)
                self._add(task._replace(row=one.row), step)

    def _add_work(self, step: Step, one: Pass, part: str) -> None:
        row = TAKEN_DOWN.get(step.name, "")
        title = row or (f"{step.title}, {one.title}" if one.title else step.title)
        sprayed, masked = step.name in SPRAYED, step.name == "protection"
        self._add(
            Task(
                mark=f"{self.elevation.mark}.{step.name}{part}",
                title=title,
                kind="work",
                offers=one.offers,
                after=(*self.behind, *(self.color if sprayed or masked else ())),
                not_before=self.spray_start if step.name in _READIED and self.spray_start else self.not_before,
                in_one_shift=one.in_one_shift,
                hours=self._find_hours(step.name),
                alone=sprayed,
                within=find_tape_stay(root_of(self.elevation)) if masked else None,
                goes_on=masked or self._is_recoated_next(step.name),
                row=row,
            ),
            step,
        )

    def _is_recoated_next(self, step: str) -> bool:
        """Whether a step leads on to the gloss before anything else is primed, as the primer is recoated in time."""
        primer = root_of(self.elevation).primer
        return step in ("primer", "release_primer") and primer.get("most_recoat_hours") is not None

    def _find_hours(self, step: str) -> MonthHours:
        """The hours of a coat that is sprayed, with its setup and cleanup, of one that bears no sun, and of sealing."""
        if step == "sealant":
            return find_sealing_hours(self.elevation)
        if step in SUNLESS and find_sunless(self.elevation.project, step, (self.elevation.wall.mark,)):
            return find_shaded_hours(self.elevation)
        return find_spray_hours(self.elevation).set_up if step in SPRAYED else ()

    def _add_wait(self, step: Step, wait: Wait, part: str, word: str) -> None:
        mark = f"{self.elevation.mark}.{step.name}{part}"
        title = f"{step.title}, {word}"
        self._add(Task(mark, title, "drying", take(wait.length), self.behind, source=wait.source), step)

    def _add_hold(self, step: Step) -> None:
        title = step.title if step.name in _RELEASES else f"{step.title}, release"
        mark = f"{self.elevation.mark}.{step.name}.hold"
        hours = find_viewing_hours(self.elevation, step.name) if step.name in VIEWED else ()
        viewed = root_of(self.elevation).schedule.get("viewing_hours") if step.name in VIEWED else None
        length = to_stretch(Fraction(viewed or 0))
        # Nobody comes twice to see one face, unless no day has so many hours to see it in.
        visit = bool(hours) and length <= max(map(sum_stretches, hours))
        self._add(Task(mark, title, "hold", take(length), self.behind, self.not_before, visit, hours=hours), step)

    def _add_gap(self, step: Step, gap: Gap, worked: tuple[str, ...]) -> None:
        """A planned wait beside what follows; the step it leads to waits for both."""
        mark = f"{self.elevation.mark}.{step.name}.wait.{gap.mark}"
        title = f"{step.title}, planned wait"
        behind, self.behind = self.behind, worked
        self._add(Task(mark, title, "drying", take(gap.wait.length), worked, source=gap.wait.source), step)
        self.behind = behind
        self.gaps.setdefault(gap.to_step, []).append(mark)

    def _add(self, task: Task, step: Step) -> None:
        self.tasks.append(task._replace(elevation=self.elevation.mark, step=step.name))
        self.behind = (task.mark,)
