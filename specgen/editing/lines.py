"""New keys as lines of a section, or as pairs in braces."""

from collections.abc import Iterator

from specgen.editing.edit import Addition
from specgen.editing.planning import New
from specgen.editing.values import write_key, write_value
from specgen.model.field import Node

STEP = 2


def in_order(new: New, node: Node) -> list[str]:
    """The names of new keys in the order of the schema; members in the order in which they are given."""
    if node.star is not None:
        return list(new)
    ranks = list(node.children)
    return sorted(new, key=ranks.index)


def write_lines(new: New, node: Node, column: int, step: int = STEP) -> Iterator[str]:
    """The lines of new keys that stand in this column, without their ends."""
    listed = node.collection is not None and node.collection.kind == "items"
    for name in in_order(new, node):
        child = below(node, name)
        if listed:
            yield from _write_item(new[name], child, column, step)
            continue
        yield from write_pair(name, new[name], child, column, step)


def write_pair(name: str, value: "New | Addition", node: Node, column: int, step: int = STEP) -> Iterator[str]:
    """The lines of one new key and what stands below it."""
    if isinstance(value, Addition):
        yield from write_comment(value.comment, column)
        assert node.field is not None
        yield f"{' ' * column}{write_key(name, False)}: {write_value(node.field, value.text, False)}".rstrip(" ")
    else:
        yield f"{' ' * column}{write_key(name, False)}:"
        yield from write_lines(value, node, column + step, step)


def write_comment(comment: str, column: int) -> Iterator[str]:
    """The lines of a comment in this column."""
    for line in comment.splitlines():
        yield f"{' ' * column}# {line}".rstrip()


def _write_item(new: New, node: Node, column: int, step: int) -> Iterator[str]:
    """The lines of one new entry of a list; its sign stands before its first key."""
    begun = False
    for line in write_lines(new, node, column + 2, step):
        if begun or line.lstrip().startswith("#"):
            yield line
        else:
            begun = True
            yield f"{line[:column]}- {line[column + 2 :]}"


def write_braces(new: New, node: Node) -> str:
    """New keys in braces, or new entries in brackets."""
    if node.collection is not None and node.collection.kind == "items":
        return f"[{', '.join(write_braces(new[name], below(node, name)) for name in new)}]"
    return "{" + ", ".join(write_flow_pair(name, new[name], below(node, name)) for name in in_order(new, node)) + "}"


def write_flow_pair(name: str, value: "New | Addition", node: Node) -> str:
    """One new key and its value as they stand in braces."""
    if not isinstance(value, Addition):
        return f"{write_key(name, True)}: {write_braces(value, node)}"
    assert node.field is not None
    return f"{write_key(name, True)}: {write_value(node.field, value.text, True)}"


def below(node: Node, name: str) -> Node:
    """The node of the schema below another, by a key or mark."""
    return node.star if node.star is not None else node.children[name]
