"""An equation as MathML: the elements of MathML Core, which browsers display without a script or an outside request."""

from html import escape

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
    parse_expression,
)
from specgen.model.block import Equation

_APPLY = "<mo>\u2061</mo>"


def render_inline(expression: str) -> str:
    """A symbol or expression within a line of text."""
    return f"<math {_render_labels(expression)}>{render_element(parse_expression(expression))}</math>"


def render_display(equation: Equation) -> str:
    """An equation on its own lines with aligned equals signs; its plain text is read aloud."""
    rows = "".join(_render_row(line) for line in build_lines(equation))
    return f'<math display="block" {_render_labels(equation.plain)}><mtable displaystyle="true">{rows}</mtable></math>'


def _render_labels(plain: str) -> str:
    return f'alttext="{escape(plain)}" aria-label="{escape(plain)}"'


def _render_row(line: Row) -> str:
    """A row of the table: what precedes the first equals sign, the sign, and the rest."""
    at = line.parts.index(Words("=", "operator"))
    cells = (line.parts[:at], line.parts[at : at + 1], line.parts[at + 1 :])
    return f"<mtr>{''.join(f'<mtd>{render_element(Row(cell))}</mtd>' for cell in cells)}</mtr>"


def render_element(node: Node) -> str:
    """The element of a tree."""
    match node:
        case Words():
            return _render_words(node)
        case Row(parts):
            return f"<mrow>{''.join(map(render_element, parts))}</mrow>"
        case Ratio(over, under):
            return f"<mfrac>{render_element(over)}{render_element(under)}</mfrac>"
        case Script():
            return _render_script(node)
        case Root(of):
            return f"<msqrt>{render_element(of)}</msqrt>"
        case Fence(of, begin, end):
            return f'<mrow><mo fence="true">{begin}</mo>{render_element(of)}<mo fence="true">{end}</mo></mrow>'
        case Applied(name, of):
            return f"<mrow>{render_element(name)}{_APPLY}{render_element(of)}</mrow>"


def _render_words(words: Words) -> str:
    text = escape(words.text)
    if words.kind == "number":
        return f"<mn>{text}</mn>"
    if words.kind == "operator":
        return f"<mo>{text}</mo>"
    if words.kind == "variable":
        return f"<mi>{text}</mi>"
    if text.startswith("\u00a0"):
        return f"<mtext>{text}</mtext>"
    # A single letter slants by itself; words stand upright by themselves.
    upright = ' mathvariant="normal"' if len(words.text) == 1 else ""
    return f"<mi{upright}>{text}</mi>"


def _render_script(node: Script) -> str:
    around = [part for part in (node.below, node.above) if part is not None]
    name = "msubsup" if len(around) == 2 else "msub" if node.below is not None else "msup"
    return f"<{name}>{render_element(node.base)}{''.join(map(render_element, around))}</{name}>"
