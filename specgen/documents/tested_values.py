"""The test reports that prove a value of the project, as its source."""

from specgen.documents.context import DocumentContext
from specgen.documents.views.reports import find_reports
from specgen.model.field import Path
from specgen.model.source import Kind, Source

# The standard of the test that gives a value of a wall.
_OF_WALLS: dict[tuple[str, ...], str] = {
    ("attachment", "ultimate_strength"): "E330",
    ("drainage", "efficiency"): "E2273",
}
# The values of a color that are measured; the project names the method of each.
_OF_COLORS = ("solar_reflectance", "emittance")


def find_report_source(context: DocumentContext, path: Path) -> Source | None:
    """`Test report TR4: Wind load on sheathing` behind a tested value; None where no report proves it."""
    reports = list_report_marks(context, path)
    if not reports:
        return None
    titles = [f"{mark}: {context.project.get(('attachments', mark, 'title')) or 'untitled'}" for mark in reports]
    return Source(Kind.CITED, f"Test report {'; '.join(titles)}")


def list_report_marks(context: DocumentContext, path: Path) -> tuple[str, ...]:
    """The marks of the reports that prove a tested value; none where it is not given, or none proves it."""
    return _find_reports(context, path) if path in context.project.values else ()


def _find_reports(context: DocumentContext, path: Path) -> tuple[str, ...]:
    collection, mark, *name = path if len(path) > 2 else ("", "")
    if collection == "walls" and tuple(name) in _OF_WALLS:
        return find_reports(context, _OF_WALLS[tuple(name)], mark)
    if collection != "colors" or name[0] not in _OF_COLORS:
        return ()
    method = context.project.get(("colors", mark, f"{name[0]}_method"))
    tested = find_reports(context, method) if method not in (None, "not_stated") else ()
    return tuple(one for one in tested if mark in _list_colors(context, one))


def _list_colors(context: DocumentContext, report: str) -> tuple[str, ...]:
    return tuple(color.mark for color in context.project.get(("attachments", report, "colors")) or ())
