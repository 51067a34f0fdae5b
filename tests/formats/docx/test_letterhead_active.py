"""What in a letterhead would act, fetch or change by itself is left out of every Word file, and told once.

Names of fields are those of ECMA-376 part 1, 17.16.5; what is done with each is ours.
"""

import io
import re
import zipfile
from pathlib import Path
from typing import Any

import docx
import pytest
from lxml import etree

from specgen.formats.docx import word_file as writer
from specgen.formats.docx.letterhead import read_letterhead
from tests.documents.support import document_of
from tests.formats.docx import letterheads as made

HEADER, FOOTER, RELS = "word/header1.xml", "word/footer1.xml", "word/_rels/header1.xml.rels"
W = f"{{{made.W}}}"
WPS = "http://schemas.microsoft.com/office/word/2010/wordprocessingShape"


def mark(kind: str) -> str:
    return f'<w:r><w:fldChar w:fldCharType="{kind}"/></w:r>'


def code(text: str) -> str:
    return f'<w:r><w:instrText xml:space="preserve">{text}</w:instrText></w:r>'


def simple(text: str, shown: str = "") -> str:
    quoted = text.replace('"', "&quot;")
    return f'<w:fldSimple w:instr="{quoted}">{made.words(shown)}</w:fldSimple>'


def spread(text: str, shown: str = "") -> str:
    """A field of several runs, its instruction cut into three."""
    third = len(text) // 3
    cut = "".join(code(part) for part in (text[:third], text[third : 2 * third], text[2 * third :]))
    return mark("begin") + cut + mark("separate") + made.words(shown) + mark("end")


def vml_box(inner: str) -> str:
    text = f"<w:txbxContent><w:p>{inner}</w:p></w:txbxContent>"
    return f'<w:r><w:pict><v:shape id="b" style="width:9pt"><v:textbox>{text}</v:textbox></v:shape></w:pict></w:r>'


def drawn_box(inner: str) -> str:
    text = f"<w:txbxContent><w:p>{inner}</w:p></w:txbxContent>"
    shape = f'<wps:wsp xmlns:wps="{WPS}"><wps:cNvSpPr/><wps:spPr/><wps:txbx>{text}</wps:txbx><wps:bodyPr/></wps:wsp>'
    size = '<wp:extent cx="1" cy="1"/><wp:docPr id="3" name="box"/>'
    graphic = f'<a:graphic><a:graphicData uri="{WPS}">{shape}</a:graphicData></a:graphic>'
    return f"<w:r><w:drawing><wp:inline>{size}{graphic}</wp:inline></w:drawing></w:r>"


def in_table(inner: str) -> str:
    """A cell within a paragraph's place: the paragraph of `header` is closed before it and opened again behind it."""
    return f"</w:p><w:tbl><w:tblPr/><w:tblGrid/><w:tr><w:tc><w:p>{inner}</w:p></w:tc></w:tr></w:tbl><w:p>"


PLACES = {
    "a line": str,
    "a table": in_table,
    "a box of VML": vml_box,
    "a box of DrawingML": drawn_box,
    "a link": lambda inner: f"<w:hyperlink>{inner}</w:hyperlink>",
    "a tracked insertion": lambda inner: f'<w:ins w:id="1" w:author="A">{inner}</w:ins>',
    "a content control": lambda inner: f"<w:sdt><w:sdtContent>{inner}</w:sdtContent></w:sdt>",
}
ACTIVE = [
    'DDEAUTO c:\\windows\\system32\\cmd.exe "/k calc"', 'DDE "excel" "a" "b"', 'INCLUDETEXT "http://x.example/a.docx"',
    'INCLUDEPICTURE "\\\\host\\share\\a.png" \\d', 'LINK Excel.Sheet.8 "c:\\a.xls"', "MACROBUTTON Run press",
    "AUTOTEXT hello", 'HYPERLINK "javascript:alert(1)"', 'HYPERLINK "https://x.example/"', "DATE", "TIME \\@ HH",
    "FILENAME \\p", "USERNAME", "SAVEDATE", "DATABASE", "IMPORT x", "QUOTE a", "= 1 + 1", "GOTOBUTTON a b", "FORMTEXT",
    "PAGE DDE a b", 'PAGE \\* "DDE"', 'STYLEREF "a" DDEAUTO b c', "PAGEREF a \\h", "PAGES", "EMBED x", "",
]  # fmt: skip
QUIET = {
    " page ": "page",
    "PAGE \\* MERGEFORMAT": "PAGE \\* MERGEFORMAT",
    "NUMPAGES": "NUMPAGES",
    'SECTIONPAGES  \\# "00"': 'SECTIONPAGES \\# "00"',
    'STYLEREF "heading 1" \\n \\* MERGEFORMAT': 'STYLEREF "heading 1" \\n \\* MERGEFORMAT',
    "STYLEREF 1 \\r": "STYLEREF 1 \\r",
}


def parts(content: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(content)) as zipped:
        return {name: zipped.read(name) for name in zipped.namelist()}


def build(folder: Path, changes: dict[str, Any]) -> dict[str, bytes]:
    """The parts of a form on the firm's paper with these changes."""
    return parts(writer.write_docx(document_of("clean", "D10"), made.kept(folder, made.firm(changes))))


def running(made_parts: dict[str, bytes], word: str = "header") -> Any:
    return etree.fromstring(made_parts[f"word/{word}-default.xml"])


def fields(root: Any) -> list[str]:
    """The instructions of all fields: each `fldSimple`, and each stretch of `instrText` up to the next mark."""
    found = [node.get(f"{W}instr").strip() for node in root.iter(f"{W}fldSimple")]
    stretch = ""
    for node in root.iter(f"{W}fldChar", f"{W}instrText"):
        if node.tag == f"{W}instrText":
            stretch += node.text or ""
        elif stretch:
            found.append(stretch.strip())
            stretch = ""
    return found + [stretch] * bool(stretch)


def notes(folder: Path, changes: dict[str, Any]) -> tuple[str, ...]:
    return read_letterhead(made.kept(folder, made.firm(changes))).notes


def balanced(root: Any) -> bool:
    kinds = [node.get(f"{W}fldCharType") for node in root.iter(f"{W}fldChar")]
    return kinds.count("begin") == kinds.count("end")


@pytest.mark.parametrize("form", [simple, spread])
@pytest.mark.parametrize("place", PLACES)
def test_every_field_but_the_quiet_ones_becomes_the_words_it_showed(tmp_path: Path, place: str, form: Any) -> None:
    inner = "".join(form(text.replace("&", "&amp;"), f"shown {number}. ") for number, text in enumerate(ACTIVE))
    for file, word in ((HEADER, "header"), (FOOTER, "footer")):
        changes = {file: made.header(PLACES[place](inner), "hdr" if word == "header" else "ftr"), RELS: None}
        root = running(build(tmp_path, changes), word)
        assert set(fields(root)) <= {"PAGE", "NUMPAGES"}
        assert not set(re.findall("(?i)DDE|javascript|INCLUDE|MACRO", etree.tostring(root).decode()))
        assert "".join(f"shown {number}. " for number in range(len(ACTIVE))) in root.xpath("string(.)")
        (told,) = [note for note in notes(tmp_path, changes) if note.startswith("fields")]
        assert told.startswith("fields of the letterhead became the words they showed: DDEAUTO, DDE, INCLUDETEXT")
        assert told.count("HYPERLINK") == 1
        assert told.endswith(" and others")


@pytest.mark.parametrize("form", [simple, spread])
@pytest.mark.parametrize("place", PLACES)
def test_fields_that_count_pages_or_name_a_heading_stay(tmp_path: Path, place: str, form: Any) -> None:
    changes = {HEADER: made.header(PLACES[place]("".join(form(text, "7") for text in QUIET))), RELS: None}
    root = running(build(tmp_path, changes))
    assert fields(root) == list(QUIET.values())
    assert not [note for note in notes(tmp_path, changes) if note.startswith("fields")]


# A field within the instruction of another shows nowhere; one within its words stays if it is a quiet one.
NESTED = [
    (mark("begin") + code("IF ") + spread("PAGE", "1") + code(' = 1 "a" "b"') + mark("separate") + made.words("b")
     + mark("end"), [], "b"),
    (mark("begin") + code('HYPERLINK "javascript:x"') + mark("separate") + made.words("p ") + spread("PAGE", "1")
     + mark("end"), ["PAGE"], "p 1"),
    (mark("begin") + code("PAGE \\* ") + spread("QUOTE DDE", "x") + mark("separate") + made.words("4") + mark("end"),
     [], "4"),
    (mark("begin") + code("DA") + made.words("hidden") + code("TE") + mark("end"), [], ""),
    (mark("begin") + code("QUOTE ") + simple("DDE a b", "x") + mark("separate") + made.words("y") + mark("end"),
     [], "y"),
    (simple("LINK a", "") .replace("</w:fldSimple>", simple("PAGE", "2") + "</w:fldSimple>"), ["PAGE"], "2"),
    (mark("separate") + code("DDE a b") + mark("end") + made.words("z"), [], "z"),
    (mark("begin") + code("PAGE") + made.words("w"), [], "w"),
    (mark("begin") + code("PAGE") + mark("separate") + code(" DDE a b") + made.words("3") + mark("end"),
     ["PAGE"], "3"),
]  # fmt: skip


@pytest.mark.parametrize(("inner", "kept", "shown"), NESTED)
def test_fields_within_fields_are_settled_from_the_inside(
    tmp_path: Path, inner: str, kept: list[str], shown: str
) -> None:
    root = running(build(tmp_path, {HEADER: made.header("<w:r><w:t>[</w:t></w:r>" + inner + made.words("]"))}))
    assert fields(root) == kept
    assert balanced(root)
    words = root.xpath("string(/*)", namespaces={"w": made.W})
    assert f"[{shown}]" in "".join(t.text or "" for t in root.iter(f"{W}t")), words


def test_the_marks_of_a_field_carry_no_data_and_no_macro(tmp_path: Path) -> None:
    data = '<w:ffData><w:name w:val="x"/><w:entryMacro w:val="Run"/></w:ffData><w:fldData>AAAA</w:fldData>'
    begin = f'<w:r><w:fldChar w:fldCharType="begin" w:dirty="true" w:fldLock="1">{data}</w:fldChar></w:r>'
    inner = begin + code("PAGE") + mark("separate") + made.words("1") + mark("end")
    root = running(build(tmp_path, {HEADER: made.header(inner)}))
    assert fields(root) == ["PAGE"]
    assert all(len(node) == 0 and len(node.attrib) == 1 for node in root.iter(f"{W}fldChar"))


ADDRESSES = {
    "https://walls.example/": True, "http://walls.example": True, "mailto:a@walls.example": True,
    "HTTPS://WALLS.EXAMPLE/": True, "javascript:alert(1)": False, "file:///c:/a.exe": False, "\\\\host\\share": False,
    "//host/share": False, "data:text/html,x": False, "ms-word:ofe|u|http://x": False, "vbscript:x": False,
    "c:\\a.exe": False, "http:\\\\host\\a": False, " javascript:x": False, "ftp://a.example/": False, "https://": False,
    "a.docx": False,
}  # fmt: skip
OUTSIDE = "http://schemas.openxmlformats.org/package/2006/relationships"


def linked(*rows: tuple[str, str]) -> str:
    lines = "".join(
        f'<Relationship Id="rId{n}" Type="{made.R}/{kind}" Target="{target}" TargetMode="External"/>'
        for n, (kind, target) in enumerate(rows, 1)
    )
    return f'<Relationships xmlns="{OUTSIDE}">{lines}</Relationships>'


def leads_to(made_parts: dict[str, bytes]) -> list[str]:
    """Every address outside that any part of a Word file leads to."""
    roots = [etree.fromstring(content) for name, content in made_parts.items() if name.endswith(".rels")]
    return [link.get("Target") for root in roots for link in root if link.get("TargetMode") == "External"]


@pytest.mark.parametrize(("address", "kept"), ADDRESSES.items())
def test_links_lead_to_web_pages_and_mailboxes_only(tmp_path: Path, address: str, kept: bool) -> None:
    shape = f'<w:r><w:pict><v:shape id="s" href="{address}" target="_top"/></w:pict></w:r>'
    inner = f'<w:hyperlink r:id="rId1" w:docLocation="{address}">{made.words("Walls")}</w:hyperlink>{shape}'
    changes = {HEADER: made.header(inner), RELS: linked(("hyperlink", address))}
    whole = build(tmp_path, changes)
    assert leads_to(whole) == [address] * kept
    root = running(whole)
    assert "Walls" in root.xpath("string(.)")
    assert [node.get("href") for node in root.iter(f"{{{made.V}}}shape")] == [address if kept else None]
    assert address not in etree.tostring(root).decode() or kept
    told = ("links to files or programs of the letterhead are left out",)
    assert notes(tmp_path, changes) == (() if kept else told)


FAR = "http://far.example/a.png"
REMOTE = {
    "VML src": f'<w:r><w:pict><v:shape><v:imagedata src="{FAR}"/></v:shape></w:pict></w:r>',
    "VML o:href": f'<w:r><w:pict><v:shape><v:imagedata o:href="{FAR}"/></v:shape></w:pict></w:r>',
    "VML r:href": '<w:r><w:pict><v:shape><v:imagedata r:href="rId1"/></v:shape></w:pict></w:r>',
    "VML r:id": '<w:r><w:pict><v:shape><v:imagedata r:id="rId1"/></v:shape></w:pict></w:r>',
    "DrawingML": made.drawing('r:link="rId1"'),
    "DrawingML embedded": made.drawing('r:embed="rId1"'),
    "VML fill": f'<w:r><w:pict><v:rect><v:fill src="{FAR}" o:href="{FAR}" r:id="rId1"/></v:rect></w:pict></w:r>',
    "a tag of the web": f'<w:r><x:img xmlns:x="http://www.w3.org/1999/xhtml" src="{FAR}"/></w:r>',
    "a script": '<w:r><w:pict><v:shape onmouseover="x()"><o:script>x()</o:script></v:shape></w:pict></w:r>',
    "a moving picture": '<w:r><w:movie r:id="rId1"/></w:r>',
    "a part of the body": '<w:altChunk r:id="rId1"/>',
    "gfxdata": f'<w:r><w:pict><v:shape o:gfxdata="{FAR}" equationxml="{FAR}" style="a:url({FAR})"/></w:pict></w:r>',
    "another drawing": '<w:r><w:drawing><a:graphic><a:graphicData uri="urn:a"/></a:graphic></w:drawing></w:r>',
    "a strict link": '<w:r><w:pict xmlns:q="http://purl.oclc.org/ooxml/officeDocument/relationships">'
    '<v:shape><v:imagedata q:id="rId1"/></v:shape></w:pict></w:r>',
}  # fmt: skip


@pytest.mark.parametrize("kind", REMOTE)
def test_nothing_is_fetched_from_elsewhere(tmp_path: Path, kind: str) -> None:
    changes = {HEADER: made.header(REMOTE[kind] + made.words("Walls")), RELS: linked(("image", FAR))}
    whole = build(tmp_path, changes)
    assert leads_to(whole) == []
    head = b"".join(content for name, content in whole.items() if "header" in name or name.endswith(".rels"))
    assert not re.search(
        b"far.example|script|mouse|altChunk|movie|purl.oclc.org/ooxml/officeDoc", head.split(b">", 2)[2]
    )
    assert "Walls" in running(whole).xpath("string(.)")
    if kind != "gfxdata":
        (told,) = notes(tmp_path, changes)
        assert told.endswith(" of the letterhead are left out")


def test_what_a_style_or_a_color_scheme_may_not_hold_is_left_out(tmp_path: Path) -> None:
    foreign = f'<x:a xmlns:x="urn:x" src="{FAR}"/>'
    theme = f'<a:theme xmlns:a="{made.A}" xmlns:r="{made.R}" name="Firm"><a:blip r:link="rId1"/>{foreign}</a:theme>'
    changes = {
        "word/styles.xml": f'<w:styles {made.SPACES} o:href="{FAR}">{made.STYLES}{foreign}</w:styles>',
        "word/settings.xml": made.settings(f'<w:defaultTabStop w:val="720" r:id="rId1" o:href="{FAR}"/>'),
        "word/theme.xml": theme,
        "word/_rels/theme.xml.rels": linked(("image", FAR)),
        "word/_rels/document.xml.rels": made.links(*made.MAIN_LINKS, ("theme", "theme.xml")),
    }
    whole = build(tmp_path, changes)
    assert leads_to(whole) == []
    assert not [name for name, content in whole.items() if b"far.example" in content]
    assert b'name="Firm"' in whole["word/theme/theme1.xml"]
    assert b'w:defaultTabStop w:val="720"/>' in whole["word/settings.xml"]


def test_a_picture_with_a_copy_at_hand_and_one_elsewhere_stays(tmp_path: Path) -> None:
    inner = made.drawing('r:embed="rId1" r:link="rId2"')
    changes = {HEADER: made.header(inner), RELS: made.links(("image", "media/image1.png"), ("image", FAR))}
    whole = build(tmp_path, changes)
    assert leads_to(whole) == []
    (blip,) = running(whole).iter(f"{{{made.A}}}blip")
    assert [key.rpartition("}")[2] for key in blip.attrib] == ["embed"]


# First bytes by the standards of the kinds: PNG ISO/IEC 15948 5.2, JPEG ISO/IEC 10918-1 B.1, GIF89a 17, TIFF 6.0
# section 2, BMP and the two metafiles from memory of their published specifications.
GOOD = {
    "png": b"\x89PNG\r\n\x1a\n",
    "jpeg": b"\xff\xd8\xff\xe0\0\x10JFIF",
    "gif": b"GIF89a\1\0\1\0",
    "tiff": b"II*\0\x08\0\0\0",
    "bmp": b"BM" + b"\x46\0\0\0" + bytes(4) + b"\x36\0\0\0\x28\0\0\0",
    "x-emf": b"\1\0\0\0\x6c\0\0\0" + bytes(32) + b" EMF",
    "x-wmf": b"\xd7\xcd\xc6\x9a\0\0",
}
FOREIGN = {
    "a program": b"MZ\x90\0\3\0\0\0",
    "a web page": b"<!DOCTYPE html><script>x()</script>",
    "a drawing with a script": b'<svg xmlns="http://www.w3.org/2000/svg"><script>x()</script></svg>',
    "a drawing with a remark first": b'<?xml version="1.0"?><svg/>',
    "a PDF": b"%PDF-1.7",
    "a zip": b"PK\3\4",
    "nothing": b"",
    "words that begin like a picture": b"BM" + b"\xeb\x20" * 30,
    "a library": b"\x7fELF\2\1\1",
}


@pytest.mark.parametrize("kind", GOOD)
def test_a_picture_goes_along_as_what_its_first_bytes_say(tmp_path: Path, kind: str) -> None:
    content, target = GOOD[kind] + bytes(60), "media/logo.exe"
    changes = {HEADER: made.header(made.drawing()), RELS: made.links(("image", target)), f"word/{target}": content}
    assert notes(tmp_path, changes) == ()
    file = writer.write_docx(document_of("clean", "D10"), made.kept(tmp_path, made.firm(changes)))
    header = docx.Document(io.BytesIO(file)).sections[0].header
    (blip,) = header._element.iter(f"{{{made.A}}}blip")
    part = header.part.related_parts[blip.get(f"{{{made.R}}}embed")]
    assert (part.content_type, part.blob) == (f"image/{kind}", content)
    assert str(part.partname).endswith(f".{kind.removeprefix('x-')}")


@pytest.mark.parametrize("kind", FOREIGN)
def test_what_only_calls_itself_a_picture_is_left_out(tmp_path: Path, kind: str) -> None:
    inner = made.drawing() + '<w:r><w:pict><v:shape><v:imagedata r:id="rId1"/></v:shape></w:pict></w:r>'
    changes = {HEADER: made.header(inner + made.words("Walls")), "word/media/image1.png": FOREIGN[kind]}
    whole = build(tmp_path, changes)
    assert not [name for name in whole if "media" in name]
    assert "Walls" in running(whole).xpath("string(.)")
    assert notes(tmp_path, changes) == ("pictures of an unknown kind of the letterhead are left out",)
