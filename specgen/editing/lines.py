"""New keys as lines of a section, or as pairs in braces."""

from collections.abc import Iterator

from specgen.editing.edit import Addition
from specgen.editing.planning import Section
from specgen.editing.values import entry_of, write_entries, write_key, write_value
from specgen.model.field import Node

STEP = 2


def in_order(new: Section, node: Node) -> list[str]:
    """The names of new keys in the order of the schema; members in the order in which they are given."""
    if node.star is not None:
        return list(new.keys)
    ranks = list(node.children)
    return sorted(new.keys, key=ranks.index)


def write_lines(new: Section, node: Node, column: int, step: int = STEP) -> Iterator[str]:
    """The lines of new keys that stand in this column, without their ends."""
    listed = node.collection is not None and node.collection.kind == "items"
    for name in in_order(new, node):
        child = below(node, name)
        if listed:
            yield from _write_item(new.keys[name], child, column, step)
        else:
            yield from write_pair(name, new.keys[name], child, column, step)


def write_pair(name: str, value: Section | Addition, node: Node, column: int, step: int = STEP) -> Iterator[str]:
    """The lines of one new key and what stands below it."""
    if isinstance(value, Addition):
        yield from write_comment(value.comment, column)
        entry = entry_of(node)
        assert entry is not None
        entries = write_entries(entry, value.text)
        told = "" if entries else write_value(entry, value.text, False)
        yield f"{' ' * column}{write_key(name, False)}: {told}".rstrip(" ")
        yield from (f"{' ' * (column + step)}- {one}" for one in entries)
    else:
        yield from write_comment(value.comment, column)
        yield f"{' ' * column}{write_key(name, False)}:"
        yield from write_lines(value, node, column + step, step)


def write_comment(comment: str, column: int) -> Iterator[str]:
    """The lines of a comment in this column."""
    for line in comment.splitlines():
        yield f"{' ' * column}# {line}".rstrip()


def _write_item(new: Section | Addition, node: Node, column: int, step: int) -> Iterator[str]:
    """The lines of one new entry of a list; its sign stands before its first key, or above the comment of that."""
    assert isinstance(new, Section)
    first, *rest = write_lines(new, node, column + 2, step)
    commented = first.lstrip().startswith("#")
    yield f"{' ' * column}-" if commented else f"{first[:column]}- {first[column + 2 :]}"
    yield from [first, *rest] if commented else rest


def write_braces(new: Section, node: Node) -> str:
    """New keys in braces, or new entries in brackets."""
    if node.collection is not None and node.collection.kind == "items":
        return f"[{', '.join(write_in_braces(name, new.keys[name], below(node, name), True) for name in new.keys)}]"
    pairs = (write_in_braces(name, new.keys[name], below(node, name)) for name in in_order(new, node))
    return f"{{{', '.join(pairs)}}}"


def write_in_braces(name: str, value: Section | Addition, node: Node, entry: bool = False) -> str:
    """One new key and its value as they stand in braces; of an entry of a list only the value."""
    key = "" if entry else f"{write_key(name, True)}: "
    if isinstance(value, Section):
        return f"{key}{write_braces(value, node)}"
    said = entry_of(node)
    assert said is not None
    return f"{key}{write_value(said, value.text, True)}"


def below(node: Node, name: str) -> Node:
    """The node of the schema below another, by a key or mark."""
    found = node.below(name)
    assert found is not None
    return found
