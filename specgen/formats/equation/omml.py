"""An equation as Office Math Markup: ECMA-376 part 1, section 22.1, written as text of the document's body."""

from specgen.formats.equation.expression import Applied, Fence, Node, Ratio, Root, Row, Script, Words, tree
from specgen.formats.xml_text import escaped, quoted

SPACE = "http://schemas.openxmlformats.org/officeDocument/2006/math"
_FONT = '<w:rPr><w:rFonts w:ascii="Cambria Math" w:hAnsi="Cambria Math"/></w:rPr>'
_CONTROL = f"<m:ctrlPr>{_FONT}</m:ctrlPr>"
# Upright words are normal text of the equation; variables take the slanted style that is the rule there.
_UPRIGHT = "<m:rPr><m:nor/></m:rPr>"


def inline(expression: str) -> str:
    """A symbol or expression within a paragraph."""
    return f"<m:oMath>{element(tree(expression))}</m:oMath>"


def display(line: Row) -> str:
    """A line of an equation that fills a paragraph, at the left."""
    # A line that begins with its sign would lack what stands before it; a space takes that place.
    empty = _run(Words("\u2003", "upright")) if line.parts[0] == Words("=", "operator") else ""
    properties = '<m:oMathParaPr><m:jc m:val="left"/></m:oMathParaPr>'
    return f"<m:oMathPara>{properties}<m:oMath>{empty}{element(line)}</m:oMath></m:oMathPara>"


def element(node: Node) -> str:
    """The elements of a tree."""
    match node:
        case Words():
            return _run(node)
        case Row(parts):
            return "".join(map(element, parts))
        case Ratio(over, under):
            head = f"<m:fPr>{_CONTROL}</m:fPr>"
            return f"<m:f>{head}<m:num>{element(over)}</m:num><m:den>{element(under)}</m:den></m:f>"
        case Script():
            return _script(node)
        case Root(of):
            head = f'<m:radPr><m:degHide m:val="1"/>{_CONTROL}</m:radPr><m:deg/>'
            return f"<m:rad>{head}<m:e>{element(of)}</m:e></m:rad>"
        case Fence(of, begin, end):
            signs = f"<m:begChr m:val={quoted(begin)}/><m:endChr m:val={quoted(end)}/>"
            return f"<m:d><m:dPr>{signs}{_CONTROL}</m:dPr><m:e>{element(of)}</m:e></m:d>"
        case Applied(name, of):
            head = f"<m:funcPr>{_CONTROL}</m:funcPr><m:fName>{element(name)}</m:fName>"
            return f"<m:func>{head}<m:e>{element(of)}</m:e></m:func>"


def _run(words: Words) -> str:
    style = _UPRIGHT if words.kind == "upright" else ""
    return f'<m:r>{style}{_FONT}<m:t xml:space="preserve">{escaped(words.text)}</m:t></m:r>'


def _script(node: Script) -> str:
    below = f"<m:sub>{element(node.below)}</m:sub>" if node.below is not None else ""
    above = f"<m:sup>{element(node.above)}</m:sup>" if node.above is not None else ""
    name = "sSubSup" if below and above else "sSub" if below else "sSup"
    return f"<m:{name}><m:{name}Pr>{_CONTROL}</m:{name}Pr><m:e>{element(node.base)}</m:e>{below}{above}</m:{name}>"
