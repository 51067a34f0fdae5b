"""The works below the sprayed coats, and which of their materials have nothing yet that tells the heat they bear."""

from collections.abc import Iterator
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.marks import list_marks
from specgen.model.field import Path
from specgen.weather.heat import MOST, SUN, list_heat_paths

# The work by the step at which its material goes on, and the word under which attachments cover it.
_WORKS = {
    "WRB": ("wrb", "wrb"),
    "boards": ("boards", "adhesive"),
    "base coat": ("mesh", "base_coat"),
    "smoothing": ("smoothing_1", "smoothing"),
}

# The papers that tell what a material bears.
_TELL = ("instructions", "data_sheet")
_SPRAYED = ("primer", "gloss")


class HeatedWork(NamedTuple):
    """A work whose material bears so much heat and sun."""

    name: str  # `base coat`
    step: str
    covers: str  # the word under which attachments cover its material
    walls: list[str]

    def list_given(self, context: DocumentContext, field: str) -> list[Path]:
        """The fields of the material that the project gives."""
        paths = list_heat_paths(self.step, self.walls, field)
        return [path for path in paths if context.project.get(path) is not None]


def list_works(context: DocumentContext) -> list[HeatedWork]:
    """These works that the project has, in their order."""
    project = context.project
    walls = list(project.members.get(("walls",), ()))
    barrier = [wall for wall in walls if project.get(("walls", wall, "wrb", "kind")) not in (None, "none")]
    return [
        HeatedWork(name, step, covers, barrier if name == "WRB" else walls)
        for name, (step, covers) in _WORKS.items()
        if name != "WRB" or barrier
    ]


def list_uninstructed(context: DocumentContext) -> Iterator[str]:
    """The materials of which neither fields nor a paper tell heat and sun, as attachments cover them.

    A draft asks for the instructions of the sprayed coats too, and of the sealant where anything is sealed.
    """
    listed = _list_covered(context, _TELL)
    for work in list_works(context):
        told = all(work.list_given(context, field) for field in (MOST, SUN))
        if not told and work.covers not in listed:
            yield work.covers
    if context.is_marked:
        sealed = any(context.project.members.get((name,)) for name in ("joints", "sealants"))
        besides = (*_SPRAYED, *(["sealant"] if sealed else []))
        yield from (one for one in besides if one not in _list_covered(context, _TELL[:1]))


def _list_covered(context: DocumentContext, kinds: tuple[str, ...]) -> set[str]:
    """The materials that attachments of some kinds cover."""
    listed: set[str] = set()
    for mark in list_marks(context, "attachments"):
        kind, covers = (context.project.get(("attachments", mark, name)) for name in ("kind", "covers"))
        listed |= set(map(str, covers or ())) if kind in kinds else set()
    return listed
