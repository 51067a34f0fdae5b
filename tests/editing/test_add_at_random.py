"""Values put into files at random: no line changes that was not to be filled, and every other reader agrees."""

import random
from collections.abc import Iterator
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.editing.add_values import add_values
from specgen.editing.edit import Addition, Edit
from specgen.model.field import Path
from specgen.reading.schema import project_schema
from tests.projects_at_random import draw_project
from tests.support import EXAMPLES

SCHEMA = project_schema()
FIELDS = [field for field in SCHEMA.fields.values() if field.home != "record" and field.path != ("format",)]
NAMES = sorted(file.parent.name for file in EXAMPLES.glob("*/project.yaml") if file.parent.name != "large")
MARKS = ("W1", "W2", "E1", "J1", "yes", "1", "#7", "Ü 3")
TEXTS = ("plain", "with: colon", "a # sign", "yes", "0712", "it's", '"', "[x", "- y", "1 1/2 in", "é 😀", "two\nlines")


def draw_additions(chance: random.Random, count: int) -> list[Addition]:
    """Fields of the schema with their examples or odd texts, in members that are there and in new ones."""
    return [one for one in (_draw_addition(chance) for _ in range(count)) if one is not None]


def _draw_addition(chance: random.Random) -> Addition | None:
    field = chance.choice(FIELDS)
    path: Path = ()
    for name in field.path:
        collection = SCHEMA.node(path).collection if name == "*" else None
        listed = collection is not None and collection.kind == "items"
        path = (*path, name if name != "*" else "0" if listed else chance.choice(MARKS))
    text = field.example if field.kind == "list" or chance.random() < 0.6 else chance.choice(TEXTS)
    return Addition(path, text, chance.choice(("", "why", "one\ntwo")))


def follows(part: str, whole: str) -> bool:
    """Whether all characters of a text stand in another one in their order."""
    rest = iter(whole)
    return all(sign in rest for sign in part)


def is_kept(source: str, edited: str) -> bool:
    """Whether each line still stands in its order: as it was, or with more in its braces or behind its colon."""
    after = iter(edited.splitlines(keepends=True))
    for line in source.splitlines(keepends=True):
        bare = line.rstrip("\r\n")
        may_grow = "{" in line or "[" in line or bare.split("#")[0].rstrip().endswith((":", "}", "]", ","))
        grown = (bare.replace("tbd", ""), may_grow or "tbd" in bare)
        for now in after:
            if now == line or now.rstrip("\r\n") == bare or (grown[1] and follows(grown[0], now)):
                break
        else:
            return False
    return True


def leaves(data: Any, path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Any]]:
    if isinstance(data, dict) and data:
        for name, value in data.items():
            yield from leaves(value, (*path, name))
    elif isinstance(data, list) and any(isinstance(entry, dict) for entry in data):
        for place, value in enumerate(data):
            yield from leaves(value, (*path, str(place)))
    else:
        yield path, data


def load(source: bytes) -> Any:
    """The content by the plain loader of the library, which keeps all values as text."""
    return yaml.load(source.decode("utf-8-sig"), Loader=yaml.CBaseLoader)


def compare(source: bytes, edit: Edit, additions: list[Addition]) -> None:
    """Hold an edit against the file as another reader has it."""
    old, new = dict(leaves(load(source))), dict(leaves(load(edit.source)))
    written = {one.path for one in edit.added}
    empty = {"", "tbd", "~", "null"}
    for path, value in old.items():
        if not (isinstance(value, (dict, list)) or value in empty) or path in new:
            kept = new[path].rstrip("\n") == value.rstrip("\n") if isinstance(value, str) else new[path] == value
            assert kept or (path in written and value in empty), path
    offered: dict[Path, Addition] = {}
    for one in additions:
        offered.setdefault(one.path, one)
    for path in written:
        text, is_list = offered[path].text, isinstance(new[path], list)
        assert new[path] == (yaml.load(text, Loader=yaml.CBaseLoader) if is_list else unquoted(text)), path
    order = list(load(source))
    assert [name for name in load(edit.source) if name in order] == order


def unquoted(text: str) -> str:
    return text[1:-1] if text[:1] == text[-1:] == '"' and len(text) > 1 else text


@pytest.mark.parametrize("name", NAMES)
@settings(max_examples=12, deadline=None)
@given(seed=st.integers(0, 2**32), count=st.integers(1, 25))
def test_an_example_keeps_all_its_lines(name: str, seed: int, count: int) -> None:
    source = (EXAMPLES / name / "project.yaml").read_bytes()
    additions = draw_additions(random.Random(seed), count)
    edit = add_values(source, additions, SCHEMA, "p.yaml")
    assert is_kept(source.decode(), edit.source.decode())
    compare(source, edit, additions)


def disguise(chance: random.Random, text: str) -> bytes:
    """The same file with comments, blank lines, other line ends, a byte order mark and no final line end."""
    lines = []
    for line in text.splitlines():
        lines += [chance.choice(["", "# apart", "  # inside"])] if chance.random() < 0.1 else []
        lines.append(line + ("\t# why" if chance.random() < 0.1 else ""))
    whole = chance.choice(["\n", "\r\n"]).join(lines) + chance.choice(["", "\n"])
    return chance.choice([b"", b"\xef\xbb\xbf"]) + whole.encode()


@settings(max_examples=80, deadline=None)
@given(seed=st.integers(0, 2**32), count=st.integers(1, 30))
def test_a_file_written_in_any_style_keeps_all_its_lines(seed: int, count: int) -> None:
    chance = random.Random(seed)
    style = {"default_flow_style": chance.choice([None, False, False]), "indent": chance.choice([2, 3, 4])}
    text = yaml.dump(draw_project(seed), sort_keys=False, allow_unicode=True, width=10_000, **style)
    source, additions = disguise(chance, text), draw_additions(chance, count)
    edit = add_values(source, additions, SCHEMA, "p.yaml")
    assert is_kept(source.decode(), edit.source.decode())
    compare(source, edit, additions)


def test_a_changed_line_would_be_found() -> None:
    assert is_kept("a: 1\nb:\n", "a: 1\nc: 2\nb: 3\n")
    assert is_kept("a: {b: 1}\n", "a: {b: 1, c: 2}\n")
    assert not is_kept("a: 1\nb: 2\n", "b: 2\na: 1\n")
    assert not is_kept("a: 1  # x\n", "a: 1\n")
    assert not is_kept("a: {b: 1}\n", "a: {c: 1}\n")
