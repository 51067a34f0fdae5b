"""The shape of a schema entry by its kind, and the field or collection it becomes."""

from typing import Any

from specgen.model.field import Collection, Field, Path, Schema, TradeWord
from specgen.model.stage import STAGES
from specgen.model.suggest import suggest
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.quantities.quantity import find_dimension
from specgen.quantities.units import SAME_UNITS, UNITS
from specgen.standards.rows import Wrong
from specgen.standards.shapes import CONDITION, TEXT, YES_NO, Kind, Known, Shape, list_of, one_of
from specgen.standards.tables import COUNTED

_ORDERED = ("integer", "number", "percent", "date", "time", "quantity")
_HOMES = ("project", "firm", "coating_system", "record")
_OWNERS = (
    "applicator",
    "architect",
    "eifs_source",
    "wrb_source",
    "engineer",
    "finish_source",
    "general_contractor",
    "inspector",
    "owner",
    "sealant_source",
)
_COLLECTIONS = ("mapping", "items")


def _choices(value: Any, known: Known) -> tuple[str, ...]:
    """The words of a list, or the row names behind `@steps`; in a list it stands among words of its own."""
    if value.__class__ is str and value.startswith("@"):
        if value[1:] not in known.rows:
            raise Wrong(f"{value} stands for no list", suggest(value[1:], known.rows))
        return tuple(known.rows[value[1:]])
    typed: tuple[str, ...] = _WORDS.convert(value, known)
    if not any(word.startswith("@") for word in typed):
        return typed
    return tuple(
        dict.fromkeys(name for word in typed for name in (_choices(word, known) if word[0] == "@" else (word,)))
    )


def _trade_words(value: Any, known: Known) -> tuple[TradeWord, ...]:
    """Words of the trade, each with the choice it is taken for, or a list of those it may mean."""
    if value.__class__ is not dict:
        raise Wrong("words of the trade are missing here", "write {word: choice} or {word: [choice, choice]}")
    return tuple(
        TradeWord(word, (meant,), True)
        if meant.__class__ is str
        else TradeWord(word, _WORDS.convert(meant, known), False)
        for word, meant in value.items()
    )


def _check_target(value: str, schema: Schema) -> None:
    marked = [
        path[0] for path, collection in schema.collections.items() if collection.kind == "mapping" and len(path) == 2
    ]
    if value not in marked:
        raise Wrong(f"{value!r} is no collection whose members have marks", suggest(value, marked))


_WORDS = list_of(TEXT)
_CHOICES = Kind("a list of words, or `@steps`", _choices)
_MEANS = Kind("words of the trade, each with its choice or choices", _trade_words)
_UNIT, _COUNT = one_of(list(UNITS), "a unit of quantities/units.py"), one_of((*UNITS, *COUNTED))
_UNITS, _COUNTS = {"unit_ip": _UNIT, "unit_si": _UNIT}, {"unit_ip": _COUNT, "unit_si": _COUNT}
_SPAN = {"least": TEXT, "most": TEXT}
_DIMENSION = {"dimension": one_of(sorted({*SAME_UNITS, *(unit.dimension for unit in UNITS.values())}))}
# What has an order has a range, wider than any rule needs and narrower than nonsense; common practice, no source. A
# day has this one where its entry tells no other, and the clock and the circle bound a time and a bearing.
_DAYS = {"least": "1950-01-01", "most": "2100-12-31"}
_TARGET = Kind("the name of a collection", TEXT.convert, _check_target)

# For each kind of value the keys it must have besides those of every field, and the keys it may have.
_VALUES: dict[str, tuple[dict[str, Kind], dict[str, Kind]]] = {
    "integer": (_SPAN, {**_COUNTS, "values": _WORDS}),
    "number": (_SPAN, _COUNTS),
    "percent": (_SPAN, {}),
    "text": ({}, {"lines": YES_NO}),
    "choice": ({"values": _CHOICES}, {"also": _WORDS, "means": _MEANS}),
    "yes_no": ({}, {}),
    "date": ({}, _SPAN),
    "time": ({}, {}),
    "quantity": (_UNITS | _SPAN, _DIMENSION),
    "reference": ({"to": _TARGET}, {}),
    "file": ({}, {}),
    "bearing": (_UNITS | _SPAN, _DIMENSION),
}
_NEEDED = {
    "label": TEXT,
    "kind": one_of((*_VALUES, "list", *_COLLECTIONS)),
    "ring": one_of((*STAGES, "optional")),
    "owed_by": one_of(_OWNERS),
    "why": TEXT,
    "example": TEXT,
}
_OPTIONAL = {
    "asks": TEXT,
    "if": CONDITION,
    "home": one_of(_HOMES),
    "default": TEXT,
    "default_if": CONDITION,
    "derived": TEXT,
    "optional": YES_NO,
}
_ORDER = {"not_below": _WORDS}
_LIST, _EMPTY = {"of": one_of(list(_VALUES))}, {"if_none": TEXT}
_SHAPES = {
    **{
        (kind, ""): Shape(_NEEDED | must, _OPTIONAL | may | (_ORDER if kind in _ORDERED else {}))
        for kind, (must, may) in _VALUES.items()
    },
    **{
        ("list", kind): Shape(_NEEDED | _LIST | must, _OPTIONAL | may | _EMPTY) for kind, (must, may) in _VALUES.items()
    },
    **dict.fromkeys(
        [(kind, "") for kind in _COLLECTIONS],
        Shape(
            {"label": TEXT, "kind": one_of(_COLLECTIONS), "one": TEXT},
            {"optional": YES_NO, "keys": _CHOICES} | _EMPTY,
        ),
    ),
}
# The keys that decide the shape: the kind, and for a list the kind of its entries.
_HEAD, _LIST_HEAD = Shape({"kind": _NEEDED["kind"]}), Shape({"kind": _NEEDED["kind"]} | _LIST)


def shape_of(entry: Any, known: Known) -> Shape:
    """The keys that an entry may have, by the kind it names; raises Wrong if it names none."""
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
        return Collection(path=path if path[-1] == "*" else (*path, "*"), **typed)
    if "if" in typed:
        typed["condition"] = typed.pop("if")
    if "date" in (typed["kind"], typed.get("of")):
        typed = _DAYS | typed
    if "also" in typed:
        typed["values"] += typed.pop("also")
    field = Field(path=path, **typed)
    _check_units(field)
    _check_default(field)
    if field.means:
        _check_means(field)
    return field


def _check_units(field: Field) -> None:
    """Raise Wrong if the units of a quantity are not of its dimension, or a bound or default is not in such a unit."""
    if "quantity" not in (field.kind, field.of):
        return
    dimension = find_dimension(field.dimension, field.unit_ip)
    for key, unit in (("unit_ip", field.unit_ip), ("unit_si", field.unit_si)):
        if UNITS[unit].dimension != dimension:
            known = [name for name, row in UNITS.items() if row.dimension == dimension]
            raise Wrong(f"{unit!r} is not a unit of {dimension.replace('_', ' ')}", suggest(unit, known), (key,))
    units = (field.unit_ip,) if field.unit_ip == field.unit_si else (field.unit_ip, field.unit_si)
    for key, text in (("least", field.least), ("most", field.most), ("default", field.default)):
        try:
            # Parsed with the arguments that the reader of projects uses, so that the cache serves both.
            if text:
                parse_quantity(text, dimension, units)
        except QuantityError as error:
            raise Wrong(error.message, error.hint, (key,)) from None


def check_order(field: Field, schema: Schema) -> None:
    """Raise Wrong if a field that a value never lies below is not beside it, or cannot be compared with it."""
    for place, name in enumerate(field.not_below):
        other = schema.fields.get((*field.path[:-1], name))
        if other is None:
            beside = [path[-1] for path in schema.fields if path[:-1] == field.path[:-1]]
            raise Wrong(f"there is no field {name!r} beside this one", suggest(name, beside), ("not_below", place))
        if (other.kind, other.unit_ip) != (field.kind, field.unit_ip):
            raise Wrong(f"{name} is no {field.kind} in the same unit", "name one that is", ("not_below", place))


def _check_default(field: Field) -> None:
    """Raise Wrong if a default is not a choice for its field, or if there is a condition and no default."""
    if field.default_if and not field.default:
        raise Wrong("there is no default to hold under this condition", "write a default", ("default_if",))
    if field.kind == "choice" and field.default and field.default not in field.values:
        raise Wrong(
            f"{field.default!r} is not a choice for this field", suggest(field.default, field.values), ("default",)
        )


def _check_means(field: Field) -> None:
    """Raise Wrong if a word of the trade means no choice of its field."""
    for word in field.means:
        for choice in word.choices:
            if choice not in field.values:
                raise Wrong(
                    f"{choice!r} is not a choice for this field", suggest(choice, field.values), ("means", word.word)
                )
