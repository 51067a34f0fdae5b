"""Our own data files to plain data, every scalar a text, and the one error that names file, line and row."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import yaml

from specgen.model.problem import Problem, Refused

_LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
Where = tuple[str | int, ...]
NextEvent = Callable[[], Any]


class Wrong(ValueError):
    """Something in a row is not as it should be; `where` leads to it from the top of its file."""

    def __init__(self, message: str, hint: str = "", where: Where = (), line: int = 0) -> None:
        super().__init__(message)
        self.message, self.hint, self.where, self.line = message, hint, where, line

    def inside(self, key: str | int) -> "Wrong":
        """The same fault, seen from one level further up."""
        return Wrong(self.message, self.hint, (key, *self.where), self.line)


class RowError(Refused, ValueError):
    """A row of our own data is malformed: `file:line: row: key: what is wrong (what would be right)`."""

    def __init__(self, file: Path, wrong: Wrong) -> None:
        names = [name for name in wrong.where if isinstance(name, str)]
        line = wrong.line or _line_of(file, wrong.where)
        super().__init__(Problem(wrong.message, wrong.hint, ": ".join(names), file.name, line))


def read_rows(file: Path) -> dict[str, Any]:
    """The mapping of a file; RowError where it is no YAML, holds no mapping, or a key stands twice.

    Built from the parser's events: without tags to resolve that takes half the time of a load, at every start.
    """
    loader = _LOADER(file.read_text("utf-8"))
    try:
        return _document(loader.get_event)
    except Wrong as wrong:
        raise RowError(file, wrong) from None
    except yaml.MarkedYAMLError as error:
        line = error.problem_mark.line + 1 if error.problem_mark else 1
        told = Wrong(f"the file is no YAML: {error.problem}", "check indentation, colons and quotes here", line=line)
        raise RowError(file, told) from None
    finally:
        loader.dispose()


def _document(next_event: NextEvent) -> dict[str, Any]:
    next_event()  # the stream begins
    if next_event().__class__ is yaml.StreamEndEvent or next_event().__class__ is not yaml.MappingStartEvent:
        raise Wrong("the file holds no mapping", "write rows, each with its name before a colon", line=1)
    rows = _mapping(next_event, {})
    next_event()  # the document ends
    if (event := next_event()).__class__ is not yaml.StreamEndEvent:
        raise Wrong("a second document begins here", "remove the line `---`", line=_line(event))
    return rows


def _mapping(next_event: NextEvent, anchored: dict[str, Any]) -> dict[str, Any]:
    made: dict[str, Any] = {}
    while (key := next_event()).__class__ is not yaml.MappingEndEvent:
        if key.__class__ is not yaml.ScalarEvent:
            raise Wrong("a key is no plain text", "write a name before the colon", line=_line(key))
        if key.value in made:
            raise Wrong("this stands twice", "keep one of them", (key.value,), _line(key))
        value = next_event()
        if value.__class__ is yaml.ScalarEvent and not value.anchor:  # nearly all are, and a call for each is felt
            made[key.value] = value.value
            continue
        try:
            made[key.value] = _built(value, next_event, anchored)
        except Wrong as wrong:
            raise wrong.inside(key.value) from None
    return made


def _built(event: Any, next_event: NextEvent, anchored: dict[str, Any]) -> Any:
    kind = event.__class__
    if kind is yaml.AliasEvent:
        if event.anchor not in anchored:
            message, hint = f"*{event.anchor} stands for nothing", f"write &{event.anchor} before what it stands for"
            raise Wrong(message, hint, line=_line(event))
        return anchored[event.anchor]
    made: Any
    if kind is yaml.ScalarEvent:
        made = event.value
    elif kind is yaml.MappingStartEvent:
        made = _mapping(next_event, anchored)
    else:
        made = []
        while (entry := next_event()).__class__ is not yaml.SequenceEndEvent:
            made.append(_built(entry, next_event, anchored))
    if event.anchor:
        anchored[event.anchor] = made
    return made


def _line(event: Any) -> int:
    return int(event.start_mark.line) + 1


def _line_of(file: Path, where: Where) -> int:
    """The line of what `where` leads to, of the nearest that is written; lines are only looked for once one is told."""
    node: Any = yaml.compose(file.read_text("utf-8"), Loader=yaml.BaseLoader)
    line = 1
    for name in where:
        entries = {key.value: (key, value) for key, value in node.value} if isinstance(name, str) else {}
        if isinstance(name, str) and name not in entries:
            break
        key, node = entries[name] if isinstance(name, str) else (node.value[name], node.value[name])
        line = key.start_mark.line + 1
    return line
