"""The materials of a job, which its data sheets and letters must cover."""

from specgen.judging.choice_groups import ADHESIVE
from specgen.model.absence import if_given
from specgen.model.typed_views import Description, Joint, Wall

GLUED = (*ADHESIVE, "adhesive_and_mechanical")
# Materials with a section of their own.
_SECTIONS = {
    "board": ("walls", "insulation"),
    "base_coat": ("walls", "base_coat"),
    "mesh": ("walls", "mesh"),
    "smoothing": ("smoothing",),
    "primer": ("primer",),
    "gloss": ("gloss",),
    "sealant": ("sealants",),
    "backing": ("joints",),
}
_ORDER = (
    "wrb",
    "adhesive",
    "board",
    "base_coat",
    "mesh",
    "smoothing",
    "primer",
    "gloss",
    "sealant_primer",
    "sealant",
    "backing",
)


def materials(project: Description) -> tuple[str, ...]:
    """The materials the project describes, from the wall out; one not described is not part of the job yet."""
    described = {
        (path[0], path[2]) if path[0] == "walls" and len(path) > 2 else path[:1] for path in project.project.values
    }
    has = {material for material, section in _SECTIONS.items() if section in described}
    if any(_barrier(wall) not in (None, "none") for wall in project.walls):
        has.add("wrb")
    if any(_method(wall) in GLUED for wall in project.walls):
        has.add("adhesive")
    if project.joints.is_given() and any(map(_is_primed, project.joints)):
        has.add("sealant_primer")
    return tuple(material for material in _ORDER if material in has)


def mixed_materials(project: Description) -> tuple[str, ...]:
    """The materials that come as liquid or powder; a weather barrier only if it is fluid-applied."""
    dry = {"board", "mesh", "backing"}
    if not any(_barrier(wall) == "fluid_applied" for wall in project.walls):
        dry.add("wrb")
    return tuple(material for material in materials(project) if material not in dry)


def _barrier(wall: Wall) -> str | None:
    return if_given(lambda: wall.wrb.kind)


def _method(wall: Wall) -> str | None:
    return if_given(lambda: wall.attachment.method)


def _is_primed(joint: Joint) -> bool:
    return if_given(lambda: joint.bond_face) == "sealant_primer_on_base_coat"
