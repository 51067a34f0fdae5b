"""The fields that a project file lacks up to a stage, and in which file each is at home."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from specgen.judging.open_items import find_absent
from specgen.model.evaluation import Look
from specgen.model.field import Field, Node, Path, dotted_path
from specgen.model.project import Project
from specgen.model.stage import STAGES
from specgen.reading.side_files import SIDE_FILES


@dataclass(frozen=True, slots=True)
class Missing:
    """The fields to be added to the project file in the order of the schema, and those at home in a side file by it."""

    paths: tuple[Path, ...]
    elsewhere: dict[str, int]


def find_missing(project: Project, stage: str, look: Look, marks: Mapping[str, str]) -> Missing:
    """What is missing up to a stage, as far as it applies.

    A collection that is missing gets the fields of one member, named as `marks` says for that collection. What is at
    home in a side file is missing there, where one is named; where none is and nothing of it is given, the field that
    would name it is missing.
    """
    finder = _Finder(project, stage, look, marks)
    found: dict[Path, None] = {}
    elsewhere: dict[str, int] = {}
    for path in (path for entry in project.schema.fields.values() for path in finder.find(entry)):
        side = finder.find_side(path)
        if not side:
            found[path] = None
        elif (side,) in project.values:
            elsewhere[side] = elsewhere.get(side, 0) + 1
        elif (side,) not in project.places:
            found[(side,)] = None
    ranks = {path: rank for rank, path in enumerate(project.schema.fields)}
    return Missing(tuple(sorted(found, key=lambda path: ranks[project.schema.node(path).path])), elsewhere)


class _Finder:
    def __init__(self, project: Project, stage: str, look: Look, marks: Mapping[str, str]) -> None:
        self.project, self.look, self.marks = project, look, marks
        self.rings = STAGES[: STAGES.index(stage) + 1]
        homes = [field.home for path in project.values if (field := project.schema.field_at(path))]
        self.written: dict[Path, str] = {}
        for place in project.places:
            self.written.setdefault(place[:-1], "".join(place[-1:]))
        self.shared = [side for side in SIDE_FILES if (side,) not in project.values and side in homes]

    def find(self, entry: Field) -> Iterator[Path]:
        """The paths of a field where it is owed and absent; of a collection that is missing, of one member."""
        if entry.home == "record" or entry.ring not in self.rings:
            return
        for path in find_absent(self.project, entry):
            if self.project.schema.node(path).field is not None:
                if self.project.applies(path, self.look):
                    yield path
            elif self.is_wanted(path, entry):
                yield self.in_new_member(path, entry)

    def is_wanted(self, path: Path, entry: Field) -> bool:
        """Whether a field is to be among those of a new member: what hangs on others of the member is not yet known."""
        schema = self.project.schema
        inner = self.in_new_member(path, entry)
        if entry.default or any(
            node.collection is not None and node.collection.optional for node in _way(schema.root, inner)
        ):
            return False
        own = dotted_path((*schema.node(path).path, "*"))
        return own in entry.condition or self.project.applies(inner, self.look)

    def in_new_member(self, path: Path, entry: Field) -> Path:
        """The path of a field in the first member of each collection that is missing from `path` on."""
        for name in entry.path[len(path) :]:
            path = (*path, self.name_member(path) if name == "*" else name)
        return path

    def name_member(self, path: Path) -> str:
        """The mark of the first member of a collection, of one that stands empty its own; of a list the index."""
        if path in self.written:
            return self.written[path]
        collection = self.project.schema.node(path).collection
        assert collection is not None
        if collection.kind == "items":
            return "0"
        return collection.keys[0] if collection.keys else self.marks[path[-1]]

    def find_side(self, path: Path) -> str:
        """The side file that a field is missing in; empty for the project file."""
        entry = self.project.schema.field_at(path)
        main = self.project.inputs[0].name
        for end in range(len(path), 0, -1):
            place = self.project.places.get(path[:end])
            if place is not None and place.file != main and self.project.schema.node(path[: end - 1]).star is not None:
                return next((use for use, name, _ in self.project.inputs if name == place.file), "")
        return entry.home if entry is not None and entry.home in SIDE_FILES and entry.home not in self.shared else ""


def _way(node: Node, path: Path) -> Iterator[Node]:
    """The nodes of the schema on the way to a path."""
    for name in path:
        below = node.below(name)
        assert below is not None
        node = below
        yield node
