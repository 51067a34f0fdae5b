"""Reads our own data files as plain data, every scalar a text; one error names file, line and row."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeAlias

import yaml

from specgen.model.problem import Problem, Refused

_LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
Where = tuple[str | int, ...]
NextEvent = Callable[[], yaml.Event]
# What a file may hold: every scalar is a text.
Data: TypeAlias = "str | list[Data] | dict[str, Data]"


class Wrong(ValueError):
    """Something in a row is wrong; `where` is the path to it from the top of its file."""

    def __init__(self, message: str, hint: str = "", where: Where = (), line: int = 0) -> None:
        super().__init__(message)
        self.message, self.hint, self.where, self.line = message, hint, where, line

    def inside(self, key: str | int) -> "Wrong":
        """The same fault, with the key one level up added to its path."""
        return Wrong(self.message, self.hint, (key, *self.where), self.line)


class RowError(Refused, ValueError):
    """A row of our own data is malformed: `file:line: row: key: what is wrong (what would be right)`."""

    def __init__(self, file: Path, wrong: Wrong) -> None:
        names = [name for name in wrong.where if isinstance(name, str)]
        line = wrong.line or _locate(file, wrong.where)
        super().__init__(Problem(wrong.message, wrong.hint, ": ".join(names), file.name, line))


def read_rows(file: Path) -> dict[str, Data]:
    """The mapping of a file; RowError where it is not YAML, holds no mapping, or has a key twice.

    Built from the parser's events: without tags to resolve that takes half the time of a load, at every start.
    """
    loader = _LOADER(file.read_text("utf-8"))
    try:
        return _read_document(loader.get_event)
    except Wrong as wrong:
        raise RowError(file, wrong) from None
    except yaml.MarkedYAMLError as error:
        line = error.problem_mark.line + 1 if error.problem_mark else 1
        fault = Wrong(
            f"the file is not valid YAML: {error.problem}", "check indentation, colons and quotes here", line=line
        )
        raise RowError(file, fault) from None
    finally:
        loader.dispose()


def _read_document(next_event: NextEvent) -> dict[str, Data]:
    next_event()  # the stream begins
    if isinstance(next_event(), yaml.StreamEndEvent) or not isinstance(next_event(), yaml.MappingStartEvent):
        raise Wrong("the file holds no mapping", "write rows, each with its name before a colon", line=1)
    rows = _read_mapping(next_event, {})
    next_event()  # the document ends
    if not isinstance(event := next_event(), yaml.StreamEndEvent):
        raise Wrong("a second document begins here", "remove the line `---`", line=_find_line(event))
    return rows


def _read_mapping(next_event: NextEvent, anchored: dict[str, Data]) -> dict[str, Data]:
    rows: dict[str, Data] = {}
    while not isinstance(key := next_event(), yaml.MappingEndEvent):
        if not isinstance(key, yaml.ScalarEvent):
            raise Wrong("a key is no plain text", "write a name before the colon", line=_find_line(key))
        if key.value in rows:
            raise Wrong("this stands twice", "keep one of them", (key.value,), _find_line(key))
        value = next_event()
        if isinstance(value, yaml.ScalarEvent) and not value.anchor:  # nearly all are, and a call for each is felt
            rows[key.value] = value.value
            continue
        try:
            rows[key.value] = _read_node(value, next_event, anchored)
        except Wrong as wrong:
            raise wrong.inside(key.value) from None
    return rows


def _read_node(event: yaml.Event, next_event: NextEvent, anchored: dict[str, Data]) -> Data:
    if isinstance(event, yaml.AliasEvent):
        meant = anchored.get(event.anchor or "")
        if meant is None:
            message, hint = f"*{event.anchor} stands for nothing", f"write &{event.anchor} before what it stands for"
            raise Wrong(message, hint, line=_find_line(event))
        return meant
    data: Data
    if isinstance(event, yaml.ScalarEvent):
        data = event.value
    elif isinstance(event, yaml.MappingStartEvent):
        data = _read_mapping(next_event, anchored)
    else:
        data = []
        while not isinstance(entry := next_event(), yaml.SequenceEndEvent):
            data.append(_read_node(entry, next_event, anchored))
    if isinstance(event, yaml.NodeEvent) and event.anchor:
        anchored[event.anchor] = data
    return data


def _find_line(event: yaml.Event) -> int:
    return event.start_mark.line + 1 if event.start_mark else 1


def _locate(file: Path, where: Where) -> int:
    """The line at the path `where`, or at the nearest key that exists; only looked up once there is an error."""
    node, line = yaml.compose(file.read_text("utf-8"), Loader=yaml.BaseLoader), 1
    for name in where:
        if isinstance(node, yaml.SequenceNode) and isinstance(name, int):
            key = node = node.value[name]
        elif isinstance(node, yaml.MappingNode):
            pairs: list[tuple[yaml.Node, yaml.Node]] = node.value
            entries = {entry.value: (entry, value) for entry, value in pairs}
            if name not in entries:
                break
            key, node = entries[name]
        else:
            break
        line = key.start_mark.line + 1
    return line
