"""The shape of an entry of the schema by its kind, told once, and the field or collection it becomes."""

from typing import Any

from specgen.model.field import Collection, Field, Path, Schema
from specgen.model.suggest import near_hint
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.quantities.quantity import find_dimension
from specgen.quantities.units import SAME_UNITS, UNITS
from specgen.standards.rows import Wrong
from specgen.standards.shapes import CONDITION, TEXT, YES_NO, Kind, Known, Shape, list_of, one_of
from specgen.standards.tables import COUNTED

_RINGS = ("verdict", "mockup", "work", "closeout", "optional")
_HOMES = ("project", "firm", "coating_system", "record")
_OWNERS = (
    "applicator",
    "architect",
    "eifs_source",
    "engineer",
    "finish_source",
    "general_contractor",
    "inspector",
    "owner",
    "sealant_source",
)
_COLLECTIONS = ("mapping", "items")


def _choices(value: Any, known: Known) -> tuple[str, ...]:
    """The words of a list, or the names of the rows that `@steps` stands for."""
    if value.__class__ is str and value.startswith("@"):
        if value[1:] not in known.rows:
            raise Wrong(f"{value} stands for no list", near_hint(value[1:], known.rows))
        return tuple(known.rows[value[1:]])
    typed: tuple[str, ...] = _WORDS.convert(value, known)
    return typed


def _check_target(value: str, schema: Schema) -> None:
    marked = [path[0] for path, made in schema.collections.items() if made.kind == "mapping" and len(path) == 2]
    if value not in marked:
        raise Wrong(f"{value!r} is no collection whose members have marks", near_hint(value, marked))


_WORDS = list_of(TEXT)
_CHOICES = Kind("a list of words, or `@steps`", _choices)
_UNIT, _COUNT = one_of(list(UNITS), "a unit of quantities/units.py"), one_of((*UNITS, *COUNTED))
_UNITS, _COUNTS = {"unit_ip": _UNIT, "unit_si": _UNIT}, {"unit_ip": _COUNT, "unit_si": _COUNT}
_SPAN = {"least": TEXT, "most": TEXT}
_MEASURED = {**_SPAN, "dimension": one_of(sorted({*SAME_UNITS, *(unit.dimension for unit in UNITS.values())}))}
_TARGET = Kind("the name of a collection", TEXT.convert, _check_target)

# What each kind of value must say besides what every field says, and what it may say.
_VALUES: dict[str, tuple[dict[str, Kind], dict[str, Kind]]] = {
    "integer": ({}, {**_SPAN, **_COUNTS, "values": _WORDS}),
    "number": ({}, {**_SPAN, **_COUNTS}),
    "percent": ({}, _SPAN),
    "text": ({}, {}),
    "choice": ({"values": _CHOICES}, {"also": _WORDS}),
    "yes_no": ({}, {}),
    "date": ({}, {}),
    "time": ({}, {}),
    "quantity": (_UNITS, _MEASURED),
    "reference": ({"to": _TARGET}, {}),
    "file": ({}, {}),
    "bearing": (_UNITS, _MEASURED),
}
_NEEDED = {
    "label": TEXT,
    "kind": one_of((*_VALUES, "list", *_COLLECTIONS)),
    "ring": one_of(_RINGS),
    "owed_by": one_of(_OWNERS),
    "why": TEXT,
    "example": TEXT,
}
_OPTIONAL = {
    "if": CONDITION,
    "home": one_of(_HOMES),
    "default": TEXT,
    "default_if": CONDITION,
    "derived": TEXT,
    "optional": YES_NO,
}
_LIST = {"of": one_of(list(_VALUES))}
_SHAPES = {
    **{(kind, ""): Shape(_NEEDED | must, _OPTIONAL | may) for kind, (must, may) in _VALUES.items()},
    **{("list", kind): Shape(_NEEDED | _LIST | must, _OPTIONAL | may) for kind, (must, may) in _VALUES.items()},
    **dict.fromkeys(
        [(kind, "") for kind in _COLLECTIONS],
        Shape(
            {"label": TEXT, "kind": one_of(_COLLECTIONS), "one": TEXT},
            {"optional": YES_NO, "keys": _CHOICES},
        ),
    ),
}
# What tells the shape: the kind, and for a list the kind of its entries.
_HEAD, _LIST_HEAD = Shape({"kind": _NEEDED["kind"]}), Shape({"kind": _NEEDED["kind"]} | _LIST)


def shape_of(entry: Any, known: Known) -> Shape:
    """The keys that an entry may have, by the kind it names; raises Wrong where it names none."""
    if entry.__class__ is not dict:
        _SHAPES["text", ""].convert(entry, known)
    kind, of = str(entry.get("kind")), str(entry.get("of", ""))
    if (kind, of) not in _SHAPES:
        head = {key: entry[key] for key in ("kind", "of") if key in entry}
        (_LIST_HEAD if kind == "list" else _HEAD).convert(head, known)
    return _SHAPES[kind, of]


def make_entry(path: Path, typed: dict[str, Any]) -> Field | Collection:
    """The field or collection that the typed values of an entry describe; raises Wrong."""
    if typed["kind"] in _COLLECTIONS:
        return Collection(path if path[-1] == "*" else (*path, "*"), **typed)
    if "if" in typed:
        typed["condition"] = typed.pop("if")
    if "also" in typed:
        typed["values"] += typed.pop("also")
    made = Field(path, **typed)
    _check_units(made)
    _check_default(made)
    return made


def _check_units(made: Field) -> None:
    """Raise Wrong where the units of a quantity are not of its dimension, or a figure of it is not in such a unit."""
    if "quantity" not in (made.kind, made.of):
        return
    dimension = find_dimension(made.dimension, made.unit_ip)
    for key, unit in (("unit_ip", made.unit_ip), ("unit_si", made.unit_si)):
        if UNITS[unit].dimension != dimension:
            known = [name for name, row in UNITS.items() if row.dimension == dimension]
            raise Wrong(f"{unit!r} is no unit of {dimension.replace('_', ' ')}", near_hint(unit, known), (key,))
    units = (made.unit_ip,) if made.unit_ip == made.unit_si else (made.unit_ip, made.unit_si)
    for key, text in (("least", made.least), ("most", made.most), ("default", made.default)):
        try:
            # Asked as the reader of projects asks, so that each figure is parsed once for both.
            if text:
                parse_quantity(text, dimension, units)
        except QuantityError as error:
            raise Wrong(error.message, error.hint, (key,)) from None


def _check_default(made: Field) -> None:
    """Raise Wrong where a default is no choice of its field, or there is none that its condition could be about."""
    if made.default_if and not made.default:
        raise Wrong("there is no default to hold under this condition", "write a default", ("default_if",))
    if made.kind == "choice" and made.default and made.default not in made.values:
        raise Wrong(f"{made.default!r} is no choice of this field", near_hint(made.default, made.values), ("default",))
