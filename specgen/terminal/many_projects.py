"""What `check` prints of many projects: a line for each, and the totals."""

from collections import Counter
from collections.abc import Iterable
from typing import Any, NamedTuple

from specgen.model.finding import Verdict
from specgen.model.forbidden_characters import show_unseen
from specgen.model.value_text import count

_SAID = {
    Verdict.YES: "yes",
    Verdict.WITH_MEASURES: "with measures",
    Verdict.NO: "no",
    Verdict.NOT_YET_KNOWN: "not yet known",
}
_MOST_NAME, _MOST_TOLD = 200, 800  # characters of a name, and of what is told of a file
_COUNTED = (("stop", "stop"), ("caution", "caution"), ("open", "open item"))


class ProjectReport(NamedTuple):
    """A file as it was named, whether its package may not be submitted, and the object of `check --format json`."""

    file: str
    stopped: bool
    data: dict[str, Any]


def format_projects(reports: list[ProjectReport]) -> str:
    """The verdicts and counts of each file and of all; the first problem of a file that could not be checked."""
    checked = [report.data for report in reports if not report.data["errors"]]
    names = [_cut_name(show_unseen(report.file)) for report in reports]
    width = max(map(len, names))
    room = max((len(_tell_verdicts([data])) for data in checked), default=0)
    lines = [f"{name:<{width}}  {_tell(report, room)}" for name, report in zip(names, reports, strict=True)]
    refused = len(reports) - len(checked)
    stopped = sum(report.stopped for report in reports)
    parts = [f"{stopped or 'none'} stopped", *([f"{refused} not checked"] if refused else [])]
    totals = [f"{count(len(reports), 'project')}: {', '.join(parts)}"]
    totals += [f"walls: {_tell_verdicts(checked)}", _tell_counts(checked)] if checked else []
    return "\n".join([*lines, "", *totals]) + "\n"


def _tell(report: ProjectReport, room: int) -> str:
    data = report.data
    if not data["errors"]:
        held = "; open items stop it" if report.stopped and not data["counts"]["stop"] else ""
        return f"{_tell_verdicts([data]):<{room}}  {_tell_counts([data])}{held}"
    first, more = data["errors"][0], len(data["errors"]) - 1
    place = f"line {first['line']}: " if first["line"] else ""
    about = f"{first['path']}: " if first["path"] else ""
    hint = f" ({first['hint']})" if first["hint"] else ""
    rest = f"; {count(more, 'more problem')}" if more else ""
    told = show_unseen(f"not checked: {place}{about}{first['message']}{hint}")
    return f"{told if len(told) <= _MOST_TOLD else f'{told[:_MOST_TOLD]} ...'}{rest}"


def _cut_name(name: str) -> str:
    """The end of a long name, which tells it from others of the same folder."""
    return name if len(name) <= _MOST_NAME else f"...{name[-_MOST_NAME:]}"


def _tell_verdicts(reports: Iterable[dict[str, Any]]) -> str:
    """`2 yes, 1 not yet known`: the number of walls of each verdict."""
    found = Counter(wall["verdict"] for data in reports for wall in data["walls"])
    return ", ".join(f"{found[verdict]} {said}" for verdict, said in _SAID.items() if found[verdict])


def _tell_counts(reports: list[dict[str, Any]]) -> str:
    """`1 stop, 2 cautions, 0 open items`."""
    return ", ".join(count(sum(data["counts"][key] for data in reports), noun) for key, noun in _COUNTED)
