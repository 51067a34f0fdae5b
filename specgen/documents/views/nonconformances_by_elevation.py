"""How many nonconformances stand on each elevation, by their weight."""

from collections import Counter

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks, name_member
from specgen.model.finding import Severity
from specgen.model.record import OF_READINGS

_NONE_TOLD = "No elevation told"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each elevation with entries, and the sum."""
    records, found = context.project.records, context.recorded.nonconformances
    entries = Counter(str(entry.get("elevation") or "") for name in OF_READINGS for entry in records.of(name))
    counts = Counter((str(one.entry.get("elevation") or ""), one.severity) for one in found if not one.lifted_by)
    lifted = Counter(str(one.entry.get("elevation") or "") for one in found if one.lifted_by)
    waiting = Counter(str(one.entry.get("elevation") or "") for one in found if not one.is_settled)
    faces = [face for face in (*list_marks(context, "elevations"), "") if entries[face]]
    lines = [
        (
            name_member(context, "elevations", face) if face else _NONE_TOLD,
            str(entries[face]),
            *(str(counts[face, severity]) for severity in Severity),
            str(lifted[face]),
            str(waiting[face]),
        )
        for face in faces
    ]
    if len(lines) > 1:
        lines.append(("All", *(str(sum(int(line[column]) for line in lines)) for column in range(1, 7))))
    header = ("Elevation", "Entries", "Stops", "Cautions", "Notes", "Lifted", "Open")
    return TableView(header, tuple(lines), (34, 11, 11, 11, 11, 11, 11))
