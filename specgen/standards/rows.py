"""Our own data files to plain data, every scalar a text."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml

_LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


def read_rows(file: Path) -> dict[str, Any]:
    """The mapping of a file; ValueError where its top is none.

    Built from the parser's events: without tags to resolve that takes half the time of a load, at every start.
    """
    events = yaml.parse(file.read_text("utf-8"), Loader=_LOADER)
    first = next((e for e in events if not isinstance(e, yaml.StreamStartEvent | yaml.DocumentStartEvent)), None)
    if not isinstance(first, yaml.MappingStartEvent):
        raise ValueError(f"{file.name} holds no mapping")
    made: dict[str, Any] = _built(first, events, {})
    return made


def _built(event: Any, events: Iterator[Any], anchored: dict[str, Any]) -> Any:
    if isinstance(event, yaml.AliasEvent):
        return anchored[str(event.anchor)]
    if isinstance(event, yaml.ScalarEvent):
        made: Any = event.value
    elif isinstance(event, yaml.MappingStartEvent):
        made = {key.value: _built(next(events), events, anchored) for key in _until(yaml.MappingEndEvent, events)}
    else:
        made = [_built(entry, events, anchored) for entry in _until(yaml.SequenceEndEvent, events)]
    if event.anchor:
        anchored[event.anchor] = made
    return made


def _until(end: type, events: Iterator[Any]) -> Iterator[Any]:
    for event in events:
        if type(event) is end:
            return
        yield event
