"""An equation as Office Math Markup: ECMA-376 part 1, section 22.1, written as text of the document's body."""

from specgen.formats.equation.expression import Applied, Fence, Node, Ratio, Root, Row, Script, Words, parse_expression
from specgen.formats.xml_text import escape, quote

SPACE = "http://schemas.openxmlformats.org/officeDocument/2006/math"
_FONT = '<w:rPr><w:rFonts w:ascii="Cambria Math" w:hAnsi="Cambria Math"/><w:sz w:val="18"/></w:rPr>'
_CONTROL = f"<m:ctrlPr>{_FONT}</m:ctrlPr>"
# Upright words are normal text of the equation; variables take the slanted style that is the rule there.
_UPRIGHT = "<m:rPr><m:nor/></m:rPr>"


def render_inline(expression: str) -> str:
    """A symbol or expression within a paragraph."""
    return f"<m:oMath>{render_element(parse_expression(expression))}</m:oMath>"


def render_display(line: Row) -> str:
    """A line of an equation as a paragraph of its own, aligned left."""
    # A line that begins with its sign would lack what stands before it; a space takes that place.
    empty = _render_run(Words("\u2003", "upright")) if line.parts[0] == Words("=", "operator") else ""
    properties = '<m:oMathParaPr><m:jc m:val="left"/></m:oMathParaPr>'
    return f"<m:oMathPara>{properties}<m:oMath>{empty}{render_element(line)}</m:oMath></m:oMathPara>"


def render_element(node: Node) -> str:
    """The elements of a tree."""
    match node:
        case Words():
            return _render_run(node)
        case Row(parts):
            return "".join(map(render_element, parts))
        case Ratio(over, under):
            head = f"<m:fPr>{_CONTROL}</m:fPr>"
            return f"<m:f>{head}<m:num>{render_element(over)}</m:num><m:den>{render_element(under)}</m:den></m:f>"
        case Script():
            return _render_script(node)
        case Root(of):
            head = f'<m:radPr><m:degHide m:val="1"/>{_CONTROL}</m:radPr><m:deg/>'
            return f"<m:rad>{head}<m:e>{render_element(of)}</m:e></m:rad>"
        case Fence(of, begin, end):
            signs = f"<m:begChr m:val={quote(begin)}/><m:endChr m:val={quote(end)}/>"
            return f"<m:d><m:dPr>{signs}{_CONTROL}</m:dPr><m:e>{render_element(of)}</m:e></m:d>"
        case Applied(name, of):
            head = f"<m:funcPr>{_CONTROL}</m:funcPr><m:fName>{render_element(name)}</m:fName>"
            return f"<m:func>{head}<m:e>{render_element(of)}</m:e></m:func>"


def _render_run(words: Words) -> str:
    style = _UPRIGHT if words.kind == "upright" else ""
    return f'<m:r>{style}{_FONT}<m:t xml:space="preserve">{escape(words.text)}</m:t></m:r>'


def _render_script(node: Script) -> str:
    below = f"<m:sub>{render_element(node.below)}</m:sub>" if node.below is not None else ""
    above = f"<m:sup>{render_element(node.above)}</m:sup>" if node.above is not None else ""
    name = "sSubSup" if below and above else "sSub" if below else "sSup"
    return (
        f"<m:{name}><m:{name}Pr>{_CONTROL}</m:{name}Pr><m:e>{render_element(node.base)}</m:e>{below}{above}</m:{name}>"
    )
