"""The layouts proposed for elevations whose lines are asked for, with what each trades off."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.layouts import list_layouts, tell_area, tell_length
from specgen.documents.marks import name_member

_WAYS = {"given": "given", "through": "running through", "stopped": "stopping at openings"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each proposal, the one that is drawn first; no rows where all lines are given."""
    lines = []
    for mark, layouts in list_layouts(context).items():
        for number, layout in enumerate(layouts):
            if layout.proposal == "given":
                continue
            score = layout.score
            counts = (score.over_limits, score.slivers, score.missed, score.past_wish)
            lines.append(
                (
                    "" if number else name_member(context, "elevations", mark),
                    f"{_WAYS[layout.proposal]}{'' if number else ', drawn'}",
                    *map(str, counts),
                    tell_length(context, score.joint_length),
                    tell_area(context, score.inequality),
                    str(score.asymmetry),
                    " ".join(layout.notes),
                )
            )
    header = (
        "Elevation",
        "Lines",
        "Panels over limits",
        "Under minimum side",
        "Wanted lines missed",
        "Past target size",
        "Aesthetic joints",
        "Largest less smallest panel",
        "Lines without mirror image",
        "Remarks",
    )
    return TableView(header, tuple(lines), (12, 13, 8, 8, 7, 7, 8, 9, 8, 20))
