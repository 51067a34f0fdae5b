"""Who vouches for what: for each two sources the signed letter that says their materials go together."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.model.project import Project

ROLES = ("eifs_source", "finish_source", "wrb_source", "sealant_source")
_TITLES = {
    "eifs_source": "EIFS",
    "finish_source": "finish",
    "wrb_source": "weather barrier",
    "sealant_source": "sealant",
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A square of sources by sources; each square a letter's mark, `same source`, or open."""
    project = context.project
    roles = _meeting(project)
    made = []
    for role in roles:
        name = context.display(("parties", role, "name"))
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
    names = {_name(project, one), _name(project, other)}
    if "" not in names and len(names) == 1:
        return "same source"
    letters = [
        mark for mark in project.members.get(("attachments",), ()) if _vouches(project, mark, {one, other}, names)
    ]
    return (
        f"letter{'s' if len(letters) > 1 else ''} {', '.join(letters)}"
        if letters
        else DisplayValue("[open]", open=True)
    )


def _name(project: Project, role: str) -> str:
    return str(project.get(("parties", role, "name")) or "").strip().casefold()


def _vouches(project: Project, mark: str, roles: set[str], names: set[str]) -> bool:
    """Whether a signed letter speaks for both sources, by role or by the name behind the role."""

    def said(name: str) -> Any:
        return project.get(("attachments", mark, name))

    if said("kind") != "letter" or not said("signed"):
        return False
    parties = set(said("parties") or ())
    return roles <= parties or ("" not in names and names <= {_name(project, role) for role in parties})
