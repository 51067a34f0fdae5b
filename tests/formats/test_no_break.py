"""Numbers stay with their units, words with their marks; letters of sources stand at ends. Expectations are ours."""

import io
import re
from collections.abc import Callable
from pathlib import Path

import docx
import pytest
from docx.oxml.ns import qn
from lxml import html

from specgen.documents.catalogue import templates_folder
from specgen.documents.no_break import keep_together, keep_words
from specgen.documents.source_letters import letter, set_letters
from specgen.formats.docx.word_file import write_docx
from specgen.formats.html import write_html
from specgen.model.block import Inline, Letters, Note, Strong, Text, Value
from specgen.model.source import Kind, Source
from tests.documents.support import written
from tests.support import EXAMPLES

NAMES = sorted(file.parent.name for file in EXAMPLES.glob("*/project.yaml"))
# Units as documents print them, typed anew: from memory of the trade.
UNITS = (
    "in|ft|mil|mils|mm|cm|m|µm|sq ft|sq in|m²|gal|fl oz|qt|L|mL|psi|psf|Pa|kPa|MPa|mph|ft/s|in/s|mm/s|m/s|cfm|scfm|"
    "L/s|°F|°C|K|V|kV|s|min|h|hours|days|weeks|months|years|perm|perms|lb|lbf|kg|oz|lx|fc|percent|cSt"
)
APART = re.compile(rf"\d (?:{UNITS})(?![\w])|\b(?:Section|ASTM|ASCE|CFR|Form|Type|Class) (?:[A-Z]?\d|[A-Z]\b)")


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("8 ft by 8 ft", "8~ft~by~8~ft"),
        ("cut 3/32 in (2.4 mm) deep", "cut 3/32~in (2.4~mm) deep"),
        ("Section 07 24 00, ASTM C1472", "Section~07~24~00, ASTM~C1472"),
        ("29 CFR 1926.1153", "29~CFR~1926.1153"),
        ("on Form D12d for walls W1", "on Form~D12d for walls~W1"),
        ("12 sq ft/gal at 62 °F", "12~sq~ft/gal at 62~°F"),
        ("26.0 psf <= 60.0 psf", "26.0~psf <=~60.0~psf"),
        ("8 ft 6 in high", "8~ft~6~in high"),
        ("March 1, 2027", "March~1, 2027"),
        ("29 mm²/s, 5 m²", "29~mm²/s, 5~m²"),
        ("paint the wall by hand in 3 passes", "paint the wall by hand in 3 passes"),
        ("Section is read once", "Section is read once"),
        ("5 inner coats", "5 inner coats"),
        ("by rule PLN-02b, with gauge FG-1", "by rule PLN_02b, with gauge FG_1"),
        ("board of 7-1/2 in, R-6", "board of 7_1/2~in, R_6"),
        ("submittal 07 24 00-002", "submittal 07~24~00_002"),
        ("UFC 3-190-06 and type I-A", "UFC 3_190_06 and type~I_A"),
        ("notched-trowel adhesive, 10-day wait, -5 °F", "notched-trowel adhesive, 10-day wait, −5~°F"),
        ("is -3.7 mm (-1-1/16 in), HEA-05 at 3 - 5", "is −3.7~mm (−1_1/16~in), HEA_05 at 3 - 5"),
        ("-2 gangs by option -1, -5", "-2 gangs by option -1, -5"),
    ],
)
def test_what_belongs_together_stays_on_one_line(text: str, kept: str) -> None:
    assert keep_words(text).replace("\u00a0", "~").replace("\u2011", "_") == kept


def test_a_code_keeps_its_hyphen_in_each_format(tmp_path: Path) -> None:
    document = written(tmp_path, "# A\nSee ACC-09a\n")
    page = html.fromstring(write_html(document, templates_folder()).decode())
    assert page.xpath("//main//span[@class='whole']")[0].text == "ACC-09a"
    file = docx.Document(io.BytesIO(write_docx(document, templates_folder() / "letterhead.docx")))
    (line,) = (p for p in file.paragraphs if p.text.startswith("See"))
    assert line.text == "See ACC-09a"
    assert len(list(line._p.iter(qn("w:noBreakHyphen")))) == 1


def test_the_code_of_a_rule_is_not_cut_at_its_hyphen() -> None:
    # U+2011 is the hyphen at which no line breaks: The Unicode Standard, general punctuation.
    assert keep_words("see PLN-02b, HEA-05 and tie-in 72-hour") == "see PLN\u201102b, HEA\u201105 and tie-in 72-hour"


def test_a_number_stays_with_a_unit_that_stands_in_the_next_words() -> None:
    content: tuple[Inline, ...] = (
        Text("apply "),
        Strong((Value("4"), Text(" mils"))),
        Text(" by 8 ft at "),
        Value("5"),
    )
    assert keep_together((*content, Text(" in."))) == (
        Text("apply "),
        Strong((Value("4"), Text("\u00a0mils"))),
        Text("\u00a0by\u00a08\u00a0ft at "),
        Value("5"),
        Text("\u00a0in."),
    )


@pytest.mark.parametrize("example", NAMES)
def test_no_document_has_an_ordinary_space_between_a_number_and_its_unit(
    example: str, draft_of: Callable[[str], Path]
) -> None:
    found = []
    for file in draft_of(example).iterdir():
        if file.suffix == ".docx":
            body = docx.Document(str(file)).element.body
            texts = ["".join(t.text or "" for t in p.iter(qn("w:t"))) for p in body.iter(qn("w:p"))]
        elif file.suffix == ".html":
            tree = html.fromstring(file.read_bytes().decode())
            texts = [
                e.text_content() for e in tree.iter("p", "li", "td", "th", "dd", "h2", "h3") if not len(e.xpath("ol"))
            ]
        else:
            continue
        found += [(file.name, hit[0]) for text in texts for hit in APART.finditer(text)]
    assert found == []


@pytest.mark.parametrize("example", NAMES)
def test_no_document_prints_a_choice_by_its_name_in_the_file(example: str, draft_of: Callable[[str], Path]) -> None:
    # Calculations name symbols and fields, which keep their low lines.
    pages = (file for file in draft_of(example).glob("*.html") if not file.name.startswith("D06"))
    words = (html.fromstring(file.read_bytes().decode()).xpath("string(//main)") for file in pages)
    found = {name for text in words for name in re.findall(r"[a-z]+_[a-z]+", text)}
    # A remedy that asks for a field names it as the file does.
    assert found - {"joint_needs", "no_joint"} == set()


A, B = (Source(Kind.MEMORY, f"text {name}") for name in "AB")
# What nobody has verified has the same letter in every document.
NOBODYS = Source(Kind.UNVERIFIED)


@pytest.mark.parametrize(
    ("content", "wanted"),
    [
        ((Value("27 s", A), Text(" to "), Value("33 s", A)), "27 s to 33 s[a]"),
        ((Text("Hold "), Value("27 s", A), Text(" or "), Value("9 h", B), Text(".")), "Hold 27 s[a] or 9 h[b]."),
        (
            (Text("At "), Value("2 h", A), Text(" dry. Wait "), Value("9 h", B), Text(".")),
            "At 2 h dry.[a] Wait 9 h.[b]",
        ),
        ((Value("2", A), Text(" in. Hg and No. 4 read. Note it.")), "2 in. Hg and No. 4 read.[a] Note it."),
        ((Value("2 h", A), Text(". Or "), Value("9 h", B), Text(" to "), Value("9", A)), "2 h.[a] Or 9 h[b] to 9[a]"),
        ((Strong((Value("2 h", A), Text(" at most"))), Text(" here")), "2 h at most here[a]"),
        ((Text("Hold"), Value("", A), Value("", B), Text(" or "), Value("9", A)), "Hold[a, b] or 9[a]"),
        ((Value("9", A), Text(" to "), Value("[most]", open=True)), "9[a] to [most]"),
        ((Value("9", NOBODYS), Text(" to "), Value("2", A)), "9[p] to 2[a]"),
        ((Text("Plain. Words.")), "Plain. Words."),
    ],
)
def test_one_letter_stands_at_the_end_of_a_sentence_and_of_several_each_at_its_figure(
    content: tuple[Inline, ...], wanted: str
) -> None:
    parts = set_letters(content if isinstance(content, tuple) else (content,), {}, {})

    def read(part: Inline) -> str:
        if isinstance(part, Letters):
            return f"[{part.text}]"
        return "".join(map(read, part.children)) if isinstance(part, Strong) else getattr(part, "text", "")

    assert "".join(map(read, parts)) == wanted


def test_letters_go_on_behind_z() -> None:
    assert [letter(count) for count in (1, 26, 27, 52, 53)] == ["a", "z", "aa", "az", "ba"]


def test_a_note_that_says_so_is_a_hold_point(tmp_path: Path) -> None:
    document = written(tmp_path, "> **HOLD POINT.** Do not proceed.\n\n> **Caution:** hot.\n\n> Hold point by word.\n")
    assert [note.hold for note in document.blocks if isinstance(note, Note)] == [True, False, False]
