"""A document as a Word file: python-docx opens the letterhead and keeps its parts, the body is our own text.

Same document, same bytes: no clock, no random ids, fixed dates in the zip.
"""

import io
import zipfile
from pathlib import Path
from typing import Any, cast

from docx import Document as open_docx
from docx.opc.package import OpcPackage
from docx.opc.packuri import PackURI
from docx.opc.pkgwriter import PackageWriter
from docx.oxml import parse_xml
from docx.oxml.ns import qn
from docx.oxml.xmlchemy import BaseOxmlElement, serialize_for_reading
from docx.parts.document import DocumentPart

from specgen.documents.no_break import keep_words
from specgen.formats.docx.body import Body
from specgen.formats.docx.elements import Element, find_required, read_whole_number
from specgen.formats.docx.letterhead import Letterhead, read_letterhead
from specgen.formats.docx.letterhead.page import measure_text_width
from specgen.formats.docx.letterhead.settings import is_on
from specgen.formats.docx.picture import Pictures
from specgen.formats.docx.run_text import render_text
from specgen.formats.docx.tabs import render_tab_stop
from specgen.formats.equation import omml
from specgen.formats.xml_text import encode_xml, quote, remove_non_xml
from specgen.model.block import Document

_DECLARED = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
_SPACES = " ".join(
    f'xmlns:{prefix}="{uri}"'
    for prefix, uri in {
        "w": "http://schemas.openxmlformats.org/wordprocessingml/2006/main",
        "r": "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
        "mc": "http://schemas.openxmlformats.org/markup-compatibility/2006",
        "m": omml.SPACE,
        "w14": "http://schemas.microsoft.com/office/word/2010/wordml",
    }.items()
)
# What makes a header or footer more than empty lines.
_HOLDS = "w:tbl | w:sdt | .//w:t | .//w:drawing | .//w:pict | .//w:instrText | .//w:fldSimple | .//w:pBdr"
# One list of a three-part document: part, article, A., 1., a.; and the list of any other document: 1., a.
_THREE_PART = (
    ("decimal", "PART %1", "heading 1", 0, 1100),
    ("decimalZero", "%1.%2", "heading 2", 0, 720),
    ("upperLetter", "%3.", "Item level 1", 432, 432),
    ("decimal", "%4.", "Item level 2", 864, 432),
    ("lowerLetter", "%5.", "Item level 3", 1296, 432),
)
_PLAIN = (("decimal", "%1.", "", 432, 432), ("lowerLetter", "%2.", "", 864, 432), ("lowerLetter", "%3.", "", 1296, 432))


def write_docx(document: Document, letterhead: Path) -> bytes:
    """The bytes of the Word file on a letterhead; raises Refused where that file cannot be used as one."""
    given = read_letterhead(letterhead)
    part = open_docx(io.BytesIO(given.content)).part
    section: BaseOxmlElement = part.element.body.sectPr
    _turn_page(section, document.landscape)
    width = measure_text_width(section, is_on(part.settings.element, "w:gutterAtTop"))
    body = Body(document, given, width, Pictures(part, width))
    # The body is never parsed: it goes into the zip as the text it was built as.
    text = "".join(body.render()) + serialize_for_reading(section)
    whole = f'{_DECLARED}<w:document {_SPACES} mc:Ignorable="w14"><w:body>{text}</w:body></w:document>'
    part.numbering_part._element = parse_xml(_render_numbering(document, given.styles, len(body.runs)))
    _add_running_lines(part, section, document, given, width)
    part.core_properties.title = remove_non_xml(f"{document.project}: {document.title}")[:255]
    return _zip_package(part.package, {part.partname: encode_xml(whole)})


def _turn_page(section: Element, landscape: bool) -> None:
    """Turn the page where the document is landscape."""
    size = find_required(section, "w:pgSz")
    wide, high = read_whole_number(size, "w:w"), read_whole_number(size, "w:h")
    if landscape and wide < high:
        size.set(qn("w:w"), str(high))
        size.set(qn("w:h"), str(wide))
        size.set(qn("w:orient"), "landscape")


def _render_numbering(document: Document, styles: dict[str, str], lists: int) -> str:
    levels = _THREE_PART if document.numbering == "three_part" else _PLAIN
    abstract = "".join(_render_level(n, level, styles) for n, level in enumerate(levels))
    kind = '<w:multiLevelType w:val="multilevel"/>'
    numbers = '<w:num w:numId="1"><w:abstractNumId w:val="0"/></w:num>'
    restart = '<w:lvlOverride w:ilvl="0"><w:startOverride w:val="1"/></w:lvlOverride>'
    numbers += "".join(f'<w:num w:numId="{n + 2}"><w:abstractNumId w:val="0"/>{restart}</w:num>' for n in range(lists))
    listed = f'<w:abstractNum w:abstractNumId="0">{kind}{abstract}</w:abstractNum>'
    return f"<w:numbering {_SPACES}>{listed}{numbers}</w:numbering>"


def _render_level(number: int, level: tuple[str, str, str, int, int], styles: dict[str, str]) -> str:
    form, text, style, left, hanging = level
    tied = f"<w:pStyle w:val={quote(styles[style])}/>" if style.startswith("heading") else ""
    indent = f'<w:ind w:left="{left or hanging}" w:hanging="{hanging}"/>'
    return (
        f'<w:lvl w:ilvl="{number}"><w:start w:val="1"/><w:numFmt w:val="{form}"/>{tied}<w:lvlText w:val="{text}"/>'
        f'<w:lvlJc w:val="left"/><w:pPr>{indent}</w:pPr></w:lvl>'
    )


def _add_running_lines(part: DocumentPart, section: Element, document: Document, given: Letterhead, width: int) -> None:
    """Add what every page repeats: project and document above, section and page count below, a draft mark."""
    left, right = (keep_words(remove_non_xml(text)) for text in document.running)
    # A header that grows beyond the margin pushes the text down and keeps its distance.
    apart = '<w:spacing w:after="120"/>'
    style, tabs = given.styles["Running line"], render_tab_stop(given.stops["Running line"], width, "right")
    named = _render_words(left) + "<w:r><w:tab/></w:r>" + _render_words(right)
    above = [_render_line(style, tabs + ("" if document.draft else apart), named)]
    if document.draft:
        apart = '<w:spacing w:before="80" w:after="120"/>'
        above.append(_render_line(given.styles["Draft mark"], apart, _render_words("DRAFT, NOT FOR SUBMISSION")))
    for reference in section.iterchildren(qn("w:headerReference"), qn("w:footerReference")):
        running: BaseOxmlElement = part.related_parts[reference.get(qn("r:id"))].element
        counted = any("NUMPAGES" in words for words in _list_fields(running))
        dated = _render_words(keep_words(remove_non_xml(document.foot or document.date))) + (
            "" if counted else f"<w:r><w:tab/></w:r>{_PAGES}"
        )
        if not running.xpath(_HOLDS):
            running[:] = []
        if reference.tag == qn("w:headerReference"):
            running.extend(parse_xml(line) for line in above)
        else:
            # Above the firm's own footer, next to the text as in the header; a table needs a paragraph behind it.
            running.insert(0, parse_xml(_render_line(style, tabs, dated)))
            if running[-1].tag != qn("w:p"):
                running.append(parse_xml(_render_line(style, "", "")))


def _list_fields(running: Element) -> list[str]:
    """The instructions of the fields in a header or footer."""
    simple = [field.get(qn("w:instr"), "") for field in running.iter(qn("w:fldSimple"))]
    return simple + [node.text or "" for node in running.iter(qn("w:instrText"))]


def _render_line(style: str, properties: str, runs: str) -> str:
    return f"<w:p {_SPACES}><w:pPr><w:pStyle w:val={quote(style)}/>{properties}</w:pPr>{runs}</w:p>"


def _render_words(text: str) -> str:
    return f"<w:r>{render_text(text)}</w:r>"


def _render_count(field: str) -> str:
    return f'<w:fldSimple w:instr=" {field} "><w:r><w:t>1</w:t></w:r></w:fldSimple>'


_PAGES = _render_words("Page ") + _render_count("PAGE") + _render_words(" of ") + _render_count("NUMPAGES")


class _Zip:
    """The package writer's zip, with fixed dates."""

    def __init__(self) -> None:
        self.buffer = io.BytesIO()
        self.zip = zipfile.ZipFile(self.buffer, "w", zipfile.ZIP_DEFLATED, compresslevel=6)

    def write(self, name: PackURI, content: bytes) -> None:
        """Add a part."""
        info = zipfile.ZipInfo(name.membername, (1980, 1, 1, 0, 0, 0))
        info.compress_type = zipfile.ZIP_DEFLATED
        self.zip.writestr(info, content, compresslevel=6)


def _zip_package(package: OpcPackage, texts: dict[PackURI, bytes]) -> bytes:
    """The package as a zip; `texts` replace the parts of the same name."""
    out, writer = _Zip(), cast(Any, PackageWriter)
    writer._write_content_types_stream(out, package.parts)
    writer._write_pkg_rels(out, package.rels)
    for part in package.parts:
        out.write(part.partname, texts.get(part.partname) or part.blob)
        if len(part.rels):
            out.write(part.partname.rels_uri, part.rels.xml)
    out.zip.close()
    return out.buffer.getvalue()
