"""The tables of members: one for each collection that a project file, or a file beside it, may hold."""

from functools import lru_cache
from typing import NamedTuple

from specgen.model.field import Field, Path, Schema, dotted_path
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.reading.schema import project_schema
from specgen.reading.side_files import RECORD, home_of


class Table(NamedTuple):
    """A table: its name on the command line and on its sheet, and the collection that it lists."""

    name: str
    collection: Path  # ends in a star
    listed: bool  # whether its rows are items of a list, which have a number and no mark
    owner: str  # the noun of the member that each row belongs to; empty where it belongs to none

    @property
    def whole_name(self) -> str:
        """The path of the collection without stars: `elevations.openings`."""
        return dotted_path(_list_words(self.collection))

    def find_member(self, owner: str, mark: str) -> Path:
        """The path of a member by the marks of its owner and its own; without its own that of the collection."""
        marks = iter((owner, mark) if self.owner else (mark,))
        return tuple(filter(None, (next(marks) if name == "*" else name for name in self.collection)))


@lru_cache(maxsize=1)
def list_tables() -> tuple[Table, ...]:
    """Every table in the order of the schema, each by the shortest end of its path that no other has."""
    schema = project_schema()
    held = [path for path in schema.collections if home_of(path, schema) != RECORD]
    every = [_list_words(path) for path in held]
    return tuple(_make(schema, path, _shorten(_list_words(path), every)) for path in held)


def _make(schema: Schema, path: Path, name: str) -> Table:
    owner = schema.collections[path[: path.index("*") + 1]].one if path.count("*") > 1 else ""
    return Table(name, path, schema.collections[path].kind == "items", owner)


def _list_words(path: Path) -> Path:
    return tuple(name for name in path if name != "*")


def _shorten(words: Path, every: list[Path]) -> str:
    lengths = range(1, len(words) + 1)
    ends = (words[-length:] for length in lengths)
    return dotted_path(next(end for end in ends if sum(other[-len(end) :] == end for other in every) == 1))


def find_table_named(name: str) -> Table:
    """The table of a name, or of the whole path of its collection, as typed; raises Refused where there is none."""
    asked = name.strip().replace("*.", "").removesuffix(".*")
    for table in list_tables():
        if asked in (table.name, table.whole_name):
            return table
    raise refuse(f"there is no table {name!r}", suggest(name, [table.name for table in list_tables()]))


def find_table(pattern: Path) -> Table:
    """The table that lists the collection at this path of the schema, without its last star."""
    return next(table for table in list_tables() if table.collection[:-1] == pattern)


def find_table_of(pattern: Path) -> Table | None:
    """The table that has a column for the field at this path of the schema."""
    for table in list_tables():
        depth = len(table.collection)
        if pattern[:depth] == table.collection and "*" not in pattern[depth:]:
            return table
    return None


def list_fields(schema: Schema, table: Table) -> list[Field]:
    """The fields of a member, without those of members of its own and of records; of a value by itself that one."""
    depth = len(table.collection)
    return [
        field
        for path, field in schema.fields.items()
        if path[:depth] == table.collection and "*" not in path[depth:] and not _stands_beside(path, schema)
    ]


def _stands_beside(path: Path, schema: Schema) -> bool:
    """Whether a field is the value of one mark of a collection of values, which is a row there."""
    return path[-1] != "*" and (*path[:-1], "*") in schema.collections
