"""An equation as MathML: the elements of MathML Core, which browsers set without any script or outside request."""

from html import escape

from specgen.formats.equation.expression import Applied, Fence, Node, Ratio, Root, Row, Script, Words, lines, tree
from specgen.model.block import Equation

_APPLY = "<mo>\u2061</mo>"


def inline(expression: str) -> str:
    """A symbol or expression within a line of text."""
    return f"<math {_said(expression)}>{element(tree(expression))}</math>"


def display(equation: Equation) -> str:
    """An equation on lines of its own, its equals signs below one another; its plain line is what is read aloud."""
    rows = "".join(_row(line) for line in lines(equation))
    return f'<math display="block" {_said(equation.plain)}><mtable displaystyle="true">{rows}</mtable></math>'


def _said(plain: str) -> str:
    return f'alttext="{escape(plain)}" aria-label="{escape(plain)}"'


def _row(line: Row) -> str:
    """A row of the table: what stands before the first equals sign, the sign, and all that follows."""
    at = line.parts.index(Words("=", "operator"))
    cells = (line.parts[:at], line.parts[at : at + 1], line.parts[at + 1 :])
    return f"<mtr>{''.join(f'<mtd>{element(Row(cell))}</mtd>' for cell in cells)}</mtr>"


def element(node: Node) -> str:
    """The element of a tree."""
    match node:
        case Words():
            return _words(node)
        case Row(parts):
            return f"<mrow>{''.join(map(element, parts))}</mrow>"
        case Ratio(over, under):
            return f"<mfrac>{element(over)}{element(under)}</mfrac>"
        case Script():
            return _script(node)
        case Root(of):
            return f"<msqrt>{element(of)}</msqrt>"
        case Fence(of, begin, end):
            return f'<mrow><mo fence="true">{begin}</mo>{element(of)}<mo fence="true">{end}</mo></mrow>'
        case Applied(name, of):
            return f"<mrow>{element(name)}{_APPLY}{element(of)}</mrow>"


def _words(words: Words) -> str:
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


def _script(node: Script) -> str:
    around = [part for part in (node.below, node.above) if part is not None]
    name = "msubsup" if len(around) == 2 else "msub" if node.below is not None else "msup"
    return f"<{name}>{element(node.base)}{''.join(map(element, around))}</{name}>"
