"""The story of one sum: keys or a project in, a working as text and as data out.

Rules and schema stay unloaded where keys are given, so that a sum on the site answers at once.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from specgen import computing
from specgen.computing.arguments import direct
from specgen.model.absence import Absent
from specgen.model.problem import Refused, refuse
from specgen.model.suggest import near_hint
from specgen.resolving.provider import Provider, Resolver
from specgen.terminal.manual import columns, instance_text, instances_data, working_data, working_text


def calculations_text() -> str:
    """The calculations there are, with their keys."""
    return columns([name, _keys(computing.find(name))] for name in computing.names())


def _keys(provider: Provider) -> str:
    keys = [key.name if key.default is None else f"[{key.name}]" for key in provider.keys]
    return f"{provider.title}{': ' if keys else ''}{' '.join(keys)}"


def provider(name: str) -> Provider:
    """A calculation by name; raises Refused with the nearest one."""
    try:
        return computing.find(name)
    except computing.UnknownCalculation as unknown:
        raise refuse(f"there is no calculation {name!r}", near_hint(name, unknown.known)) from None


def calculate(name: str, pairs: Mapping[str, str]) -> tuple[str, Any]:
    """One sum as text and as data; raises Refused for unknown, missing and unfit keys."""
    working = direct(provider(name), pairs)
    return working_text(working), working_data(working)


def calculate_all(name: str, file: Path) -> tuple[str, Any]:
    """All of one name in a project, as text and as data; a member that lacks a field, or has an unfit one, says so."""
    from specgen import pipeline

    found = provider(name)
    found.of_project()  # a sum that takes keys alone is refused before the file is read
    project = pipeline.read(file)
    resolver = Resolver(project, computing.find)
    made: dict[str, Any] = {}
    for path in found.members(project):
        mark = path[-1] if path else "project"
        try:
            made[mark] = resolver(path, name)
        except Refused as refused:
            made[mark] = refused
        except Absent as absent:
            # A sum may wait for a value that it reads only where another way is barred.
            made[mark] = list(dict.fromkeys([*resolver.missing(path, name), absent.path]))
    return "\n".join(instance_text(mark, value) for mark, value in made.items()), instances_data(name, made)
