"""Compatibility letters: for each pair of manufacturers, the signed letters that cover both."""

from collections.abc import Iterator
from itertools import combinations
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.joint_borders import list_borders, list_sealed_penetrations
from specgen.documents.marks import list_marks
from specgen.documents.members import span_marks
from specgen.model.project import Project

HEADER, WIDTHS = ("Manufacturer", "And", "Letter or report"), (36, 38, 26)
ROLES = ("eifs_source", "finish_source", "wrb_source", "sealant_source")
# How each is called in a table.
TITLES = {
    "eifs_source": "EIFS",
    "finish_source": "Finish",
    "wrb_source": "WRB",
    "sealant_source": "Sealant",
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each pair of manufacturers with the letters that cover it; none while there is no letter."""
    project = context.project
    pairs = list(combinations(_meeting_roles(project), 2))
    lines = [(*(_name_maker(context, role) for role in pair), _cell(project, *pair)) for pair in pairs]
    if not any(_covering(project, *pair) for pair in pairs):
        return TableView(HEADER, (), WIDTHS)
    return TableView(HEADER, (*lines, *_bordering(context)), WIDTHS)


def _bordering(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    """The other face of joints, which is none of the wall: frames of openings, collars of what passes through."""
    borders = list_borders(context, list_marks(context, "joints"), list_sealed_penetrations(context))
    by_place: dict[str, list[str]] = {}
    for what, marks in borders.items():
        by_place.setdefault(span_marks(marks), []).append(what)
    faces = [f"{' and '.join(whats)} at {places}" for places, whats in by_place.items()]
    if not faces:
        return
    told = "; ".join(faces)
    shown = list_metal_proofs(context.project)
    yield (
        _name_maker(context, "sealant_source"),
        told[:1].upper() + told[1:],
        ", ".join(shown) or "not received: letter or ASTM C794 report",
    )


def _read(project: Project, collection: str, mark: str) -> Any:
    return project.get((collection, mark, "kind"))


def list_metal_proofs(project: Project) -> list[str]:
    """The letters and reports on the sealant together with what it borders."""
    return [mark for mark in project.members.get(("attachments",), ()) if _shows_metal(project, mark)]


def _shows_metal(project: Project, mark: str) -> bool:
    """Whether a letter or a report is on the sealant together with what it borders."""
    covers = set(project.get(("attachments", mark, "covers")) or ())
    return {"sealant", "accessories"} <= covers and _read(project, "attachments", mark) in ("letter", "test_report")


def _name_maker(context: DocumentContext, role: str) -> list[Any]:
    return [TITLES[role], ": ", context.display(("parties", role, "name"))]


def list_letters(project: Project) -> tuple[str, ...]:
    """The marks of the letters that cover a pair of manufacturers."""
    found = (_covering(project, *pair) for pair in combinations(_meeting_roles(project), 2))
    return tuple(sorted({mark for marks in found for mark in marks}, key=lambda mark: (len(mark), mark)))


def _meeting_roles(project: Project) -> tuple[str, ...]:
    """The manufacturers involved: none for a weather barrier or a sealant that the project does not have."""
    barriers = {project.get(("walls", mark, "wrb", "kind")) for mark in project.members[("walls",)]}
    joints = project.members.get(("joints",)) or project.members.get(("sealants",))
    left_out = {"wrb_source"} if barriers == {"none"} else set()
    left_out |= set() if joints else {"sealant_source"}
    return tuple(role for role in ROLES if role not in left_out)


def _cell(project: Project, role: str, other: str) -> str:
    """The letters that cover two manufacturers."""
    if _is_same(project, role, other):
        return "same manufacturer"
    return ", ".join(_covering(project, role, other)) or "not received"


def _covering(project: Project, role: str, other: str) -> list[str]:
    """The marks of the letters that cover two manufacturers; none for one firm in both roles."""
    if _is_same(project, role, other):
        return []
    names = {_name(project, role), _name(project, other)}
    return [mark for mark in project.members.get(("attachments",), ()) if _vouches(project, mark, {role, other}, names)]


def _is_same(project: Project, role: str, other: str) -> bool:
    name = _name(project, role)
    return bool(name) and name == _name(project, other)


def _name(project: Project, role: str) -> str:
    return str(project.get(("parties", role, "name")) or "").strip().casefold()


def _vouches(project: Project, mark: str, roles: set[str], names: set[str]) -> bool:
    """Whether a signed letter covers both manufacturers, by role or by name."""

    def read(name: str) -> Any:
        return project.get(("attachments", mark, name))

    if read("kind") != "letter" or not read("signed"):
        return False
    parties = set(read("parties") or ())
    return roles <= parties or ("" not in names and names <= {_name(project, role) for role in parties})
