"""The words of a status: signs of states, moments, entries by their places, parties."""

from collections.abc import Sequence

from specgen.model.record import Entry
from specgen.model.standard import Step
from specgen.model.status import AreaStatus, Remark, StepState, StepStatus, tell_moment, tell_time

# What stands in a cell of the grid, and what it means.
SIGNS = {
    StepState.NOT_BEGUN: ("-", "not begun"),
    StepState.UNDER_WAY: ("work", "under way"),
    StepState.DRIES: ("dries", "drying"),
    StepState.WAITS: ("hold", "release pending"),
    StepState.RELEASED: ("rel", "released"),
    StepState.DONE: ("done", "finished, no release asked for"),
    StepState.SKIPPED: ("none", "no entry, and a later step has begun"),
    StepState.FAILED: ("FAIL", "failed"),
}
EARLY, PENDING = "!", "*"
_MOST_NAMED = 3


def name_release(step: Step) -> str:
    """`release of Mockup`; a step that is a release by its title alone, `release of primer`."""
    is_one = step.title.startswith(("Release", "Acceptance"))
    return f"{step.title[:1].lower()}{step.title[1:]}" if is_one else f"release of {step.title}"


def tell_remark(remark: Remark) -> str:
    """A remark with the places of the first of its entries."""
    return f"{remark.text}{name_entries(remark.entries)}"


def name_entries(entries: Sequence[Entry]) -> str:
    """` (log.csv:17)`, or ` (entries at log.csv:17, log.csv:18, log.csv:19 and 4 more)`."""
    if not entries:
        return ""
    named = ", ".join(map(name_place, entries[:_MOST_NAMED]))
    more = len(entries) - _MOST_NAMED
    return f" ({named}{f' and {more} more' if more > 0 else ''})"


def name_place(entry: Entry) -> str:
    """`log.csv:17`, `log.xlsx, sheet Log, row 17`, `form.pdf, row c3`; the path of an entry without a file."""
    place = entry.place
    if not place.file:
        return ".".join(entry.path)
    if place.row:
        return f"{place.file}, row {place.row}"
    if place.sheet:
        return f"{place.file}, sheet {place.sheet}, row {place.line}"
    return f"{place.file}:{place.line}" if place.line else place.file


def tell_state(status: StepStatus | AreaStatus) -> str:
    """The state in words: `drying until 2027-06-16 07:00`, `released 2027-06-16 07:00 by P. Line`."""
    word = SIGNS[status.state][1] if status.state is not StepState.DONE else "done"
    if status.until is not None and status.state is StepState.DRIES:
        return f"{word} until {tell_time(status.until)}"
    if isinstance(status, AreaStatus) and status.released is not None and status.state is StepState.RELEASED:
        by = f" by {status.released.by}" if status.released.by else ""
        return f"{word} {tell_moment(status.released.moment)}{by}"
    return word
