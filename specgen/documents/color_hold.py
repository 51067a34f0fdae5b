"""Whether the heat of a color is still open on a face, so that it is not sprayed yet, on the mockup neither."""

from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.model.finding import Finding

_HEAT = ("HEA-02", "HEA-03")  # the rules that ask for a lighter color, or the acceptance of this one


def tell_hold(context: DocumentContext, color: str) -> str:
    """`hold for HEA-03b, D05` of the color of this mark; empty where nothing stands against it."""
    held = list(dict.fromkeys(finding.code for finding in _list_held(context, color)))
    return f"hold for {' and '.join(held)}, D05" if held else ""


def _list_held(context: DocumentContext, color: str) -> Iterator[Finding]:
    """The findings on the heat of a color, on whichever face it stands: another color would be that of every face."""
    for finding in context.judgment.findings:
        faces = [("elevations", mark, "color") for mark in finding.subjects if finding.rule in _HEAT]
        colors = (context.project.get(face) for face in faces)
        if any(one is not None and one.mark == color for one in colors):
            yield finding
