"""Text of the user on the pages: shown as it stands, whatever it holds."""

import dataclasses
import unicodedata
from pathlib import Path

from specgen.formats.pdf.pages import write_pages
from specgen.model.block import Figure, Text
from tests.documents.support import AWKWARD, written
from tests.formats.pdf.support import plain, small_set
from tests.formats.pdf.tags import TaggedPdf
from tests.formats.test_awkward_text import STRINGS

# Words that run from the right stand on a page as they are seen, from left to right; a reader turns them (ISO 32000-1,
# 14.8.2.3.3).
HEBREW, ARABIC = "בית ספר", "مدرسة"


def words_of(pdf: bytes) -> str:
    return TaggedPdf(pdf).tree.text()


def test_each_string_stands_as_it_was_written(tmp_path: Path) -> None:
    change = {"attachments": {f"A{n}": {"kind": "letter", "title": text} for n, text in enumerate(STRINGS)}}
    document = written(tmp_path, "{% for a in attachments %}\n\n{{ a.title }}\n{% endfor %}\n", change)
    made = write_pages(small_set(tmp_path, document, change=change))
    words = plain(words_of(made.pdf))
    # Of letters with marks above and below, the words of a page have each mark with its letter.
    texts = [text for text in STRINGS if not any(unicodedata.combining(sign) for sign in text)]
    assert len(texts) > 100
    spelled = [plain("".join(spell(sign, words) for sign in text)) for text in texts]
    assert [text for text in spelled if not is_shown(text, words)] == []
    assert len(made.told) == 1
    assert made.told[0].startswith("the fonts of the PDF lack ")


def spell(sign: str, words: str) -> str:
    """A sign, or its number where it is printed so."""
    number = f"[U+{ord(sign):04X}]"
    return number if number.casefold() in words and not sign.isascii() else sign


def is_shown(text: str, words: str) -> bool:
    """Whether a text stands among the words, or one that runs from the right by its signs."""
    return (
        text in words
        or any("\u0590" <= sign <= "\u08ff" or "\ufb1d" <= sign <= "\ufefc" for sign in text)
        and set(text) <= set(words)
    )


def test_markup_of_any_kind_is_text(tmp_path: Path) -> None:
    texts = (
        "#set page(fill: red)",
        "$x^2$",
        "*bold* _it_ `raw` <label> @ref",
        '#eval("1")',
        "\\u{41}",
        "// note",
        AWKWARD,
    )
    change = {"attachments": {f"A{n}": {"kind": "letter", "title": text} for n, text in enumerate(texts)}}
    document = written(tmp_path, "{% for a in attachments %}\n\n{{ a.title }}\n{% endfor %}\n", change)
    words = plain(words_of(write_pages(small_set(tmp_path, document, change=change)).pdf))
    assert [text for text in texts[:-1] if plain(text) not in words] == []
    assert plain("<b>*Wall*</b> | #1 `x` _y_ [a](b) ~~z~~ 1. & [U+1F600]") in words


def test_names_that_run_from_right_to_left_are_shown_with_their_own_letters(tmp_path: Path) -> None:
    change = {"project": {"name": f"{HEBREW} 12"}, "parties": {"architect": {"name": ARABIC}}}
    made = write_pages(small_set(tmp_path, written(tmp_path, "{{ project.name }}\n", change), change=change))
    words = words_of(made.pdf)
    assert made.told == ()
    assert HEBREW[::-1] in words
    assert unicodedata.normalize("NFKC", ARABIC[::-1]) in unicodedata.normalize("NFKC", words)


def test_a_word_without_end_stays_on_the_page(tmp_path: Path) -> None:
    endless = "W" * 300
    change = {"project": {"name": endless}}
    made = TaggedPdf(write_pages(small_set(tmp_path, written(tmp_path, "word\n", change), change=change)).pdf)
    ends = []
    made.reader.pages[0].extract_text(
        visitor_text=lambda text, _, matrix, __, size: ends.append(float(matrix[4])) if "W" in text else None
    )
    assert ends
    assert plain(endless) in plain(made.tree.text())
    assert max(ends) < 612


def test_a_sign_that_drawings_lack_is_itself_in_the_words(tmp_path: Path) -> None:
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="20mm" viewBox="0 0 50 20">'
        f'<text x="5" y="15" font-family="Sheet Sans" font-size="5">\u5317 {HEBREW}</text></svg>'
    )
    figure = Figure("trial", (Text(HEBREW),), svg, "A name", 50, 20, "Figure 1")
    document = dataclasses.replace(written(tmp_path, "# A\n"), blocks=(figure,))
    made = write_pages(small_set(tmp_path, document))
    assert HEBREW.split()[0][::-1] in words_of(made.pdf)
    assert len(made.told) == 1
    assert "[U+5317]" not in words_of(made.pdf)
