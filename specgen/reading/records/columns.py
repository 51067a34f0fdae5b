"""The columns of a table of a record: which collection it holds, and the field and unit of each column."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from specgen.model.field import Field, Schema
from specgen.model.record import COLLECTIONS
from specgen.model.suggest import find_slip, suggest
from specgen.quantities.quantity import find_dimension
from specgen.quantities.units import UNITS, find_unit
from specgen.reading.column_titles import fold_title, split_unit

ACCEPTED = "accepted"
TABLES = (*COLLECTIONS, ACCEPTED)
# What columns are called besides the name and the label of a field.
_ALSO = {
    "log": {
        "time": "started_at",
        "start": "started_at",
        "started": "started_at",
        "end": "ended_at",
        "ended": "ended_at",
        "rh": "humidity",
        "air temp": "air",
        "wall": "surface",
        "surface temp": "surface",
        "low": "forecast_low",
    },
    "inspection": {"date": "done_on"},
}
_PERCENT = {"%", "percent", "pct"}


class Column(NamedTuple):
    """A column of a table, counted from 0, its field, and the unit that its title tells."""

    at: int
    field: Field
    unit: str

    @property
    def name(self) -> str:
        """The last name of its field."""
        return self.field.path[-1]


class TableHead(NamedTuple):
    """The collection of a table, its columns, and what is wrong with others, or to be told of them, by column."""

    collection: str
    columns: tuple[Column, ...]
    width: int  # of the row of titles, in cells
    faults: tuple[tuple[int, str, str], ...]
    remarks: tuple[tuple[int, str, str], ...]


def list_titles(schema: Schema) -> dict[str, dict[str, str]]:
    """For each table the last name of a field by each title that its column may have."""
    titles: dict[str, dict[str, str]] = {name: dict(_ALSO.get(name, {})) for name in TABLES}
    for path, one in schema.fields.items():
        if path[0] in titles:
            for title in (path[-1], one.label, f"{path[0]}.{path[-1]}"):
                titles[path[0]][fold_title(title)] = path[-1]
    return titles


def find_head(cells: Mapping[int, str], schema: Schema, titles: dict[str, dict[str, str]], named: str) -> TableHead:
    """The columns of a row of titles, by column from 0; `named` is what the sheet is called."""
    bare = {at: split_unit(title) for at, title in cells.items()}
    known = {at: {fold_title(cells[at]), fold_title(bare[at][0])} for at in cells}
    collection = _choose(known.values(), titles, named)
    columns: dict[str, Column] = {}
    faults: list[tuple[int, str, str]] = []
    remarks: list[tuple[int, str, str]] = []
    for at, title in cells.items():
        name = next((titles[collection][one] for one in known[at] if one in titles[collection]), "")
        if not name:
            fault, told = _tell_unknown(bare[at][0], known[at], collection, titles, schema)
            (faults if fault else remarks).append((at, *told))
        elif name in columns:
            faults.append((at, _tell_twice(cells[columns[name].at], title, name), "keep one of them"))
        else:
            one = schema.fields[collection, name]
            unit = "" if fold_title(title) in titles[collection] else bare[at][1]
            wrong = _find_unit_fault(one, unit)
            faults += [(at, *wrong)] if wrong else []
            columns[name] = Column(at, one, "" if wrong else _spell(unit))
    return TableHead(collection, tuple(columns.values()), max(cells, default=-1) + 1, tuple(faults), tuple(remarks))


def _tell_twice(first: str, second: str, name: str) -> str:
    """What is said of two columns of one field."""
    if first == second:
        return f"the column {second!r} stands twice"
    return f"the columns {first!r} and {second!r} are both {name}"


def count_known(cells: Iterable[str], titles: dict[str, dict[str, str]]) -> int:
    """How many cells of a row are titles of the table that knows the most of them."""
    folded = [{fold_title(cell), fold_title(split_unit(cell)[0])} for cell in cells]
    return max(sum(bool(one & titles[name].keys()) for one in folded) for name in TABLES)


def _choose(known: Iterable[set[str]], titles: dict[str, dict[str, str]], named: str) -> str:
    """The table that knows the most columns; of those alike the one that the sheet is called by, else the first."""
    every = list(known)
    counts = {name: sum(bool(one & titles[name].keys()) for one in every) for name in TABLES}
    most = [name for name in TABLES if counts[name] == max(counts.values())]
    asked = fold_title(named)
    return next((name for name in most if name == asked or asked.startswith(name)), most[0])


def _tell_unknown(
    title: str, known: set[str], collection: str, titles: dict[str, dict[str, str]], schema: Schema
) -> tuple[bool, tuple[str, str]]:
    """Whether a column that is no field is a fault, and what is told of it with its remedy."""
    of = _name_table(collection, schema)
    other = next((name for name in TABLES if known & titles[name].keys()), "")
    if other:
        hint = "write the two in tables of their own"
        return True, (f"{title!r} is a column of the {_name_table(other, schema)}, not of the {of}", hint)
    slip = find_slip(fold_title(title), titles[collection])
    if slip:
        return True, (f"{title!r} is not a column of the {of}", suggest(slip, titles[collection]))
    return False, (f"the column {title!r} is no field of the {of}", "it is not read")


def _name_table(name: str, schema: Schema) -> str:
    """`entries of the site record`; the settings of the mockup have no name of a collection."""
    if name == ACCEPTED:
        return "accepted settings"
    label = schema.collections[(name, "*")].label
    return label[0].lower() + label[1:]


def _find_unit_fault(field: Field, unit: str) -> tuple[str, str] | None:
    """What is wrong with the unit in a title, and what would be right; None where it fits its field."""
    if not unit or field.kind not in ("quantity", "percent"):
        return None
    if field.kind == "percent":
        return None if unit in _PERCENT else (f"{unit!r} is not a percentage", "write it in percent, as (%)")
    name, dimension = find_unit(_spell(unit)), find_dimension(field.dimension, field.unit_ip)
    if name is not None and UNITS[name].dimension == dimension:
        return None
    known = [one for one, row in UNITS.items() if row.dimension == dimension]
    return f"{unit!r} is not a unit of {dimension.replace('_', ' ')}", suggest(unit, known)


def _spell(unit: str) -> str:
    """A unit as a value has it behind its number."""
    return unit.strip().rstrip(".")
