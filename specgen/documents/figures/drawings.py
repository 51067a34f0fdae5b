"""The drawings that a document can show by name: each module beside this one that has a `draw`."""

from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.block import Figure


@cache
def name_drawings() -> tuple[str, ...]:
    """The names of all drawings."""
    folder = import_module(__package__).__path__
    return tuple(module.name for module in iter_modules(folder) if hasattr(_load(module.name), "draw"))


def draw_named(name: str, context: DocumentContext) -> tuple[Figure, ...]:
    """The figures of a drawing for the project; none where what it shows is not known."""
    figures: tuple[Figure, ...] = _load(name).draw(context)
    return figures


def _load(name: str) -> Any:
    return import_module(f"{__package__}.{name}")
