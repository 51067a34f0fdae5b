"""Compatibility letters: for each pair of manufacturers, the signed letter that covers both."""

from itertools import combinations
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.project import Project

ROLES = ("eifs_source", "finish_source", "wrb_source", "sealant_source")
_TITLES = {
    "eifs_source": "EIFS",
    "finish_source": "Finish",
    "wrb_source": "WRB",
    "sealant_source": "Sealant",
}
_SAME = "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Matrix of manufacturers: each cell names the letter that covers the pair; no rows while there is no letter."""
    project = context.project
    roles = _meeting_roles(project)
    lines = []
    for role in roles:
        name = context.display(("parties", role, "name"))
        cells: list[Any] = [_SAME if role == other else _cell(project, role, other) for other in roles]
        lines.append(([_TITLES[role], ": ", name], *cells))
    if not any(_cell(project, *pair) for pair in combinations(roles, 2)):
        lines = []
    width = 68 // len(roles)
    return TableView(("Manufacturer", *(_TITLES[role] for role in roles)), tuple(lines), (32, *[width] * len(roles)))


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
    """The letters that cover two manufacturers; blank for a letter not received."""
    if _is_same(project, role, other):
        return "same manufacturer"
    letters = _covering(project, role, other)
    return f"letter{'s' if len(letters) > 1 else ''} {', '.join(letters)}" if letters else ""


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
