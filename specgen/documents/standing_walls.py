"""The walls that stand already, are told to get no barrier or no drainage, and what of them is asked."""

from collections.abc import Iterable

from specgen.computing.substrates import MASONRY
from specgen.documents.context import DocumentContext

_STANDING = ("existing_coated", "existing_brick")
# Faults of a wall by which water gets in, or that it leaves behind.
_WATER = {"damp", "efflorescence", "frost_damage", "open_joints"}
BARRIER = "Acceptance of a barrier wall without drainage, in writing"


def list_bare(context: DocumentContext) -> list[str]:
    """The marks of the walls that are told to get no water-resistive barrier, which the IBC asks of all but masonry.

    A new wall of concrete or masonry is plainly free of it.
    """
    project = context.project
    if project.get(("code", "model")) != "ibc":
        return []
    bare = [mark for mark in _list_walls(context) if project.get(("walls", mark, "wrb", "kind")) == "none"]
    standing = list_standing(context)
    return [mark for mark in bare if mark in standing or not _is_solid(context, mark)]


def list_solid(context: DocumentContext) -> list[str]:
    """Those of them that are of concrete or masonry as far as the project tells."""
    return [mark for mark in list_bare(context) if _is_solid(context, mark)]


def list_unconfirmed(context: DocumentContext) -> list[str]:
    """Those of them that may be framed for all that the project tells: nothing is said of what lies behind."""
    solid, at = list_solid(context), ("substrate", "base")
    standing = set(list_standing(context))
    return [
        m
        for m in list_bare(context)
        if m in solid or (m in standing and context.project.get(("walls", m, *at)) is None)
    ]


def list_covered(context: DocumentContext) -> list[str]:
    """The marks of the walls with a barrier that the IBC asks of all but masonry, and that is not yet named in full."""
    project = context.project
    if project.get(("code", "model")) != "ibc":
        return []
    told = [mark for mark in _list_walls(context) if project.get(("walls", mark, "wrb", "kind")) not in (None, "none")]
    named = ("product", "standard")
    open_still = [m for m in told if any(project.get(("walls", m, "wrb", name)) is None for name in named)]
    return [mark for mark in open_still if not _is_solid(context, mark)]


def _is_solid(context: DocumentContext, mark: str) -> bool:
    kind, base = (context.project.get(("walls", mark, "substrate", name)) for name in ("kind", "base"))
    return kind in MASONRY or (kind == "existing_coated" and base in ("concrete", "masonry"))


def list_built(context: DocumentContext) -> frozenset[str]:
    """The marks of the new walls that stand today by their age, which is that at the start of work if it is dated."""
    project = context.project
    start, today = project.get(("schedule", "work_start")), project.get(("package", "date"))
    ages = {mark: project.get(("walls", mark, "substrate", "age_days")) for mark in _list_walls(context)}
    left = (start - today).days if start and today else 0
    return frozenset(mark for mark, age in ages.items() if age is not None and int(age) > left)


def is_built(context: DocumentContext, elevations: Iterable[str]) -> bool:
    """Whether a new wall of these elevations stands today, to be measured."""
    walls = (context.project.get(("elevations", mark, "wall")) for mark in elevations)
    return any(wall is not None and wall.mark in list_built(context) for wall in walls)


def list_standing(context: DocumentContext) -> list[str]:
    """The marks of the walls that stand already."""
    kind = ("substrate", "kind")
    return [mark for mark in _list_walls(context) if context.project.get(("walls", mark, *kind)) in _STANDING]


def list_barriers(context: DocumentContext) -> list[str]:
    """The marks of the walls that stand already and are told to get no drainage."""
    standing = list_standing(context)
    return [mark for mark in list_undrained(context) if mark in standing]


def list_wet(context: DocumentContext, marks: Iterable[str]) -> list[str]:
    """Those of these walls whose faults show that water gets in."""
    faults = {mark: context.project.get(("walls", mark, "substrate", "condition")) or () for mark in marks}
    return [mark for mark, found in faults.items() if not _WATER.isdisjoint(map(str, found))]


def list_undrained(context: DocumentContext) -> list[str]:
    """The marks of the walls that are told to get no drainage."""
    kind = ("drainage", "kind")
    return [mark for mark in _list_walls(context) if context.project.get(("walls", mark, *kind)) == "none"]


def _list_walls(context: DocumentContext) -> tuple[str, ...]:
    return context.project.members[("walls",)]
