"""What `status` prints of all elevations: what comes next, who owes what, what failed, then a grid of steps."""

from collections.abc import Callable, Iterable, Iterator, Sequence

from specgen.model.status import (
    AreaStatus,
    FaceStatus,
    NextStep,
    Owed,
    ProjectStatus,
    Remark,
    StepState,
    StepStatus,
    tell_time,
)
from specgen.terminal.screen import Line, Screen, wrap
from specgen.terminal.status_words import EARLY, PENDING, SIGNS, name_release, tell_remark

_WHAT = {"correction": "correct", "entry": "record"}
_STYLES = {StepState.FAILED: "stop", StepState.WAITS: "caution"}
_LEAST_TITLE = 16  # columns; a longer title takes two lines


def list_status_lines(status: ProjectStatus, screen: Screen) -> Iterator[Line]:
    """The lines of the whole answer."""
    yield from tell_head(status)
    if not status.faces:
        yield Line("The project has no elevations: give them under elevations.")
        return
    yield from list_next(status.faces)
    yield from list_owed(owed for face in status.faces for owed in face.owed)
    yield Line()
    yield from _set_grid(status.faces, screen.width)
    yield from _set_legend(status.faces)
    yield from list_against(status)
    yield from list_remarks(status)


def tell_head(status: ProjectStatus) -> Iterator[Line]:
    """The moment that is told of, and how many entries count."""
    if status.at is None:
        yield Line("Nothing is recorded.", style="bold")
    else:
        yield Line(
            f"Status at {tell_time(status.at)}, by {status.counted} {'entry' if status.counted == 1 else 'entries'}.",
            0,
            "",
            "bold",
        )


def _set_grid(faces: Sequence[FaceStatus], width: int) -> Iterator[Line]:
    """A line for each step with a column for each elevation, in blocks of as many as stand side by side."""
    columns = [_find_width(face) + 1 for face in faces]
    longest = max((len(step.step.title) for face in faces for step in face.steps), default=0)
    title = min(longest, max(width - sum(columns), _LEAST_TITLE))
    block: list[FaceStatus] = []
    used, blocks = title, list[list[FaceStatus]]()
    for face, column in zip(faces, columns, strict=True):
        if block and used + column > width:
            blocks.append(block)
            block, used = [], title
        block.append(face)
        used += column
    for number, one in enumerate([*blocks, block]):
        yield from [Line()] if number else []
        yield from _set_block(one, title)


def _find_width(face: FaceStatus) -> int:
    """The columns that an elevation takes: its mark, or the longest sign."""
    return max(len(face.elevation), max(len(sign) for sign, _ in SIGNS.values()) + len(EARLY))


def _set_block(faces: Sequence[FaceStatus], title: int) -> Iterator[Line]:
    widths = [_find_width(face) for face in faces]
    yield Line(_set_row("", [face.elevation for face in faces], title, widths), 0, "", "bold", whole=True)
    cells = {step.step.name: step.step.title for face in faces for step in face.steps}
    of_face = [{step.step.name: step for step in face.steps} for face in faces]
    for name in _order(cells, faces):
        row = [of_one.get(name) for of_one in of_face]
        first, *more = wrap(cells[name], 2, title)
        signs = ["" if step is None else _sign(step) for step in row]
        states = [step.state for step in row if step is not None]
        style = next((_STYLES[state] for state in _STYLES if state in states), "")
        yield Line(_set_row(first, signs, title, widths), 0, "", style, whole=True)
        yield from (Line(line, whole=True) for line in more)


def _order(titles: dict[str, str], faces: Sequence[FaceStatus]) -> Iterable[str]:
    """The names of the steps in the order of the work, those of all walls among each other."""
    after: dict[str, set[str]] = {name: set() for name in titles}
    for face in faces:
        names = [step.step.name for step in face.steps]
        for number, name in enumerate(names):
            after[name].update(names[:number])
    return sorted(titles, key=lambda name: len(after[name]))


def _set_row(title: str, cells: Sequence[str], width: int, widths: Sequence[int]) -> str:
    return (f"{title:<{width}}" + "".join(f" {cell:<{w}}" for cell, w in zip(cells, widths, strict=True))).rstrip()


def _sign(step: StepStatus) -> str:
    return SIGNS[step.state][0] + (PENDING if step.pending else EARLY if step.early else "")


def _set_legend(faces: Sequence[FaceStatus]) -> Iterator[Line]:
    """What the signs mean that the grid shows."""
    shown = {step.state for face in faces for step in face.steps}
    told = [f"{sign} {meaning}" for state, (sign, meaning) in SIGNS.items() if state in shown]
    if any(_sign(step).endswith(EARLY) for face in faces for step in face.steps):
        told.append(f"{EARLY} begun too early")
    if any(step.pending for face in faces for step in face.steps):
        told.append(f"{PENDING} nonconformance without disposition")
    if any(len(face.steps) < max(len(one.steps) for one in faces) for face in faces):
        told.append("blank: the wall has no such step")
    yield Line()
    yield Line("; ".join(told), 2, "", "faint")


def list_next(faces: Sequence[FaceStatus]) -> Iterator[Line]:
    """What comes next on each elevation, and from what hour."""
    yield from (Line(), Line("Next", style="bold"))
    width = max(len(face.elevation) for face in faces)
    for face in faces:
        told = [tell_next(one) for one in face.next] or ["all steps are over"]
        for mark, text in zip((face.elevation, *[""] * len(told)), told, strict=False):
            yield Line(f"  {mark:<{width}}  {text}", width + 4)


def tell_next(one: NextStep) -> str:
    """`Tinted primer, from 2027-06-16 07:00, after release of Second smoothing coat by the inspector`."""
    if one.correct and one.release_anew:
        at = f", {', '.join(one.areas)}" if one.areas else ""
        return f"{one.step.title}{at}: put right what the release found, then release again{_tell_by(one)}"
    if one.correct:
        by = f", then release by {one.releaser.name}" if one.releaser else ""
        return f"correct {one.step.title}{by}"
    if one.hold is not None and one.step.name == one.hold.name:
        return f"{one.step.title}: release{_tell_by(one)}{_tell_from(one)}"
    title = f"{one.step.title} goes on" if one.goes_on else one.step.title
    hold = f", after {name_release(one.hold)}{_tell_by(one)}" if one.hold else ""
    areas = f"; now on {', '.join(one.areas)}" if one.areas else ""
    latest = f", no later than {_tell_latest(one)}" if one.latest else ""
    return f"{title}{_tell_from(one)}{latest}{hold}{areas}"


def _tell_latest(one: NextStep) -> str:
    """`2027-07-17 08:10 (left bay), 2027-07-17 09:50 (right bay)`; one moment for all that name no area."""
    if not any(area for area, _ in one.deadlines):
        return tell_time(one.latest) if one.latest else ""
    return ", ".join(f"{tell_time(latest)} ({area or 'whole face'})" for area, latest in one.deadlines)


def _tell_from(one: NextStep) -> str:
    return f", from {tell_time(one.start)}" if one.start else ""


def _tell_by(one: NextStep) -> str:
    return f" by {one.releaser.name}" if one.releaser else ""


def list_owed(owed: Iterable[Owed]) -> Iterator[Line]:
    """What each party owes; what is the same on several elevations in one line."""
    parties: dict[str, dict[str, list[str]]] = {}
    for one in owed:
        faces = parties.setdefault(one.party.name, {}).setdefault(_tell_owed(one), [])
        faces += [] if one.elevation in faces else [one.elevation]
    if parties:
        yield from (Line(), Line("Required", style="bold"))
    for party, told in parties.items():
        yield Line(f"  {party[:1].upper()}{party[1:]}", 2)
        yield from (Line(f"    {', '.join(faces)}: {text}", 6) for text, faces in told.items())


def _tell_owed(one: Owed) -> str:
    about = f", {one.about}" if one.about else ""
    since = f", from {tell_time(one.since)}" if one.since else ""
    if one.what == "disposition":
        return f"disposition of the nonconformances of {one.step.title}{about}"
    what = _WHAT.get(one.what)
    if what is not None:
        return f"{what} {one.step.title}{about}"
    named = name_release(one.step) if one.what == "release" else f"{one.what} of {one.step.title}"
    return f"{named}{about}{since}"


def list_against(status: ProjectStatus) -> Iterator[Line]:
    """What failed or was begun too early, then what was accepted without a disposition, each by its place."""
    failed = _list_places(status, lambda area: area.reasons + area.early)
    failed |= {"Entries of no step": tuple(status.failed)} if status.failed else {}
    yield from _list_by_place("Failed or begun too early", failed, "stop")
    pending = _list_places(status, lambda area: area.pending)
    yield from _list_by_place("Accepted, and the nonconformance has no disposition", pending, "caution")


def _list_places(
    status: ProjectStatus, choose: Callable[[AreaStatus], tuple[Remark, ...]]
) -> dict[str, tuple[Remark, ...]]:
    """Remarks of each step and area; what a step that only releases repeats is left out."""
    told: dict[str, tuple[Remark, ...]] = {}
    for face in status.faces:
        seen: set[tuple[str, str]] = set()
        for step in face.steps:
            for area in step.areas:
                new = tuple(one for one in choose(area) if (area.area, one.text) not in seen)
                seen.update((area.area, one.text) for one in new)
                if new:
                    told[f"{face.elevation} {step.step.title}{f', {area.area}' if area.area else ''}"] = new
    return told


def _list_by_place(title: str, told: dict[str, tuple[Remark, ...]], style: str) -> Iterator[Line]:
    if told:
        yield from (Line(), Line(title, style="bold"))
    for where, remarks in told.items():
        yield Line(f"  {where}", 4)
        yield from (Line(f"    {text}", 6, "", style) for text in dict.fromkeys(map(tell_remark, remarks)))


def list_remarks(status: ProjectStatus) -> Iterator[Line]:
    """What else the entries show: releases that do not count, entries left out, crews in the same hours."""
    told = [tell_remark(remark) for remark in status.remarks]
    for face in status.faces:
        told += [f"{face.elevation}: {tell_remark(remark)}" for remark in face.remarks]
        for step in face.steps:
            for area in step.areas:
                where = f"{face.elevation} {step.step.title}{f', {area.area}' if area.area else ''}"
                told += [f"{where}: {tell_remark(remark)}" for remark in area.remarks]
    if told:
        yield from (Line(), Line("Also", style="bold"))
        yield from (Line(f"  {text}", 4) for text in dict.fromkeys(told))
