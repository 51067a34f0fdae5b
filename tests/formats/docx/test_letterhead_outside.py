"""What in a letterhead would act or be fetched from elsewhere is left out of every Word file, and told once.

Names of elements and links are those of ECMA-376 parts 1, 2 and 4; what is done with each is ours.
"""

import io
import re
from pathlib import Path

import docx
import pytest
from lxml import etree

from specgen.formats.docx import word_file as writer
from tests.documents.support import document_of
from tests.formats.docx import letterheads as made
from tests.formats.docx.on_paper import build, notes, running

HEADER, RELS = "word/header1.xml", "word/_rels/header1.xml.rels"
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


def test_where_a_choice_is_left_out_the_fallback_shows(tmp_path: Path) -> None:
    space = "http://schemas.openxmlformats.org/markup-compatibility/2006"
    picture = '<w:pict><v:shape><v:imagedata r:id="rId1"/></v:shape></w:pict>'
    ink, box = '<w:contentPart r:id="rId2"/>', "<w:t>shape</w:t>"
    inner = "".join(
        f'<w:r><mc:AlternateContent xmlns:mc="{space}"><mc:Choice Requires="w14">{choice}</mc:Choice>'
        f"<mc:Fallback>{picture}</mc:Fallback></mc:AlternateContent></w:r>"
        for choice in (ink, box)
    )
    root = running(build(tmp_path, {HEADER: made.header(inner)}))
    alone, beside = root.iter(f"{{{made.V}}}imagedata")
    assert not list(alone.iterancestors(f"{{{space}}}AlternateContent"))
    assert list(beside.iterancestors(f"{{{space}}}Fallback"))
    (choice,) = root.iter(f"{{{space}}}Choice")
    assert choice.xpath("string(.)") == "shape"


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
