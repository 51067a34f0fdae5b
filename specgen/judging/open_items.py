"""Open items: owed fields that are absent, who owes them, and which clauses wait for them."""

from collections import defaultdict
from collections.abc import Iterable, Iterator

from specgen.judging.applies import applicable
from specgen.model.evaluation import Look
from specgen.model.field import Field, Path, dotted_path
from specgen.model.finding import NotJudged, OpenItem
from specgen.model.project import Project

RINGS = ("verdict", "mockup", "work", "closeout")
# A mark that is optional and finds nothing is open from the first submittal on.
_RING_OF_MARKS = RINGS[1]
_OWED = {"design_draft": 1, "mockup_submittal": 2, "work_submittal": 3, "resubmittal": 3, "closeout": 4}


def owed_rings(purpose: str) -> tuple[str, ...]:
    """The rings a purpose includes; a design draft lists the first without enforcing it."""
    return RINGS[: _OWED[purpose]]


def open_items(project: Project, waiting: Iterable[NotJudged], look: Look) -> list[OpenItem]:
    """Every owed field that is absent, in the order of the catalogue; an absent collection is one item.

    What a side file points at in vain follows, where it is not owed.
    """
    held: dict[str, list[str]] = defaultdict(list)
    for clause in waiting:
        for need in clause.needs:
            if clause.code not in held[need]:
                held[need].append(clause.code)
    items: dict[Path, OpenItem] = {}
    for field in project.schema.fields.values():
        if field.ring == "optional" or field.home == "record":
            continue
        for path in find_absent(project, field):
            if path not in items and applicable(project, path, look):
                items[path] = _item(project, field, path, tuple(held[dotted_path(path)]))
    for path in project.unmet:
        unmet = project.schema.field_at(path)
        if path not in items and unmet is not None:
            items[path] = _item(project, unmet, path, tuple(held[dotted_path(path)]))
    return list(items.values())


def find_absent(project: Project, field: Field) -> Iterator[Path]:
    """The paths of a field without a value, or the absent collection it belongs to."""
    paths: list[Path] = [()]
    for name in field.path:
        if name != "*":
            paths = [path + (name,) for path in paths]
            continue
        yield from (path for path in paths if path not in project.members and not _is_optional(project, path))
        paths = [path + (mark,) for path in paths for mark in project.members.get(path, ())]
    yield from (path for path in paths if path not in project.values and project.get(path) is None)


def _is_optional(project: Project, path: Path) -> bool:
    collection = project.schema.node(path).collection
    return collection is not None and collection.optional


def _item(project: Project, field: Field, path: Path, held: tuple[str, ...]) -> OpenItem:
    collection = project.schema.node(path).collection
    label = collection.label if collection is not None else field.label
    if path in project.unmet:
        label += f": {project.unmet[path]}"
    ring = _RING_OF_MARKS if field.ring == "optional" else field.ring
    return OpenItem(path=dotted_path(path), label=label, ring=ring, owed_by=field.owed_by, holds_up=held)
