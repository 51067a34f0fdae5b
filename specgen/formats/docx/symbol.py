"""A symbol as runs of its line, so that it has the size of the text around it: `T_a`, `K_f^4`."""

from collections.abc import Iterator

from specgen.formats.equation.expression import Node, Row, Script, Words, parse_expression

_LOWERED, _RAISED = '<w:vertAlign w:val="subscript"/>', '<w:vertAlign w:val="superscript"/>'


def split_symbol(text: str) -> tuple[tuple[str, str], ...]:
    """The runs of a symbol, each text with its properties; none for an expression, which is set as a formula."""
    node = parse_expression(text)
    base, below, above = (node.base, node.below, node.above) if isinstance(node, Script) else (node, None, None)
    runs = [*_runs(base, ""), *_runs(below, _LOWERED), *_runs(above, _RAISED)]
    return tuple(run for run in runs if run is not None) if None not in runs else ()


def _runs(node: Node | None, place: str) -> Iterator[tuple[str, str] | None]:
    """The runs of a part of a symbol; None stands for what is more than words."""
    for part in node.parts if isinstance(node, Row) else () if node is None else (node,):
        if isinstance(part, Words):
            yield part.text, ("<w:i/>" if part.kind == "variable" else "") + place
        else:
            yield None
