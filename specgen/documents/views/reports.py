"""The test reports by what they prove: property, figure of this project, test method, report."""

from collections.abc import Iterator
from typing import Any, NamedTuple

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.judging.fire_tests import names_standard
from specgen.model.value_text import words


class _Claim(NamedTuple):
    """What a report is to prove, and the reports that the project names for it."""

    of: str
    figure: list[Any]
    method: str
    reports: tuple[str, ...]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each property that the project gives a figure of, then the reports of anything else."""
    claims = _list_claims(context)
    told = {mark for claim in claims for mark in claim.reports}
    rest = [report.mark for report in _list_reports(context) if report.mark not in told]
    lines: list[tuple[Any, ...]] = [(*claim[:3], _name_reports(context, claim.reports)) for claim in claims]
    for mark in rest:
        method = context.display(("attachments", mark, "standard"))
        of = str(context.display(("attachments", mark, "title"))).partition(": ")[0]
        lines.append((of, _find_result(context, mark), method if method else "–", _name_reports(context, (mark,))))
    return TableView(("Property", "This project", "Test method", "Report"), tuple(lines), (30, 26, 18, 26))


def _find_result(context: DocumentContext, mark: str) -> str:
    """The result of a report, which its title gives behind a colon; empty where it gives none."""
    return str(context.project.get(("attachments", mark, "title")) or "").partition(": ")[2]


def list_pending_tests(context: DocumentContext) -> list[tuple[str, str]]:
    """The property and the test method of each claim that no report proves yet."""
    claims = [*_of_walls(context), *_impact(context), *_of_colors(context)]  # a rule asks for that of each sealant
    return [(claim.of, claim.method) for claim in claims if not claim.reports]


def _list_claims(context: DocumentContext) -> list[_Claim]:
    return [*_of_walls(context), *_impact(context), *_of_colors(context), *_of_sealants(context)]


class _Report(NamedTuple):
    """A test report: its mark, its method and title, and the wall that it names as tested, if any."""

    mark: str
    said: str
    wall: str


def _list_reports(context: DocumentContext) -> list[_Report]:
    return context.remember(_gather_reports)


def _gather_reports(context: DocumentContext) -> list[_Report]:
    found = []
    for mark in list_marks(context, "attachments"):
        kind, named, title, tested = (
            context.project.get(("attachments", mark, key)) for key in ("kind", "standard", "title", "assembly")
        )
        if str(kind) == "test_report":
            found.append(_Report(mark, f"{named} {title}", "" if tested is None else tested.mark))
    return found


def find_reports(context: DocumentContext, method: str, wall: str = "") -> tuple[str, ...]:
    """The reports to a test method; of those that name the wall they tested, only that of this wall."""
    return tuple(
        report.mark
        for report in _list_reports(context)
        if names_standard(report.said, method) and (not wall or report.wall in ("", wall))
    )


def _name_reports(context: DocumentContext, marks: tuple[str, ...]) -> Any:
    """`A8, August 14, 2025`; `pending` where none is attached."""
    cell: list[Any] = []
    for mark in marks:
        date = context.display(("attachments", mark, "issued_on"))
        cell += [*(["; "] if cell else []), mark, *([", ", date] if not date.open else [])]
    return cell or "pending"


def _of_walls(context: DocumentContext) -> Iterator[_Claim]:
    """The tests of the walls; those that several walls share once."""
    found: dict[str, _Claim] = {}
    for mark in list_marks(context, "walls"):
        for claim in _of_wall(context, mark):
            found.setdefault(f"{claim}", claim)
    heads = list(dict.fromkeys(claim.of.partition(",")[0] for claim in found.values()))
    yield from sorted(found.values(), key=lambda claim: heads.index(claim.of.partition(",")[0]))


def _of_wall(context: DocumentContext, mark: str) -> Iterator[_Claim]:
    at = ("walls", mark)

    def shown(*path: str) -> Any:
        return context.display((*at, *path))

    def given(*path: str) -> bool:
        return context.project.is_given((*at, *path))

    if context.project.get((*at, "base_coat", "class")) == "PB":
        yield _Claim("EIFS", ["class ", shown("base_coat", "class")], "ASTM E2568", find_reports(context, "E2568"))
    if given("insulation", "flame_spread") and given("insulation", "smoke_developed"):
        indexes = ["flame spread ", shown("insulation", "flame_spread"), ", smoke developed "]
        indexes += [shown("insulation", "smoke_developed")]
        yield _Claim("Insulation board indexes", indexes, "ASTM E84", find_reports(context, "E84"))
    if given("attachment", "ultimate_strength"):
        strength = [shown("attachment", "ultimate_strength"), " ultimate"]
        yield _Claim(f"Wind load, {mark}", strength, "ASTM E330", find_reports(context, "E330", mark))
    if given("drainage", "efficiency"):
        share = [shown("drainage", "efficiency")]
        yield _Claim(f"Drainage efficiency, {mark}", share, "ASTM E2273", find_reports(context, "E2273", mark))
    bond = context.project.get((*at, "wrb", "bond_report"))
    if bond is not None:
        named = context.project.get(("attachments", bond.mark, "standard"))
        bonded = [shown("attachment", "product"), " on ", shown("wrb", "product")]
        bonded += [f"; {result}" for result in (_find_result(context, bond.mark),) if result]
        yield _Claim("Bond of adhesive to WRB", bonded, str(named or "–"), (bond.mark,))


def _impact(context: DocumentContext) -> Iterator[_Claim]:
    """The impact classes of all zones, from the lowest to the highest."""
    zones = {
        str(context.project.get((*path, "class")))
        for mark in list_marks(context, "elevations")
        for path in _zones(context, mark)
    }
    classes = [name for name in ("standard", "medium", "high", "ultra_high") if name in zones]
    if classes:
        figure: list[Any] = []
        for name in classes:
            figure += [f"{', ' if figure else ''}{words(name)} minimum ", context.limit(f"impact.{name}")]
        yield _Claim("Impact classes", figure, "ASTM E2486", find_reports(context, "E2486"))


def _zones(context: DocumentContext, mark: str) -> list[tuple[str, ...]]:
    path = ("elevations", mark, "impact_zones")
    return [(*path, number) for number in context.project.members.get(path, ())]


def _of_colors(context: DocumentContext) -> Iterator[_Claim]:
    """Solar reflectance and emittance of each color, by the methods that the project names."""
    for mark in list_marks(context, "colors"):
        for name in ("solar_reflectance", "emittance"):
            method = context.project.get(("colors", mark, f"{name}_method"))
            if context.project.is_given(("colors", mark, name)) and method not in (None, "not_stated"):
                of = f"{words(name).capitalize()}, {mark}"
                yield _Claim(
                    of, [context.display(("colors", mark, name))], f"ASTM {method}", find_reports(context, str(method))
                )


def _of_sealants(context: DocumentContext) -> Iterator[_Claim]:
    """Adhesion of each sealant: the face, and the conditions it was tested in; pending on the faces of its joints."""
    for mark in list_marks(context, "sealants"):
        at = ("sealants", mark)
        report = context.project.get((*at, "adhesion_report"))
        if report is not None:
            named = context.project.get(("attachments", report.mark, "standard"))
            face, tested = (context.display((*at, f"reported_{name}")) for name in ("face", "conditions"))
            figure = ["on ", _tint(context, face.raw), face, "; ", tested]
            figure += [f"; {result}" for result in (_find_result(context, report.mark),) if result]
            yield _Claim(f"Adhesion of sealant {mark}", figure, str(named or "–"), (report.mark,))
        elif faces := _list_faces(context, mark):
            yield _Claim(f"Adhesion of sealant {mark}", [f"on {', '.join(faces)}"], "ASTM C1382", ())


def _list_faces(context: DocumentContext, sealant: str) -> list[str]:
    """The bond faces of the joints of a sealant, in words."""
    project = context.project
    joints = [("joints", joint) for joint in list_marks(context, "joints")]
    own = [joint for joint in joints if str(project.get((*joint, "sealant"))) == sealant]
    faces = dict.fromkeys(project.get((*joint, "bond_face")) for joint in own)
    return [f"{_tint(context, face)}{words(str(face))}" for face in faces if face is not None]


def _tint(context: DocumentContext, face: Any) -> str:
    return "tinted " if face == "primer" and context.project.get(("primer", "tinted")) else ""
