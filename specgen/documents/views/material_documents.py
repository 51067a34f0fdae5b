"""Which kinds of document cover each material of the job; what is owed and not listed is pending."""

from collections.abc import Container
from typing import Any, cast

from specgen.documents.attachments import name_material
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.members import span_marks
from specgen.documents.required_documents import list_pending
from specgen.judging.materials import materials, mixed_materials
from specgen.judging.owners import name_maker

_COLUMNS = {
    "Data sheet": ("data_sheet",),
    "Safety data sheet": ("sds",),
    "Test report": ("test_report",),
    "Letter": ("letter",),
    "Instructions": ("instructions",),
    "Other": ("certificate", "drawing", "calculation", "sample", "warranty", "program"),
}
# What a project has beside the materials of its walls, where a document covers it.
_BESIDE = ("accessories", "access", "safety")
PENDING = "[pending]"
# The word in the name of a document that is still required.
_ASKED = {"Test report": "report", "Letter": "letter"}
_BOARD = "board"
_LETTER, _SAME, _BASE = "Letter", "same manufacturer", "base_coat"
# The material that a face is of on which the adhesion of sealant was tested.
_FACES = {"base_coat": "base_coat", "smoothing_coat": "smoothing", "primer": "primer", "gloss": "gloss"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each material, from the wall out, then for what else the attachments cover."""
    root = cast(Any, context.project.root())
    described, mixed = materials(root), mixed_materials(root)
    covered = {covers for mark in _list(context) for covers in _read(context, mark, "covers")}
    named = [*described, *(one for one in (*sorted(covered), *_BESIDE) if one in covered and one not in described)]
    lines = tuple(_set_row(context, one, one in described, mixed) for one in dict.fromkeys(_order(named)))
    return TableView(("Material", *_COLUMNS), lines, (22, 14, 14, 16, 12, 12, 10))


def _order(named: list[str]) -> list[str]:
    return [*(one for one in named if one not in _BESIDE), *(one for one in named if one in _BESIDE)]


def _set_row(context: DocumentContext, material: str, described: bool, mixed: Container[str]) -> tuple[Any, ...]:
    owed = {"Data sheet": described, "Safety data sheet": material in mixed, **_list_asked(context, material, mixed)}
    cells = ((title, _find(context, material, kinds)) for title, kinds in _COLUMNS.items())
    pending = DisplayValue(PENDING, open=True)
    lacking: dict[str, Any] = {title: pending for title, due in owed.items() if due}
    lacking |= {_LETTER: _SAME} if described and _is_of_system(context, material) else {}
    told = (span_marks(found) or lacking.get(title, "–") for title, found in cells)
    said = name_material(material)
    return (said[:1].upper() + said[1:], *told)


def _list_asked(context: DocumentContext, material: str, mixed: Container[str]) -> dict[str, bool]:
    """Whether a test report and a letter are still required of the manufacturer of a material that is tested."""
    if material not in mixed and material != _BOARD:
        return {}
    names = [entry.name.lower() for entry in list_pending(context) if entry.owed_by == name_maker(material)]
    return {title: any(said in name for name in names) for title, said in _ASKED.items()}


def _is_of_system(context: DocumentContext, material: str) -> bool:
    """Whether a material comes with the base coat, so that a letter on that speaks for its maker."""
    return name_maker(material) == name_maker(_BASE) and bool(_find(context, _BASE, _COLUMNS[_LETTER]))


def _find(context: DocumentContext, material: str, kinds: tuple[str, ...]) -> list[str]:
    """The marks of the attachments of some kinds that cover a material, or report how sealant adheres to it."""
    adhering = _list_adhesion(context, material)
    return [
        mark
        for mark in _list(context)
        if (material in _read(context, mark, "covers") or mark in adhering)
        and context.project.get(("attachments", mark, "kind")) in kinds
    ]


def _list_adhesion(context: DocumentContext, material: str) -> set[str]:
    """The reports on the adhesion of sealants to a material."""
    project, found = context.project, set()
    for sealant in project.members.get(("sealants",), ()):
        report, face = (project.get(("sealants", sealant, name)) for name in ("adhesion_report", "reported_face"))
        if report is not None and _FACES.get(str(face)) == material:
            found.add(report.mark)
    return found


def _list(context: DocumentContext) -> tuple[str, ...]:
    return context.project.members.get(("attachments",), ())


def _read(context: DocumentContext, mark: str, name: str) -> tuple[str, ...]:
    return tuple(map(str, context.project.get(("attachments", mark, name)) or ()))
