"""What a row says of the fields of a project, checked against the schema: paths, and conditions over them."""

import re

from specgen.model.condition import ConditionError, Term, parse_condition, terms
from specgen.model.field import Field, Path, Schema, dotted_path
from specgen.model.suggest import suggest
from specgen.quantities.number import QuantityError, parse_number
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import find_dimension
from specgen.standards.rows import Wrong

_TIMES = re.compile(r"\d+ x (?P<path>[\w.*]+)")
_YES_NO = ("yes", "no")
_NUMBERS = ("integer", "number", "percent")


def check_path(text: str, schema: Schema) -> None:
    """Raise Wrong where there is no field at a dotted path."""
    find_field(tuple(text.split(".")), schema)


def find_field(path: Path, schema: Schema) -> Field:
    """The field at a path with stars; raises Wrong with the nearest one."""
    if path not in schema.fields:
        raise Wrong(
            f"there is no field {dotted_path(path)}", suggest(dotted_path(path), map(dotted_path, schema.fields))
        )
    return schema.fields[path]


def check_collection(name: str, schema: Schema) -> None:
    """Raise Wrong where a name is no collection whose members have marks."""
    known = [path[0] for path, one in schema.collections.items() if len(path) == 2 and one.kind == "mapping"]
    if name not in known:
        raise Wrong(f"there are no members at {name}", suggest(name, known))


def check_condition(text: str, schema: Schema) -> None:
    """Raise Wrong where a condition cannot be parsed, or names an unknown field, member or choice."""
    if not text:
        return
    try:
        condition = parse_condition(text)
    except ConditionError as error:
        raise Wrong(str(error), "write it as model/condition.py says") from None
    for term in terms(condition):
        _check_term(term, schema)


def _check_term(term: Term, schema: Schema) -> None:
    if term.path[0] == "calc":  # calculations stand above: a test holds their names
        return
    if term.counted or (*term.path, "*") in schema.collections:
        _check_collection(term, schema)
        return
    field = find_field(term.path, schema)
    if not term.relation.startswith("is "):
        _check_relation(term.relation, field)
        for word in term.right:
            _check_right(word, term.relation, field, schema)


def _check_collection(term: Term, schema: Schema) -> None:
    if (*term.path, "*") not in schema.collections:
        names = [dotted_path(path[:-1]) for path in schema.collections]
        raise Wrong(
            f"there are no members at {dotted_path(term.path)} to count", suggest(dotted_path(term.path), names)
        )
    if not term.relation.startswith("is ") and not (term.counted and term.right[0].isdigit()):
        raise Wrong(
            f"{dotted_path(term.path)} has members, no value",
            f"write `count {dotted_path(term.path)} > 1` or `is given`",
        )


def _check_relation(relation: str, field: Field) -> None:
    """Raise Wrong where `has` is not used on a list, or < and > not on a number."""
    if (relation == "has") != (field.kind == "list"):
        fits = "has" if field.kind == "list" else "= or in"
        raise Wrong(f"{relation} does not go with {dotted_path(field.path)}, a {field.kind}", f"write {fits}")
    if relation[0] in "<>" and field.kind not in (*_NUMBERS, "quantity"):
        raise Wrong(f"{dotted_path(field.path)} is no figure", "write = or in")


def _check_right(word: str, relation: str, field: Field, schema: Schema) -> None:
    """Raise Wrong where a word is neither a choice of a field nor a figure in its unit."""
    times = _TIMES.fullmatch(word)
    kind = field.of or field.kind
    if times:
        find_field(tuple(times["path"].split(".")), schema)
    elif kind == "quantity":
        try:
            parse_quantity(word, find_dimension(field.dimension, field.unit_ip), (field.unit_ip,))
        except QuantityError as error:
            raise Wrong(f"{dotted_path(field.path)} {relation} {word}: {error.message}", error.hint) from None
    elif kind in _NUMBERS:
        _check_number(word, field)
    else:
        check_choice(word, field)


def check_choice(word: str, field: Field) -> None:
    """Raise Wrong where a field has choices and a word is not one of them."""
    choices = _YES_NO if field.kind == "yes_no" else field.values
    if choices and word not in choices:
        raise Wrong(f"{word!r} is not a choice for {dotted_path(field.path)}", suggest(word, choices))


def _check_number(word: str, field: Field) -> None:
    try:
        parse_number(word)
    except QuantityError:
        raise Wrong(f"{dotted_path(field.path)} is a number, {word!r} is none", "write a bare number") from None
