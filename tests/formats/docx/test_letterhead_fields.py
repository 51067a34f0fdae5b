"""Fields of a letterhead: those that count pages or name a heading stay, any other becomes the words it showed.

Names of fields are those of ECMA-376 part 1, 17.16.5; what is done with each is ours.
"""

import re
from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from tests.formats.docx import letterheads as made
from tests.formats.docx.on_paper import build, notes, running

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
