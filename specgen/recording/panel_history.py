"""The history of a panel: passes with crew, pails and weather, releases, nonconformances, recoats."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime

from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.model.record_judgment import Nonconformance, RecordJudgment
from specgen.model.standard import Standards
from specgen.model.status import PanelHistory, PanelPass, Remark
from specgen.recording.gathering import find_last_moment
from specgen.recording.panel_log import OF_FINISH, PanelLog
from specgen.recording.site_entries import Verdict, moment_of, to_decision
from specgen.recording.standing import is_known, stands


def list_panels(project: Project, layouts: Mapping[str, Sequence[str]]) -> dict[str, str]:
    """The elevation of each panel that a layout or the log names, by its mark."""
    found = {panel: elevation for elevation, panels in layouts.items() for panel in panels}
    marks = project.members.get(("elevations",), ())
    for entry in project.records.of("log"):
        for panel in entry.get("panels") or ():
            elevation = str(entry.get("elevation") or (marks[0] if len(marks) == 1 else ""))
            found.setdefault(str(panel), elevation)
    return found


def find_history(
    project: Project,
    standards: Standards,
    judgment: RecordJudgment,
    at: datetime | None,
    panel: str,
    elevation: str,
    *,
    in_layout: bool,
) -> PanelHistory:
    """The history of a panel on its elevation until a moment, that of the last entry where none is given."""
    until = at or find_last_moment(project)
    history = PanelHistory(panel, elevation, until, in_layout)
    if until is None:
        return history
    log = PanelLog(project, standards, until)
    passes = log.list_passes(panel, elevation)
    signed = log.list_signed(passes, elevation)
    passes = tuple(_mark_again(passes, signed, standards))
    entries = {(e.collection, e.number) for one in passes for e in (one.entry, *one.pails, *one.readings)}
    entries |= {(entry.collection, entry.number) for entry in signed}
    known = [one for one in judgment.nonconformances if is_known(one, until)]
    return replace(
        history,
        passes=passes,
        masked=log.list_masked(panel, elevation),
        signed=signed,
        against=tuple(_list_against(known, entries)),
        failed=_has_failed(known, entries, signed, elevation, at),
    )


def _mark_again(passes: Sequence[PanelPass], signed: Sequence[Entry], standards: Standards) -> Iterator[PanelPass]:
    """Each pass with whether its coat had been applied before, or released."""
    released: dict[str, list[datetime]] = defaultdict(list)
    for entry in signed:
        step = standards.steps.get(str(entry.get("step")))
        moment = moment_of(entry)
        if step is not None and moment is not None and (entry.collection == "release" or step.point == "H"):
            released[step.releases or step.name].append(moment.at)
    coats: dict[str, set[int]] = defaultdict(set)
    for one in passes:
        coat = int(one.entry.get("coat") or 1)
        times = [*released[one.step.name], *(time for name in OF_FINISH for time in released[name])]
        since = any(time <= one.began.at for time in times)
        yield replace(one, again=coat in coats[one.step.name] or (bool(coats[one.step.name]) and since))
        coats[one.step.name].add(coat)


def _list_against(known: Sequence[Nonconformance], entries: set[tuple[str, int]]) -> Iterator[Remark]:
    for one in known:
        if (one.entry.collection, one.entry.number) in entries:
            lifted = f" (lifted by {one.lifted_by})" if one.lifted_by else ""
            told = f"nonconformance {one.number}, {one.code}, {one.severity.value}: {one.message}{lifted}"
            yield Remark(told, (one.entry,))


def _has_failed(
    known: Sequence[Nonconformance],
    entries: set[tuple[str, int]],
    signed: Sequence[Entry],
    elevation: str,
    at: datetime | None,
) -> bool:
    """Whether a nonconformance stands that stops the work, or what was signed last of a step was refused."""
    last = {str(entry.get("step")): entry for entry in signed}
    moments = ((entry, moment_of(entry)) for entry in last.values())
    refused = (moment and to_decision(entry, moment, elevation).verdict is Verdict.FAILED for entry, moment in moments)
    return any(map(bool, refused)) or any(
        stands(one, at) and (one.entry.collection, one.entry.number) in entries for one in known
    )
