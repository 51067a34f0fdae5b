"""Letterheads that act, fetch, or cost: fields, pictures, relationships, tracked changes, parts, bombs."""

import io
import random
import zipfile
from collections.abc import Callable

from tests.attack.attempt import Attempt
from tests.attack.classes._projects import dump, small
from tests.formats.docx.letterheads import MAIN_LINKS, SPACES, document, drawing, firm, header, links, section, words
from tests.running import words_of_build
from tests.support import EXAMPLES

Parts = dict[str, str | bytes | None]

FIELDS = [
    'DDE cmd "/c calc" x',
    'DDEAUTO c:\\\\x "y"',
    'INCLUDETEXT "https://example.com/a"',
    'INCLUDEPICTURE "\\\\\\\\h\\\\a.png"',
    "LINK Excel.Sheet.8 a b",
    "MACROBUTTON x y",
    "AUTOTEXT a",
    'HYPERLINK "javascript:1"',
    "DATE",
    "TIME",
    "FILENAME",
    "USERNAME",
    "QUOTE 1",
    "SET a b",
    "REF a",
    "IF 1 = 1 a b",
    "EMBED x",
    "IMPORT a",
    "ASK a",
    "FILLIN a",
    "DATABASE a",
    "=1+1",
    "PRINT x",
    "GOTOBUTTON a",
    "PAGE",
    "NUMPAGES",
    "page",
    " \u00a0DDE a",
    "D\tDE a",
    "STYLEREF DDE",
]
TARGETS = [
    "javascript:alert(1)",
    "file:///etc/passwd",
    "\\\\host\\a",
    "data:text/html,x",
    "vbscript:x",
    "https://example.com/a",
    "ftp://h/a",
    "mailto:a@example.com",
    " javascript:1",
    "JaVaScRiPt:1",
    "http:\\\\h",
    "//host/a",
    "ms-word:x",
    "",
]
KINDS = [
    "image",
    "hyperlink",
    "attachedTemplate",
    "oleObject",
    "subDocument",
    "frame",
    "externalLink",
    "video",
    "aFChunk",
    "font",
    "package",
    "control",
]
FALSE_PICTURES = [
    b"MZ\x90\0" * 50,
    b"<html><script>1</script></html>",
    b'<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>',
    b"%PDF-1.7",
    b"PK\3\4" * 9,
    b"#!/bin/sh\n",
    b"",
    b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" * 9,
    b"\x89PNG\r\n\x1a\n",
]
BUILD = (*words_of_build("project.yaml", "out", "docx"), "--draft", "--letterhead", "firm.docx")


def draw(chance: random.Random) -> Attempt:
    """One letterhead, built with."""
    make = chance.choice(MAKERS)
    about, content = make(chance)
    files = {"project.yaml": dump(small()), "firm.docx": content}
    return Attempt(f"{make.__name__.strip('_')}: {about}"[:120], BUILD, files)


def _field(chance: random.Random) -> tuple[str, bytes]:
    words_of = chance.choice(FIELDS)
    said = words_of.replace("&", "&amp;").replace('"', "&quot;")
    mark = '<w:r><w:fldChar w:fldCharType="{}"/></w:r>'
    at = chance.randint(0, len(words_of))
    pieces = "".join(
        f"<w:r><w:instrText>{piece}</w:instrText></w:r>"
        for piece in (words_of[:at].replace('"', "&quot;"), words_of[at:].replace('"', "&quot;"))
    )
    complex_ = mark.format("begin") + pieces + mark.format("separate") + words("x") + mark.format("end")
    simple = f'<w:fldSimple w:instr="{said}">{words("x")}</w:fldSimple>'
    nested = mark.format("begin") + complex_ + mark.format("end")
    unclosed = mark.format("begin") + pieces
    inner = chance.choice(
        [complex_, simple, nested, unclosed, f"<w:ins>{complex_}</w:ins>", f"<w:smartTag>{simple}</w:smartTag>"]
    )
    text = f"<v:textbox><w:txbxContent><w:p>{inner}</w:p></w:txbxContent></v:textbox>"
    box = f"<w:r><w:pict><v:shape>{text}</v:shape></w:pict></w:r>"
    return words_of, firm({"word/header1.xml": header(chance.choice([inner, box]))})


def _relationship(chance: random.Random) -> tuple[str, bytes]:
    kind, target = chance.choice(KINDS), chance.choice(TARGETS)
    entry = links(("image", "media/image1.png"), (kind, target))
    if chance.random() < 0.8:
        entry = entry.replace('Id="rId2"', 'Id="rId2" TargetMode="External"').replace(
            'TargetMode="External" TargetMode', "TargetMode"
        )
        entry = entry.replace('TargetMode="External"/>', 'TargetMode="External"/>')
    inner = chance.choice(
        [
            f'<w:hyperlink r:id="rId2">{words("x")}</w:hyperlink>',
            drawing('r:link="rId2"'),
            drawing('r:embed="rId1" r:link="rId2"'),
            '<w:r><w:object><o:OLEObject Type="Link" ProgID="x" r:id="rId2"/></w:object></w:r>',
            '<w:r><w:pict><v:shape><v:imagedata r:id="rId2" r:href="rId2"/></v:shape></w:pict></w:r>',
            '<w:altChunk r:id="rId2"/>',
            "",
        ]
    )
    return f"{kind} {target!a}", firm({"word/_rels/header1.xml.rels": _once(entry), "word/header1.xml": header(inner)})


def _once(entry: str) -> str:
    """A part of relationships in which no attribute stands twice."""
    return entry.replace('TargetMode="External" Type', "Type", 1) if entry.count("TargetMode") > 1 else entry


def _vml(chance: random.Random) -> tuple[str, bytes]:
    target = chance.choice(TARGETS)
    shape = chance.choice(
        [
            f'<v:shape href="{target}"/>',
            f'<v:shape><v:imagedata src="{target}"/></v:shape>',
            f'<v:shape><v:imagedata o:href="{target}"/></v:shape>',
            f'<v:rect><v:fill src="{target}" o:href="{target}" o:althref="{target}"/></v:rect>',
            f'<v:group href="{target}"><v:stroke src="{target}"/></v:group>',
        ]
    )
    return shape[:60], firm({"word/header1.xml": header(f"<w:r><w:pict>{shape}</w:pict></w:r>")})


def _picture(chance: random.Random) -> tuple[str, bytes]:
    content = chance.choice(FALSE_PICTURES)
    return repr(content[:12]), firm({"word/media/image1.png": content})


def _cost(chance: random.Random) -> tuple[str, bytes]:
    number = chance.choice([1_000, 30_000, 100_000])
    inner = chance.choice(
        [
            "<w:ins>" * 1_000 + words("x") + "</w:ins>" * 1_000,
            f"<w:ins>{words('x')}</w:ins>" * number,
            f"<w:del><w:r><w:delText>x</w:delText></w:r></w:del>{words('x')}" * (number // 2),
            words("x") * number,
            drawing() * (number // 100),
            '<w:fldSimple w:instr="PAGE"/>' * number,
            "<w:sdt><w:sdtContent>" * 500 + words("x") + "</w:sdtContent></w:sdt>" * 500,
        ]
    )
    return f"{inner[:30]} {number}", firm({"word/header1.xml": header(inner)})


def _bomb(chance: random.Random) -> tuple[str, bytes]:
    megabytes = chance.choice([1, 36, 300])
    name = chance.choice(
        [
            "word/document.xml",
            "word/header1.xml",
            "word/styles.xml",
            "word/media/image1.png",
            "x.bin",
            "[Content_Types].xml",
        ]
    )
    entities = (
        '<!DOCTYPE a [<!ENTITY a "xxxxxxxxxx">'
        + "".join(f'<!ENTITY a{n} "{f"&a{n - 1};" * 9 if n > 1 else "&a;" * 9}">' for n in range(1, 12))
        + "]>"
    )
    contents: list[tuple[str, str | bytes]] = [
        ("blanks", b"<a>" + b" " * (megabytes << 20) + b"</a>"),
        ("elements", b"<a>" + b"<b/>" * (megabytes << 18) + b"</a>" if megabytes < 100 else b""),
        ("entities", entities + f"<w:hdr {SPACES}><w:p><w:r><w:t>&a11;</w:t></w:r></w:p></w:hdr>"),
        ("a foreign entity", '<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/passwd">]>' + header(words("&x;"))),
        ("deep", b"<a>" * 100_000 + b"</a>" * 100_000),
        ("no XML", chance.randbytes(500)),
    ]
    about, content = chance.choice(contents)
    return f"{name} {about} {megabytes}", _packed({name: content})


def _packed(changes: Parts) -> bytes:
    """The plain firm's file with these parts, well packed."""
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(firm(changes))) as plain, zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as out:
        for name in plain.namelist():
            out.writestr(name, plain.read(name))
    return made.getvalue()


def _part(chance: random.Random) -> tuple[str, bytes]:
    name = chance.choice(
        [
            "word/vbaProject.bin",
            "../../job/plan.txt",
            "/etc/x",
            "word/embeddings/a.bin",
            "word/activeX/a.xml",
            "word//x.xml",
            "a" * 300,
            "\x1b[2J",
            "word/header1.xml\n",
        ]
    )
    kept = links(*MAIN_LINKS, ("oleObject", name.replace("<", "").replace("\x1b", "").strip()))
    body = document(f"<w:p/>{section(references='')}")
    return name[:40], firm(
        {
            name: chance.randbytes(99),
            **chance.choice([{}, {"word/_rels/document.xml.rels": kept}, {"word/document.xml": body}]),
        }
    )


def _damaged(chance: random.Random) -> tuple[str, bytes]:
    content = chance.choice([firm(), (EXAMPLES / "own-face" / "letterhead.docx").read_bytes()])
    for _ in range(chance.randint(1, 5)):
        at = chance.randrange(len(content))
        content = (
            chance.choice([content[:at], content[:at] + chance.randbytes(3) + content[at + 3 :], content[at:]]) or b"PK"
        )
    return f"{len(content)} bytes", content


MAKERS: list[Callable[[random.Random], tuple[str, bytes]]] = [
    _field,
    _field,
    _relationship,
    _relationship,
    _vml,
    _picture,
    _cost,
    _bomb,
    _part,
    _damaged,
]
