"""An equation as plain data for the page template: one list for each node, its kind first."""

from typing import Any

from specgen.formats.equation.expression import (
    Applied,
    Fence,
    Node,
    Ratio,
    Root,
    Row,
    Script,
    Words,
    build_lines,
)
from specgen.model.block import Equation

_EQUALS = Words("=", "operator")


def describe_equation(equation: Equation) -> list[list[Any]]:
    """The lines of an equation, each as what stands before its first equals sign, and the rest with the sign."""
    lines = []
    for line in build_lines(equation):
        at = line.parts.index(_EQUALS)
        lines.append([describe_node(Row(line.parts[:at])), describe_node(Row(line.parts[at:]))])
    return lines


def describe_node(node: Node) -> list[Any]:
    """The data of a node: its kind, then its text or its parts."""
    match node:
        case Words():
            return [node.kind, node.text]
        case Row(parts):
            return ["row", *map(describe_node, parts)]
        case Ratio(over, under):
            return ["ratio", describe_node(over), describe_node(under)]
        case Script(base, below, above):
            around = [describe_node(part) if part is not None else None for part in (below, above)]
            return ["script", describe_node(base), *around]
        case Root(of):
            return ["root", describe_node(of)]
        case Fence(of, begin, end):
            return ["fence", begin, describe_node(of), end]
        case Applied(name, of):
            return ["applied", name.text, describe_node(of)]
