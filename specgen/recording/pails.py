"""Which pails belong to a pass: those of its day, step, and coat at its place."""

from collections.abc import Collection, Iterable, Mapping
from datetime import date
from fractions import Fraction
from typing import NamedTuple

from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.recording.site_entries import fold_area

_Key = tuple[date | None, str, str]  # day, step, elevation


class Water(NamedTuple):
    """The least and the most water in the pails of a pass, in percent."""

    least: Fraction
    most: Fraction


class _Pail(NamedTuple):
    """What is told of pails that are alike."""

    coat: int | None
    batch: str | None
    area: str
    water: Fraction


def choose_pails(pails: Iterable[Entry], entry: Entry, elevation: str) -> list[Entry]:
    """Of the pails of a day and step those of a pass: of its coat and area, and of its own batch where it names one."""
    areas = {fold_area(str(entry.get("area") or ""), elevation)}
    alike = [one for one in pails if all(_agree(one.get(name), entry.get(name)) for name in ("coat", "batch"))]
    found = [one for one in alike if is_in(one, areas, elevation)]
    return [one for one in found if one.get("pail") is not None] or found


def is_in(entry: Entry, areas: Collection[str], elevation: str) -> bool:
    """Whether an entry is of one of some areas, as far as both are told."""
    area = fold_area(str(entry.get("area") or ""), elevation)
    return not area or "" in areas or area in areas


def find_pass_water(project: Project) -> Mapping[int, Water]:
    """The water in the pails of each pass that tells its wet film, by its number; looked for once."""
    return project.remember("water of passes", lambda: _find_all(project))


def _find_all(project: Project) -> dict[int, Water]:
    log = project.records.of("log")
    pails: dict[_Key, set[_Pail]] = {}
    for one in log:
        if "water" in one.values:
            pails.setdefault(_key_of(one), set()).add(_tell(one, Fraction(one.values["water"])))
    found: dict[int, Water] = {}
    for one in log:
        if "wet_film" in one.values:
            water = list(_list_water(pails, one))
            if water:
                found[one.number] = Water(min(water), max(water))
    return found


def _list_water(pails: Mapping[_Key, Collection[_Pail]], entry: Entry) -> Iterable[Fraction]:
    """The water of an entry itself, else that of the pails that agree with it; those of no elevation are of each."""
    if "water" in entry.values:
        return (Fraction(entry.values["water"]),)
    day, step, elevation = _key_of(entry)
    own = _tell(entry, Fraction(0))
    near = (pail for at in dict.fromkeys((elevation, "")) for pail in pails.get((day, step, at), ()))
    return (pail.water for pail in near if _is_of(pail, own))


def _is_of(pail: _Pail, own: _Pail) -> bool:
    same_area = not pail.area or not own.area or pail.area == own.area
    return same_area and _agree(pail.coat, own.coat) and _agree(pail.batch, own.batch)


def _tell(entry: Entry, water: Fraction) -> _Pail:
    values = entry.values
    area = fold_area(values.get("area") or "", values.get("elevation") or "")
    return _Pail(values.get("coat"), values.get("batch"), area, water)


def _key_of(entry: Entry) -> _Key:
    values = entry.values
    return values.get("date"), values.get("step") or "", values.get("elevation") or ""


def _agree(one: object, other: object) -> bool:
    """Whether two values agree, as far as both are told."""
    return one is None or other is None or one == other
