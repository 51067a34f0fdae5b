"""What a template may do with a value: read its parts, go through it, compare it, print it, and nothing else."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from jinja2 import Undefined
from jinja2.runtime import LoopContext, Macro
from jinja2.utils import Namespace

from specgen.documents.context import TableView
from specgen.documents.display_values import DisplayValue, Record
from specgen.documents.template_functions import Function
from specgen.documents.template_mistakes import Mistake
from specgen.documents.template_views import Page, Pages, Views
from specgen.model.block import Block, Inline
from specgen.model.finding import Finding, OpenItem
from specgen.model.working import Lookup

NOTHING = object()  # what `read_part` answers where there is no such part
_LOOP = ("index", "index0", "revindex", "revindex0", "first", "last", "length", "previtem", "nextitem")
_RECORDS = (Record, Finding, OpenItem, Lookup)
_LISTS = (list, tuple, range)
_NUMBERS = (int, float, Fraction)
_PRINTED: Any = (*Block.__args__, *Inline.__args__)
_USE_FOR = "go through it: {% for entry in ... %}"


def names_of(value: Any) -> list[str]:
    """The names of the parts of a value, in the order in which they are told."""
    if isinstance(value, (Page, Pages, Views)):
        return value.names_within()
    if isinstance(value, _RECORDS):
        own: Any = getattr(value, "_fields", None) or getattr(value, "__dataclass_fields__", ())
        return [*own, *(name for name, part in vars(type(value)).items() if isinstance(part, property))]
    if isinstance(value, dict):
        return [*map(str, value), "items"]
    if isinstance(value, LoopContext):
        return [*_LOOP, "cycle"]
    if isinstance(value, DisplayValue):
        return ["text", "about"]
    return []


def read_part(value: Any, name: Any) -> Any:
    """The part of a value by name, mark or place; NOTHING where there is none."""
    key = name.mark if isinstance(name, Page) else _name_part(name)
    if isinstance(value, Page):
        return getattr(value, key) if value.has(key) else NOTHING
    if isinstance(value, (Pages, Views)):
        part = value.get(str(key))
        return NOTHING if part is None else part
    if isinstance(value, _LISTS) and not isinstance(value, _RECORDS):
        return value[key] if type(key) is int and -len(value) <= key < len(value) else NOTHING
    if isinstance(value, Namespace):
        return getattr(value, key, NOTHING) if isinstance(key, str) and not key.startswith("_") else NOTHING
    if not isinstance(key, (str, int)) or str(key) not in names_of(value):
        return NOTHING
    if isinstance(value, dict):
        return value[key] if key in value else Function("items", run=lambda: tuple(value.items()))
    if isinstance(value, LoopContext) and key == "cycle":
        return Function("cycle", ("entry",), run=value.cycle, many=True)
    return getattr(value, str(key))


def _name_part(name: Any) -> Any:
    """A part is named as the file has it, whatever it is called where it prints."""
    if isinstance(name, DisplayValue):
        return name.raw if isinstance(name.raw, str) else name.text
    return name


def entries_of(value: Any) -> Iterator[Any]:
    """The entries of a list, of a collection, or the marks of a table of words; raises Mistake for anything else."""
    check_defined(value)
    if isinstance(value, DisplayValue) and (value.open or isinstance(value.raw, tuple)):
        return iter(value)
    if isinstance(value, (*_LISTS, dict, Pages)) and not isinstance(value, _RECORDS):
        return iter(value)
    raise Mistake(f"{describe(value)} has no entries to go through", "name a list, such as walls")


def count_entries(value: Any) -> int:
    """The number of entries of a list or rows of a table, or of letters of a text."""
    if isinstance(value, (str, TableView)):
        return len(value)
    return len(value) if hasattr(value, "__len__") else sum(1 for _ in entries_of(value))


def size_of(value: Any) -> int:
    """How much there is to look through in a value: its entries, or a hundredth of its letters."""
    inner = value.raw if isinstance(value, DisplayValue) else value
    if isinstance(inner, str):
        return 1 + len(inner) // 100
    return 1 + len(inner) if isinstance(inner, (*_LISTS, dict, Pages)) else 1


def words_of_value(value: Any) -> str:
    """A single value as words; raises Mistake for a list, a section or anything else that is not one value."""
    check_defined(value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, (str, *_NUMBERS, DisplayValue)) or (isinstance(value, Page) and value.is_member()):
        return str(value)
    raise Mistake(f"{describe(value)} cannot be printed", _remedy(value))


def check_printed(value: Any) -> None:
    """Raise Mistake for what no document can print."""
    if not isinstance(value, _PRINTED):
        words_of_value(value)


def _remedy(value: Any) -> str:
    if isinstance(value, TableView):
        return "write {{ table(view.NAME) }}"
    if isinstance(value, (Function, Macro)):
        return f"write {value.name}(...) with what belongs between its brackets"
    if isinstance(value, (*_RECORDS, Page, Views)) and (names := names_of(value)):
        return f"name one of: {', '.join(names[:12])}{', ...' if len(names) > 12 else ''}"
    return _USE_FOR if isinstance(value, (*_LISTS, dict, Pages)) else "name a single value"


def describe(value: Any) -> str:
    """What a value is, in words."""
    if isinstance(value, (Function, Macro)):
        return f"{value.name} without brackets"
    if isinstance(value, Page):
        return f"the section {value.dotted()}"
    if isinstance(value, (str, DisplayValue, *_NUMBERS)):
        return f"{str(value)[:30]!r}"
    if isinstance(value, _RECORDS):
        return "a record"
    if isinstance(value, (*_LISTS, dict, Pages)):
        return "a list"
    return "a table" if isinstance(value, TableView) else "what has no value" if value is None else "this"


def where(value: Any) -> str:
    """Where a part was looked for: `here`, or in the list or words that have no such part."""
    if isinstance(value, (str, DisplayValue, *_NUMBERS)):
        return f"in {describe(value)}"
    if isinstance(value, _LISTS) and not isinstance(value, _RECORDS):
        return f"in a list of {len(value)}"
    return "here"


def single(value: Any) -> Any:
    """A value as it is compared; NOTHING for an open one; raises Mistake for a list, a section or the like."""
    check_defined(value)
    if isinstance(value, Page) and value.is_member():
        return value.mark
    if isinstance(value, DisplayValue):
        value = NOTHING if value.open else value.raw
    if isinstance(value, (*_LISTS, dict, *_RECORDS, Page, Pages, Views, TableView, Function, Macro, Namespace)):
        raise Mistake(f"{describe(value)} cannot be compared", "compare single values, or ask whether one is `in` it")
    return value


def check_defined(value: Any) -> None:
    """Raise Mistake for a name that is not there."""
    if isinstance(value, Undefined):
        str(value)
