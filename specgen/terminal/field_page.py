"""The manual of a field, from its entry in the schema."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from specgen.model.field import Collection, Field, Path, Schema, dotted_path
from specgen.model.value_text import words
from specgen.reading.marks import ALLOWED, MOST_MARK
from specgen.terminal.columns import align_columns
from specgen.terminal.field_lines import metric_default
from specgen.terminal.searching import tells_of


def format_fields(fields: Iterable[Field]) -> str:
    """Path, ring and label of fields, in columns."""
    return align_columns([dotted_path(field.path), field.ring, field.label] for field in fields)


def list_fields(schema: Schema, below: Path = ()) -> list[Field]:
    """Every field below a path."""
    return [field for path, field in schema.fields.items() if path[: len(below)] == below]


def find_fields(schema: Schema, words: Sequence[str]) -> list[Field]:
    """The fields of which path, label, question, reason, choices or words for them have all these words."""
    return [one for one in schema.fields.values() if tells_of(words, _list_told(one))]


def _list_told(field: Field) -> tuple[str, ...]:
    meant = (word.word for word in field.means)
    return (dotted_path(field.path), field.label, field.asks, field.why, *field.values, *meant)


def format_meanings(schema: Schema, text: str) -> str:
    """A line for each field that takes a text for one of its choices: what it is read as, or may be."""
    lines = []
    for field in schema.fields.values():
        for choices in dict.fromkeys(one.choices for one in field.means if one.word.casefold() == text.casefold()):
            read = "read as" if len(choices) == 1 else "may be"
            lines.append(f"{text}: {read} {_join_or(choices)}, a choice of {dotted_path(field.path)}\n")
    return "".join(lines)


def field_to_data(field: Field) -> dict[str, Any]:
    """A field as data: the keys that the help of `fields` names, null for what it has not."""
    return {
        "path": dotted_path(field.path),
        "label": field.label,
        "why": field.why,
        "kind": field.kind,
        "units": list(dict.fromkeys(unit for unit in (field.unit_ip, field.unit_si) if unit)),
        "choices": list(field.values),
        "refers_to": field.to or None,
        "least": field.least or None,
        "most": field.most or None,
        "stage": field.ring,
        "owed_by": field.owed_by or None,
        "condition": field.condition or None,
        "default": field.default or field.derived or None,
        "file": field.home,
        "example": field.example or None,
    }


def field_page(field: Field) -> str:
    """One field: label, reason, allowed values, who gives it, example."""
    return "\n".join([f"{dotted_path(field.path)}  {field.label}", "", *(f"  {line}" for line in _lines(field))]) + "\n"


def collection_line(collection: Collection) -> str:
    """What a collection is and how its members are named."""
    kind = "a list" if collection.kind == "items" else "a mapping keyed by marks"
    head = f"{dotted_path(collection.path)}  {collection.label}: {kind}, one entry for each {collection.one}\n"
    if collection.kind == "items" or collection.keys:
        return head
    return f"{head}  a mark holds {ALLOWED}; at most {MOST_MARK} characters\n"


def _lines(field: Field) -> Iterator[str]:
    yield f"why       {field.why}"
    yield f"kind      {_kind(field)}"
    if field.least or field.most:
        span = f"{field.least or 'none'} to {field.most or 'none'}"
        yield f"limits    {span}: any other value is refused"
    if field.not_below:
        yield f"order     not below {', '.join(field.not_below)}"
    if field.values:
        yield f"choices   {', '.join(field.values)}"
    owed = "optional" if field.ring == "optional" else f"for the {field.ring} stage, from the {words(field.owed_by)}"
    yield f"required  {owed}"
    if field.condition:
        yield f"only if   {field.condition}"
    if field.default or field.derived:
        metric = metric_default(field)
        yield f"default   {field.default or field.derived}{f'; {metric} in SI' if metric else ''}"
    yield f"stands    in the {words(field.home)} file"
    yield f"example   {field.path[-1]}: {field.example}"


def _kind(field: Field) -> str:
    if field.kind == "quantity":
        return f"quantity with unit, such as {field.unit_ip} or {field.unit_si}"
    if field.kind == "list":
        return f"list of {words(field.of)}s" if not field.to else f"list of marks of {field.to}"
    if field.kind == "reference":
        return f"mark of one of {field.to}"
    if field.kind == "text":
        return "text, of several lines if need be" if field.lines else "text, in one line"
    return words(field.kind) + (f", in {field.unit_ip}" if field.unit_ip else "")


def _join_or(choices: Sequence[str]) -> str:
    """`eps, xps, or polyiso`; two without a comma."""
    *first, last = choices
    return last if not first else f"{', '.join(first)}{',' if len(first) > 1 else ''} or {last}"
