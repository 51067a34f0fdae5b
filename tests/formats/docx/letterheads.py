"""Letterheads made for the tests: a plain firm's file as parts, with changes laid over it. The firm is invented."""

import io
import struct
import zipfile
import zlib
from pathlib import Path

W = "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
R = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
V, OFFICE = "urn:schemas-microsoft-com:vml", "urn:schemas-microsoft-com:office:office"
A = "http://schemas.openxmlformats.org/drawingml/2006/main"
WP = "http://schemas.openxmlformats.org/drawingml/2006/wordprocessingDrawing"
PIC = "http://schemas.openxmlformats.org/drawingml/2006/picture"
SPACES = f'xmlns:w="{W}" xmlns:r="{R}" xmlns:v="{V}" xmlns:o="{OFFICE}" xmlns:a="{A}" xmlns:wp="{WP}" xmlns:pic="{PIC}"'
TYPE = "application/vnd.openxmlformats-officedocument.wordprocessingml"
MACROS = "application/vnd.ms-word.document.macroEnabled.main+xml"
# Width and height of a page in twentieths of a point: 8.5 x 11 in (ASME Y14.1, size A), 210 x 297 mm (ISO 216, A4).
LETTER, A4 = (12240, 15840), (11906, 16838)
LANDSCAPE = LETTER[::-1]


def picture() -> bytes:
    """A small PNG of one color."""

    def chunk(kind: bytes, content: bytes) -> bytes:
        return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))

    head = struct.pack(">2I5B", 60, 20, 8, 2, 0, 0, 0)
    lines = zlib.compress((b"\0" + b"\x14\x3c\x5a" * 60) * 20)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", lines) + chunk(b"IEND", b"")


def drawing(link: str = 'r:embed="rId1"') -> str:
    """A picture in a line of text, without alternative text."""
    size = '<wp:extent cx="1440000" cy="480000"/>'
    shape = (
        '<pic:spPr><a:xfrm><a:off x="0" y="0"/><a:ext cx="1440000" cy="480000"/></a:xfrm>'
        '<a:prstGeom prst="rect"><a:avLst/></a:prstGeom></pic:spPr>'
    )
    inner = (
        '<pic:pic><pic:nvPicPr><pic:cNvPr id="1" name="logo"/><pic:cNvPicPr/></pic:nvPicPr>'
        f"<pic:blipFill><a:blip {link}/><a:stretch><a:fillRect/></a:stretch></pic:blipFill>{shape}</pic:pic>"
    )
    graphic = f'<a:graphic><a:graphicData uri="{PIC}">{inner}</a:graphicData></a:graphic>'
    return f'<w:r><w:drawing><wp:inline>{size}<wp:docPr id="1" name="logo"/>{graphic}</wp:inline></w:drawing></w:r>'


def words(text: str) -> str:
    return f"<w:r><w:t>{text}</w:t></w:r>"


def header(inner: str, tag: str = "hdr") -> str:
    return f"<w:{tag} {SPACES}><w:p>{inner}</w:p></w:{tag}>"


def section(size: tuple[int, int] | None = A4, more: str = "", references: str | None = None) -> str:
    if references is None:
        references = (
            '<w:headerReference w:type="default" r:id="rId2"/><w:footerReference w:type="default" r:id="rId3"/>'
        )
    page = ""
    if size:
        turned = ' w:orient="landscape"' if size[0] > size[1] else ""
        page = f'<w:pgSz w:w="{size[0]}" w:h="{size[1]}"{turned}/>'
        page += (
            '<w:pgMar w:top="1700" w:right="1100" w:bottom="1300" w:left="1500" w:header="600" w:footer="500" '
            'w:gutter="0"/>'
        )
    return f"<w:sectPr>{references}{page}{more}</w:sectPr>"


def document(inner: str) -> str:
    return f"<w:document {SPACES}><w:body>{inner}</w:body></w:document>"


def style(name: str, inner: str = "", kind: str = "paragraph", id_: str = "", default: str = "") -> str:
    given = id_ or name.title().replace(" ", "")
    return f'<w:style w:type="{kind}"{default} w:styleId="{given}"><w:name w:val="{name}"/>{inner}</w:style>'


FONT = '<w:rPr><w:rFonts w:ascii="Georgia" w:hAnsi="Georgia"/><w:lang w:val="de-DE"/></w:rPr>'
TABS = '<w:pPr><w:tabs><w:tab w:val="center" w:pos="4680"/><w:tab w:val="right" w:pos="9026"/></w:tabs></w:pPr>'
STYLES = (
    f"<w:docDefaults><w:rPrDefault>{FONT}</w:rPrDefault></w:docDefaults>"
    + style("Normal", default=' w:default="1"', id_="Standard")
    + style("heading 1", '<w:basedOn w:val="Standard"/><w:rPr><w:color w:val="1F3864"/></w:rPr>', id_="berschrift1")
    + style("header", f'<w:basedOn w:val="Standard"/>{TABS}', id_="Kopfzeile")
)


def links(*entries: tuple[str, str]) -> str:
    """Relationships in order, each kind and target; a target with `://` lies outside."""
    lines = ""
    for number, (kind, target) in enumerate(entries, 1):
        mode = ' TargetMode="External"' if "://" in target else ""
        lines += f'<Relationship Id="rId{number}" Type="{R}/{kind}" Target="{target}"{mode}/>'
    space = "http://schemas.openxmlformats.org/package/2006/relationships"
    return f'<Relationships xmlns="{space}">{lines}</Relationships>'


def types(main: str = f"{TYPE}.document.main+xml", **more: str) -> str:
    kinds = {"styles": "styles", "header1": "header", "footer1": "footer", "settings": "settings"}
    named = {f"/word/{part}.xml": f"{TYPE}.{kind}+xml" for part, kind in kinds.items()} | {"/word/document.xml": main}
    lines = "".join(f'<Override PartName="{name}" ContentType="{kind}"/>' for name, kind in (named | more).items())
    ends = '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    ends += '<Default Extension="xml" ContentType="application/xml"/><Default Extension="png" ContentType="image/png"/>'
    return f'<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">{ends}{lines}</Types>'


MAIN_LINKS = (
    ("styles", "styles.xml"),
    ("header", "header1.xml"),
    ("footer", "footer1.xml"),
    ("settings", "settings.xml"),
)


def settings(inner: str = "") -> str:
    return f"<w:settings {SPACES}>{inner}</w:settings>"


def firm(changes: dict[str, str | bytes | None] | None = None) -> bytes:
    """The bytes of an A4 letterhead with a picture in its header; `changes` are parts, None takes one out."""
    parts: dict[str, str | bytes | None] = {
        "[Content_Types].xml": types(),
        "_rels/.rels": links(("officeDocument", "word/document.xml")),
        "word/document.xml": document(f"<w:p/>{section()}"),
        "word/_rels/document.xml.rels": links(*MAIN_LINKS),
        "word/styles.xml": f"<w:styles {SPACES}>{STYLES}</w:styles>",
        "word/settings.xml": settings(),
        "word/header1.xml": header(drawing() + words("Sample Walls")),
        "word/_rels/header1.xml.rels": links(("image", "media/image1.png")),
        "word/footer1.xml": header(words("1 Nowhere Road"), "ftr"),
        "word/media/image1.png": picture(),
    }
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as out:
        for name, content in (parts | (changes or {})).items():
            if content is not None:
                out.writestr(name, content)
    return made.getvalue()


def kept(folder: Path, content: bytes, name: str = "firm.docx") -> Path:
    """The letterhead as a file."""
    file = folder / name
    file.write_bytes(content)
    return file
