"""One file for each calculation or look-up, in the folder of its group; the file name is its name."""

import importlib
import pkgutil
from dataclasses import replace
from functools import cache, lru_cache

from specgen.model.problem import Problem, Refused
from specgen.resolving.provider import GROUPS, Provider

# Other spellings that a name is also known by.
OTHER_NAMES = {"color-difference": "colour-difference"}


class UnknownCalculation(KeyError):
    """No file of this folder has the name; `known` lists those there are."""

    def __init__(self, name: str, known: tuple[str, ...]) -> None:
        super().__init__(name)
        self.name, self.known = name, known


@lru_cache(maxsize=1)
def _groups() -> dict[str, str]:
    """The group of each calculation by its name, read from the folders without importing any file."""
    found = {
        module.name.replace("_", "-"): group
        for group in GROUPS
        for module in pkgutil.iter_modules([f"{folder}/{group}" for folder in __path__])
        if not module.name.startswith("_")
    }
    return dict(sorted(found.items()))


@lru_cache(maxsize=1)
def names() -> tuple[str, ...]:
    """The names of all calculations and look-ups."""
    return tuple(_groups())


def find(name: str) -> Provider:
    """The provider of a name; only its file is imported. Raises UnknownCalculation."""
    name = name.replace("_", "-")
    return _provider(OTHER_NAMES.get(name, name))


@cache
def _provider(name: str) -> Provider:
    group = _groups().get(name)
    if group is None:
        raise UnknownCalculation(name, names())
    file = f"{group}.{name.replace('-', '_')}"
    provider = getattr(importlib.import_module(f"{__name__}.{file}"), "PROVIDER", None)
    if not isinstance(provider, Provider) or provider.name != name:
        place = f"computing/{file.replace('.', '/')}.py"
        raise Refused(Problem(f"no PROVIDER named {name}", "name its function as the file is named", file=place))
    return replace(provider, group=group)
