"""Who vouches for what: for each two sources the signed letter that says their materials go together."""

from typing import Any

from ...vocabulary.project import Project
from ..compose import Composer
from ..desk import Desk, TableView
from ..values import Shown

ROLES = ("eifs_source", "finish_source", "wrb_source", "sealant_source")
_TITLES = {
    "eifs_source": "EIFS",
    "finish_source": "finish",
    "wrb_source": "weather barrier",
    "sealant_source": "sealant",
}


def rows(desk: Desk, composer: Composer) -> TableView:
    """A square of sources by sources; each square a letter's mark, `same source`, or open."""
    project = desk.sight.project
    roles = _meeting(project)
    made = []
    for role in roles:
        name = desk.sight.shown(("parties", role, "name"))
        squares: list[Any] = ["" if role == other else _square(project, role, other) for other in roles]
        made.append(([_TITLES[role][:1].upper() + _TITLES[role][1:], ": ", name], *squares))
    width = 68 // len(roles)
    return TableView(("Source of", *(_TITLES[role] for role in roles)), tuple(made), (32, *[width] * len(roles)))


def _meeting(project: Project) -> tuple[str, ...]:
    """The sources whose materials this project has: no barrier and no sealant, no source of them."""
    barriers = {project.get(("walls", mark, "wrb", "kind")) for mark in project.members[("walls",)]}
    joints = project.members.get(("joints",)) or project.members.get(("sealants",))
    left_out = {"wrb_source"} if barriers == {"none"} else set()
    left_out |= set() if joints else {"sealant_source"}
    return tuple(role for role in ROLES if role not in left_out)


def _square(project: Project, one: str, other: str) -> Any:
    names = [project.get(("parties", role, "name")) for role in (one, other)]
    if None not in names and len({str(name).strip().casefold() for name in names}) == 1:
        return "same source"
    letters = [mark for mark in project.members.get(("attachments",), ()) if _vouches(project, mark, one, other)]
    return f"letter {', '.join(letters)}" if letters else Shown("[open]", open=True)


def _vouches(project: Project, mark: str, one: str, other: str) -> bool:
    def said(name: str) -> Any:
        return project.get(("attachments", mark, name))

    return said("kind") == "letter" and bool(said("signed")) and {one, other} <= set(said("parties") or ())
