"""One file for each calculation or look-up; the file name is its name, presence is registration."""

import importlib
import pkgutil
from functools import cache, lru_cache

from ..vocabulary.provider import Provider

# Other spellings that a name is also known by.
OTHER_NAMES = {"color-difference": "colour-difference"}


class UnknownCalculation(KeyError):
    """No file of this folder has the name; `known` lists those there are."""

    def __init__(self, name: str, known: tuple[str, ...]) -> None:
        super().__init__(name)
        self.name, self.known = name, known


@lru_cache(maxsize=1)
def names() -> tuple[str, ...]:
    """The names of all calculations and look-ups, without importing any."""
    found = (m.name for m in pkgutil.iter_modules(__path__) if not m.name.startswith("_"))
    return tuple(sorted(name.replace("_", "-") for name in found))


@cache
def find(name: str) -> Provider:
    """The provider of a name; only its file is imported. Raises UnknownCalculation."""
    name = name.replace("_", "-")
    name = OTHER_NAMES.get(name, name)
    if name not in names():
        raise UnknownCalculation(name, names())
    provider = importlib.import_module(f"{__name__}.{name.replace('-', '_')}").PROVIDER
    assert isinstance(provider, Provider) and provider.name == name, name
    return provider
