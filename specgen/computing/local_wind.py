"""Who computes the wind of a project under a local code."""

from specgen.model.project import Project


def is_wind_by_engineer(project: Project) -> bool:
    """Whether wind is the engineer's: a local code that names no standard whose method is computed here."""
    return project.get(("code", "model")) == "other" and project.get(("code", "wind_standard")) is None
