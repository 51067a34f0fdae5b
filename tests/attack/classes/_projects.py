"""Projects that attempts begin from."""

import copy
import random
from typing import Any

import yaml

from specgen.model.field import Field
from specgen.reading.schema import project_schema
from tests.support import EXAMPLES, SMALL

FIELDS = [field for field in project_schema().fields.values() if field.home == "project"]
NAMES = ("first-look", "clean", "metric", "stops", "old-wall")
SOURCES = {name: (EXAMPLES / name / "project.yaml").read_bytes() for name in NAMES}
BESIDE = {
    name: {file.name: file.read_bytes() for file in (EXAMPLES / name).glob("*.yaml") if file.name != "project.yaml"}
    for name in NAMES
}


def dump(data: Any) -> bytes:
    """A project file of this content; every text is quoted, so that it comes back as it is."""
    text: str = yaml.safe_dump(data, sort_keys=False, allow_unicode=False, default_style='"')
    return text.encode()


def small() -> dict[str, Any]:
    """The smallest project, to be changed."""
    return copy.deepcopy(SMALL)


def set_field(data: dict[str, Any], field: Field, value: Any) -> None:
    """Give a field in the first member of each collection on its way."""
    holder, listed = data, False
    for depth, name in enumerate(field.path[:-1], 1):
        if name == "*":
            holder = holder if listed else holder.setdefault("W1", {})
            continue
        members = project_schema().collections.get((*field.path[:depth], "*"))
        listed = members is not None and members.kind == "items"
        holder = holder.setdefault(name, [{}])[0] if listed else holder.setdefault(name, {})
    holder["W1" if field.path[-1] == "*" else field.path[-1]] = [value] if field.kind == "list" else value


def choose_field(chance: random.Random, *kinds: str) -> Field:
    """A field of one of these kinds."""
    return chance.choice([field for field in FIELDS if (field.of or field.kind) in kinds])
