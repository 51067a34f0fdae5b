"""Every instrument is on the list, is in calibration on the day it is read, and the cup is that of the mockup.

Why: a limit is only as good as the instrument it is read with. One that nobody has brought leaves its line
of the form empty on the day it counts.

passes
    package: {purpose: mockup_submittal}
    mockup: {criteria: [{name: gloss, instrument: GM-2}, {name: look, instrument: eye}]}
    instruments: {GM-2: {kind: gloss_meter}}
fails AIR-06a at mockup.criteria.0.instrument
    package: {purpose: mockup_submittal}
    mockup: {criteria: [{name: film, instrument: film gauge}]}
    instruments: {GM-2: {kind: gloss_meter}}
fails AIR-06b at log.0.surface
    instruments: {IR-1: {kind: surface_thermometer, calibrated_to: 2027-05-31}}
    log: [{date: 2027-06-14, surface: 64 F}]
fails AIR-06c at log.0.cup
    instruments: {CUP-1: {kind: zahn_4_cup}, CUP-2: {kind: zahn_4_cup}}
    accepted: {cup: CUP-1}
    log: [{step: gloss, cup: CUP-2}]
fails AIR-06d at result.0.signed_on
    instruments: {GM-2: {kind: gloss_meter, calibrated_to: 2027-03-31}}
    result: [{criterion: gloss, reading: "74", signed_on: 2027-04-05}]
fails AIR-06e at release.0.moisture_reading
    instruments: {M-1: {kind: moisture_meter, calibrated_to: 2027-05-31}}
    release: [{step: primer, date: 2027-06-14, moisture_reading: 9}]
"""

from collections.abc import Collection, Iterable, Iterator
from datetime import date
from functools import partial
from typing import NamedTuple

from specgen.judging.choice_groups import names, normalize
from specgen.judging.entry_view import GivenFact, ask_fact, which
from specgen.judging.rule import CAUTION, STOP, Rule, Violations, is_draft, violation
from specgen.model.absence import any_of
from specgen.model.project import asked_once
from specgen.model.record import Entry, day_of
from specgen.model.standard import Standards
from specgen.model.typed_views import AcceptanceCriterion, Description, Instrument, Release, Result, SiteRecordEntry
from specgen.recording.timeline import order_of

RULE = Rule(
    "AIR-06",
    "Instruments on hand and calibrated",
    remedy="List the instrument with its number and calibration date.",
    steps="equipment setup",
    documents="D11 D12",
)

SEEN = ("eye", "range samples")


@RULE.test(
    "a",
    CAUTION,
    "The acceptance form names an instrument that is not listed: {found}.",
    at="acceptance_criterion.instrument",
    basis="memory",
)
def not_on_the_list(criterion: AcceptanceCriterion, project: Description) -> Violations:
    """A line of the form is read with an instrument that is not listed."""
    if is_draft(project) or normalize(criterion.instrument) in SEEN:
        return
    if not any_of(project.instruments, partial(_named, criterion.instrument)):
        yield violation(criterion.instrument)


def _named(text: str, instrument: Instrument) -> bool:
    """Whether a text names an instrument by its mark or its kind."""
    return names(text, instrument.mark) or names(text, instrument.kind)


# The kind of instrument behind each reading of an entry; a cup is named by the entry itself.
READ_WITH = {
    "air": "air_thermometer",
    "surface": "surface_thermometer",
    "humidity": "hygrometer",
    "wind": "wind_meter",
    "atomizing_pressure": "pressure_gauge",
    "moisture_reading": "moisture_meter",
}
OUT_OF_DATE = (
    "Calibrate the instrument, or read with one that is in calibration; where it reads off, hold the work since then "
    "for inspection."
)


class _Late(NamedTuple):
    """A reading, by its field, that was taken with instruments whose calibration had run out."""

    field: str
    instruments: str
    ran_out: date


@RULE.test(
    "b",
    CAUTION,
    "A reading was taken with {found} after its calibration ran out on {wanted}.",
    at="log.date",
    basis="memory",
    remedy=OUT_OF_DATE,
)
def read_out_of_date(log: SiteRecordEntry, project: Description) -> Violations:
    """The first reading of the site record that was taken with an instrument after its calibration ran out."""
    day = log.date
    cups = [log.cup] if ask_fact(log, _HAS_CUP) else []
    for late in _list_late(cups, ask_fact(log, _READ), day, project):
        if _find_first(project, "log", late.field, late.instruments, late.ran_out) == ask_fact(log, which):
            yield violation(late.instruments, wanted=late.ran_out, at=(*log.path, late.field))


RULE.clause(
    "c",
    STOP,
    "The pail was read in cup {found}; the accepted mockup was read in {wanted}.",
    when="log.cup != accepted.cup",
    basis="astm_d4212",
    step="setup",
    remedy=(
        "Read the pail again in the cup of the accepted mockup before it is sprayed; take the other cup off the site."
    ),
    why="two cups of one number may differ by a third of the reading",
)


@RULE.test(
    "d",
    CAUTION,
    "The line was signed with {found} after its calibration ran out on {wanted}.",
    at="result.signed_on",
    basis="memory",
    remedy="Calibrate the instrument and read the line of the acceptance form again, in the presence of who signed it.",
)
def signed_out_of_date(result: Result, project: Description, standards: Standards) -> Violations:
    """A line of the acceptance form was read with an instrument after its calibration ran out."""
    day = result.signed_on
    late = _find_late("signed_on", _list_named(project, standards.criteria[result.criterion].instrument), day)
    if late is None:
        late = _find_late("signed_on", _list_named(project, *_list_planned(result, project)), day)
    if late is not None:
        yield violation(late.instruments, wanted=late.ran_out)


@RULE.test(
    "e",
    CAUTION,
    "The release was metered with {found} after its calibration ran out on {wanted}.",
    at="release.moisture_reading",
    basis="memory",
    remedy="Calibrate the meter, or use one in calibration; meter the area again and sign its release anew.",
)
def metered_out_of_date(release: Release, project: Description) -> Violations:
    """An area was released by a meter whose calibration had run out."""
    day = release.date
    for late in _list_late([], ask_fact(release, _READ), day, project):
        yield violation(late.instruments, wanted=late.ran_out)


def _list_planned(result: Result, project: Description) -> Iterator[str]:
    """The instruments that the project names for a line of the acceptance form; raises Absent."""
    for line in project.mockup.criteria if project.mockup.criteria.is_given() else ():
        if line.name == result.criterion:
            yield line.instrument


def _list_read(given: Collection[str]) -> tuple[str, ...]:
    """The readings that instruments are listed for, of the fields that an entry gives."""
    return tuple(field for field in READ_WITH if field in given)


_READ = GivenFact(_list_read)
_HAS_CUP = GivenFact(lambda given: "cup" in given)


def _list_named(project: Description, *texts: str) -> list[Instrument]:
    """The instruments that one of these texts names; raises Absent."""
    return [one for one in _list_instruments(project) if any(_named(text, one) for text in texts)]


def _list_late(cups: list[Instrument], fields: Iterable[str], day: date, project: Description) -> Iterator[_Late]:
    """The readings of an entry that were taken with nothing but instruments out of calibration."""
    uses = [(field, _list_of_kind(project, READ_WITH[field])) for field in fields]
    for field, instruments in [("cup", cups), *uses]:
        late = _find_late(field, instruments, day)
        if late is not None:
            yield late


def _find_late(field: str, instruments: list[Instrument], day: date) -> _Late | None:
    """A reading that could only be taken after calibration ran out; raises Absent for an instrument without a date."""
    if any_of(instruments, lambda one: one.calibrated_to >= day and bool(one.kind)) or not instruments:
        return None
    dates = [one.calibrated_to for one in instruments if one.kind]
    return _Late(field, ", ".join(one.mark for one in instruments), max(dates))


@asked_once
def _find_first(project: Description, collection: str, field: str, instruments: str, ran_out: date) -> int:
    """The number of the first entry read with these instruments after their calibration ran out."""
    entries = project.project.records.of(collection)
    late = (entry for entry in entries if _reads(entry, field, instruments) and (day_of(entry) or ran_out) > ran_out)
    return min(late, key=order_of).number


def _reads(entry: Entry, field: str, instruments: str) -> bool:
    return field in entry.values and (field != "cup" or entry.values[field] == instruments)


@asked_once
def _list_of_kind(project: Description, kind: str) -> list[Instrument]:
    """The instruments of a kind, with those whose kind is not given."""
    return [one for one in _list_instruments(project) if one.get("kind") in (kind, None)]


def _list_instruments(project: Description) -> list[Instrument]:
    return list(project.instruments) if project.instruments.is_given() else []
