"""What the instructions of a material allow of heat until it is dry, and of sun until it is set, by its step."""

from collections.abc import Iterable, Iterator

from specgen.model.field import Path
from specgen.model.project import Project

# The section of the project that holds the figures of a step; a star is the wall at hand.
_OF_STEP: dict[str, Path] = {
    "wrb": ("walls", "*", "wrb"),
    "boards": ("walls", "*", "attachment"),
    **dict.fromkeys(("heavy_mesh", "mesh", "second_pass"), ("walls", "*", "base_coat")),
    **dict.fromkeys(("smoothing_1", "smoothing_2"), ("smoothing",)),
}
MOST, SUN = "most_temperature", "direct_sun"


def list_heat_paths(step: str, walls: Iterable[str], name: str) -> Iterator[Path]:
    """The paths of a field of the material of a step, `MOST` or `SUN`: one for each wall, or that of a coat."""
    section = _OF_STEP.get(step, ())
    if section[:1] == ("walls",):
        yield from ((section[0], wall, section[2], name) for wall in walls)
    elif section:
        yield (*section, name)


def find_sunless(project: Project, step: str, walls: Iterable[str]) -> Path | None:
    """The field that keeps direct sun off a step until its coat is set; None where none does."""
    paths = list_heat_paths(step, walls, SUN)
    return next((path for path in paths if project.get(path) is False), None)
