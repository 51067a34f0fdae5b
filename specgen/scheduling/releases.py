"""Who releases the hold points of the work."""

from specgen.model.project import Project
from specgen.model.standard import Step
from specgen.model.value_text import words


def find_releasing_role(project: Project, step: Step) -> str:
    """The role that releases a hold point, such as architect; inspector for a person named to release them."""
    role = project.get(step.released_by) if step.released_by else None
    if role:
        return str(role)
    return "inspector" if has_inspector(project) else "architect"


def find_release_form(step: Step) -> str:
    """The one form on which the hold point of a step is released; an empty text where it is none."""
    return step.records[0] if step.point == "H" else ""


def has_inspector(project: Project) -> bool:
    """Whether somebody inspects the work besides the architect: named, or asked for by the contract."""
    people = project.members.get(("people",), ())
    named = any(project.get(("people", mark, "role")) == "inspector" for mark in people)
    releasing = project.is_given(("contract", "hold_points_released_by"))
    return named or releasing or project.is_given(("parties", "inspector", "name")) or is_inspected(project)


def is_inspected(project: Project) -> bool:
    """Whether the contract asks for a third-party inspection."""
    return project.get(("contract", "inspection_level")) not in (None, "none")


def name_releaser(project: Project, step: Step) -> str:
    """Who releases the hold point of a step, by firm and name; an empty text where it is none."""
    if step.point != "H":
        return ""
    role = project.get(step.released_by) if step.released_by else None
    return name_party(project, str(role)) if role else name_inspector(project)


def name_inspector(project: Project) -> str:
    """Who releases the hold points: as the contract names them, else the inspector, else the architect."""
    people = project.members.get(("people",), ())
    named = project.get(("contract", "hold_points_released_by"))
    if named is not None:
        return _name_person(project, named) if named in people else str(named)
    for mark in people:
        if project.get(("people", mark, "role")) == "inspector":
            return _name_person(project, mark)
    return str(project.get(("parties", "inspector", "name")) or "") or name_party(project, "architect")


def _name_person(project: Project, mark: str) -> str:
    """A person by employer and name."""
    name, employer = (project.get(("people", mark, key)) for key in ("name", "employer"))
    return f"{employer} ({name})" if name and employer else str(name or employer or mark)


def name_party(project: Project, role: str) -> str:
    """A party by its role and name."""
    name = project.get(("parties", role, "name"))
    return f"the {words(role)}" + (f" ({name})" if name else "")
