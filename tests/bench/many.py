"""Projects with many members of one kind, made from the clean example."""

import copy
import re
import shutil
from functools import cache
from pathlib import Path as FilePath
from typing import Any

import yaml

from specgen.model.field import Path
from specgen.reading.schema import project_schema
from tests.support import ROOT

CLEAN = ROOT / "project_examples" / "clean"
# What is multiplied together, so that each member has what it needs: a wall has a face, a face its joints and access.
WHOLE = ("walls", "elevations", "joints", "access", "shade")


class _Texts(yaml.SafeLoader):
    """Loads every value as its text; joins merged mappings as YAML does."""

    yaml_implicit_resolvers = {"<": [("tag:yaml.org,2002:merge", re.compile("<<$"))]}


@cache
def _clean() -> Any:
    """The clean example, its firm's people and equipment in the project file itself, as plain text values."""
    project, firm = (
        yaml.load((CLEAN / name).read_text("utf-8"), Loader=_Texts) for name in ("project.yaml", "firm.yaml")
    )  # noqa: S506  texts only
    del project["firm"], firm["format"]
    return project | firm | {"attachments": project["attachments"] | firm["attachments"]}


def bare_walls(count: int) -> str:
    """A first look at walls of which next to nothing is known: most clauses wait."""
    head = "format: 1\npackage: {purpose: design_draft}\nproject: {name: Bare}\nwalls:\n"
    return head + "".join(
        f"  W{n}: {{substrate: {{kind: concrete}}, attachment: {{method: adhesive_full_bed}}}}\n"
        for n in range(1, count + 1)
    )


def whole_walls(count: int, different: bool = False) -> str:
    """The clean example with so many walls, each with its face, joints and access; each like the next or unlike."""
    data = copy.deepcopy(_clean())
    for name in WHOLE:
        data[name] = {}
    data["details"], data["contract"]["demands"] = {}, []
    for number in range(1, count + 1):
        _add_wall(data, number, different)
    return _write(data)


def _add_wall(data: Any, number: int, different: bool) -> None:
    """A wall with what hangs on it, as the stack house of the example has it."""
    mark, face, clean = f"W{number}", f"E{number}", _clean()
    wall = copy.deepcopy(clean["walls"]["W2"])
    if different:
        wall["attachment"]["cure_hours"] = str(24 + number / 10)
        wall["attachment"]["ultimate_strength"] = f"{200 + number} psf"
        wall["insulation"]["smoke_developed"] = str(300 + number)
        wall["base_coat"]["cure_hours"] = str(24 + number / 10)
        wall["substrate"]["age_days"] = str(60 + number)
    data["walls"][mark] = wall
    data["elevations"][face] = clean["elevations"]["E3"] | {"name": f"Face {number}", "wall": mark}
    data["joints"][f"J{number}"] = clean["joints"]["J5"] | {"elevation": face}
    for name, its in (("access", "X3"), ("shade", "SH3")):
        data[name][f"X{number}"] = clean[name][its] | {"elevation": face}


def many_of(name: str, times: int) -> str:
    """The clean example with the members of one collection that many times, each under a mark of its own."""
    data = copy.deepcopy(_clean())
    owner, _, last = name.rpartition(".")
    section = data[owner] if owner else data
    section[last] = _again(section[last], times)
    return _write(data)


def whole_again(times: int) -> str:
    """The clean example so many times over in one file: every wall, face, joint, paper and person of each its own."""
    first, joined = _clean(), copy.deepcopy(_clean())
    for number in range(1, times):
        for name, members in first.items():
            # All hoses of one use are joined end to end, so that more of them would make another machine.
            if isinstance(members, dict) and (name, "*") in _SCHEMA.collections and name != "hoses":
                for mark, entry in members.items():
                    joined[name][f"{mark}n{number}"] = _renamed(entry, (name, "*"), number)
        joined["contract"]["demands"] += _renamed(first["contract"]["demands"], ("contract", "demands"), number)
        joined["mockup"]["criteria"] += first["mockup"]["criteria"]
    return _write(joined)


_SCHEMA = project_schema()


def _renamed(entry: Any, path: Path, number: int) -> Any:
    """A copy whose references lead to the members of the same copy."""
    if isinstance(entry, dict):
        return {name: _renamed(value, _below(path, name), number) for name, value in entry.items()}
    field = _SCHEMA.field_at(path)
    if isinstance(entry, list):
        return [_renamed(value, path if field else _below(path, ""), number) for value in entry]
    refers = field is not None and (field.to in _clean() or path[-1] == "for")
    return f"{entry}n{number}" if refers else entry


def _below(path: Path, name: str) -> Path:
    return (*path, "*" if _SCHEMA.node(path).star is not None else name)


def _again(members: Any, times: int) -> Any:
    if isinstance(members, list):
        return members * times
    return {f"{mark}n{n}" if n else mark: entry for n in range(times) for mark, entry in members.items()}


def _write(data: Any) -> str:
    class Plain(yaml.CSafeDumper):
        """Writes what is used twice in full."""

        def ignore_aliases(self, data: Any) -> bool:
            return True

    return yaml.dump(data, Dumper=Plain, sort_keys=False, default_flow_style=None, width=1_000_000)


def lay_out(folder: FilePath, text: str) -> FilePath:
    """The project file of a text, with the coating system of the example beside it."""
    shutil.copy(CLEAN / "coating-system.yaml", folder)
    file = folder / "project.yaml"
    file.write_text(text, "utf-8")
    return file
