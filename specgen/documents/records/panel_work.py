"""What the site record says of each panel: crew, batch, pails and days of its primer and gloss, and its releases."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date

from specgen.documents.context import DocumentContext
from specgen.model.record import Entry, day_of
from specgen.recording.history import is_same_place

COATS = ("primer", "gloss")
_Key = tuple[str, str, str]  # elevation, panel, coat
_Pails = dict[tuple[date | None, str, str], list[Entry]]  # by day, elevation, coat


@dataclass
class CoatWork:
    """The passes of one coat material on a panel."""

    passes: list[Entry] = field(default_factory=list)
    pails: list[Entry] = field(default_factory=list)  # the entries that tell batch or pail
    last_pails: list[Entry] = field(default_factory=list)  # those of the last day: what is seen

    def add(self, entry: Entry, pails: list[Entry]) -> None:
        """Add a pass with the pails that went into it."""
        before, day = self.days, day_of(entry)
        if not before or (day is not None and day > before[-1]):
            self.last_pails = []
        if not before or day is None or day >= before[-1]:
            self.last_pails += pails
        self.passes.append(entry)
        self.pails += pails

    @property
    def days(self) -> tuple[date, ...]:
        """The days of its passes."""
        return tuple(sorted({day for day in map(day_of, self.passes) if day is not None}))

    @property
    def crews(self) -> tuple[str, ...]:
        """The marks of its crews."""
        return _list_values(self.passes, "crew")

    @property
    def batches(self) -> tuple[str, ...]:
        """Its batches, in the order in which they were opened."""
        return _list_values(self.pails, "batch")

    @property
    def last_batches(self) -> tuple[str, ...]:
        """The batches of its last day, which are those that show."""
        return _list_values(self.last_pails, "batch")

    @property
    def numbers(self) -> tuple[str, ...]:
        """The numbers of its pails."""
        return _list_values(self.pails, "pail")


Work = dict[_Key, CoatWork]


def list_panel_work(context: DocumentContext) -> Work:
    """The passes on each panel that the log names, in the order of the log."""
    return context.remember(_gather)


def _gather(context: DocumentContext) -> Work:
    log = context.project.records.of("log")
    pails: _Pails = {}
    for entry in log:
        if entry.get("batch") is not None or entry.get("pail") is not None:
            key = (day_of(entry), str(entry.get("elevation") or ""), str(entry.get("step") or ""))
            pails.setdefault(key, []).append(entry)
    work: Work = {}
    for entry in log:
        step, face = str(entry.get("step") or ""), str(entry.get("elevation") or "")
        if step not in COATS or not entry.get("panels"):
            continue
        own = [entry] if entry.get("batch") is not None else []
        used = own or [pail for pail in pails.get((day_of(entry), face, step), ()) if _is_for(pail, entry)]
        for panel in entry.values["panels"]:
            coat = work.setdefault((face, panel, step), CoatWork())
            coat.add(entry, used)
    return work


def _is_for(pail: Entry, one: Entry) -> bool:
    """Whether a pail may have gone on the area and coat of a pass."""
    coats = {pail.get("coat"), one.get("coat")} - {None}
    return len(coats) < 2 and is_same_place(str(pail.get("area") or ""), str(one.get("area") or ""))


def _list_values(entries: Iterable[Entry], name: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(str(entry.values[name]) for entry in entries if entry.get(name) is not None))


def list_releases(context: DocumentContext, work: CoatWork, face: str, coat: str) -> list[Entry]:
    """The releases of a coat there where a panel was sprayed, since its last pass."""
    areas = {str(entry.get("area") or "") for entry in work.passes}
    since = work.days[-1] if work.days else None
    return [
        entry
        for entry in context.remember(_gather_releases).get((face, coat), ())
        if any(is_same_place(str(entry.get("area") or ""), area) for area in areas)
        and (since is None or (day_of(entry) or since) >= since)
    ]


def _gather_releases(context: DocumentContext) -> dict[tuple[str, str], list[Entry]]:
    found: dict[tuple[str, str], list[Entry]] = {}
    for entry in context.project.records.of("release"):
        found.setdefault((str(entry.get("elevation") or ""), str(entry.get("step") or "")), []).append(entry)
    return found
