"""A letterhead that would take long or fill the memory is refused before it is parsed, or is read in one pass.

The bounds are ours. Steps are counted, not seconds.
"""

import io
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from docx.oxml.ns import qn
from lxml import etree

from specgen.formats.docx.letterhead import cleaning, read_letterhead
from specgen.formats.docx.letterhead.opc import MOST_ATTRIBUTES, MOST_DEPTH, MOST_PARTS, MOST_TAGS, MOST_TEXT
from specgen.formats.docx.letterhead.styles import MOST_STYLES
from specgen.model.problem import Refused
from tests.formats.docx import letterheads as made

HEADER = "word/header1.xml"
WHO = 'w:id="1" w:author="A"'
INSERTED = f"<w:ins {WHO}>{made.words('x')}</w:ins>"


def chained(count: int) -> str:
    rows = (made.style(f"s{n}", f'<w:basedOn w:val="S{n - 1}"/>', id_=f"S{n}") for n in range(count))
    return f"<w:styles {made.SPACES}>{made.STYLES}{''.join(rows)}</w:styles>"


def crowded() -> str:
    more = " ".join(f'a{n}="1"' for n in range(MOST_ATTRIBUTES + 1))
    return f"<w:hdr {made.SPACES}><w:p {more}/></w:hdr>"


# Below the root and its paragraph: 200 elements within one another, and no more. The bound is ours.
NESTED = 198


def test_what_is_nested_as_deep_as_may_be_is_read_and_one_deeper_is_not(tmp_path: Path) -> None:
    read_letterhead(made.kept(tmp_path, made.firm({HEADER: made.header("<w:ins>" * NESTED + "</w:ins>" * NESTED)})))
    deeper = made.header("<w:ins>" * (NESTED + 1) + "</w:ins>" * (NESTED + 1))
    with pytest.raises(Refused, match="nested more than 200 deep"):
        read_letterhead(made.kept(tmp_path, made.firm({HEADER: deeper})))


LARGE: dict[str, tuple[Callable[[], dict[str, Any]], str]] = {
    "words": (
        lambda: {HEADER: made.header(made.words("x" * MOST_TEXT))},
        "has more than 5 MB of text in word/header1.xml",
    ),
    "tags": (
        lambda: {HEADER: made.header("<w:r/>" * MOST_TAGS)},
        f"has more than {MOST_TAGS:,} tags in word/header1.xml",
    ),
    "depth": (
        lambda: {HEADER: made.header("<w:ins>" * MOST_DEPTH + "</w:ins>" * MOST_DEPTH)},
        f"is nested more than {MOST_DEPTH} deep in word/header1.xml",
    ),
    "attributes": (lambda: {HEADER: crowded()}, f"has more than {MOST_ATTRIBUTES} attributes on one element"),
    "styles": (lambda: {"word/styles.xml": chained(MOST_STYLES)}, f"has {MOST_STYLES + 3} styles"),
    "parts": (lambda: {f"word/p{n}.bin": b"" for n in range(MOST_PARTS)}, "is too large"),
    "text in all": (
        lambda: {
            "word/document.xml": made.document(made.words("x" * 4_500_000) + made.section()),
            "word/styles.xml": chained(0).replace("</w:styles>", " " * 4_500_000 + "</w:styles>"),
            "word/settings.xml": made.settings(" " * 4_500_000),
            HEADER: made.header(made.words("x" * 4_500_000)),
            "word/footer1.xml": made.header(made.words("x" * 4_500_000), "ftr"),
        },
        "is too large",
    ),
}  # fmt: skip


@pytest.mark.no_cover
@pytest.mark.parametrize("what", LARGE)
def test_what_is_too_large_to_be_a_letterhead_is_told_in_one_message(what: str, tmp_path: Path) -> None:
    changes, said = LARGE[what]
    with pytest.raises(Refused) as refused:
        read_letterhead(made.kept(tmp_path, made.firm(changes())))
    (problem,) = refused.value.problems
    assert said in problem.message
    assert problem.hint


def steps(count: int, monkeypatch: pytest.MonkeyPatch) -> int:
    """How often an element is judged in a header with so many tracked insertions."""
    root, judged = etree.fromstring(made.header(INSERTED * count)), list[str]()
    real = cleaning._judge

    def counted(element: Any, drop: Any) -> Any:
        judged.append(element.tag)
        return real(element, drop)

    with monkeypatch.context() as patched:
        patched.setattr(cleaning, "_judge", counted)
        cleaning.clean_page_part(root, lambda word: None)
    assert len(root.findall(f"{qn('w:p')}/{qn('w:r')}")) == count
    assert root.find(f".//{qn('w:ins')}") is None
    return len(judged)


def test_thirty_thousand_tracked_insertions_are_unwrapped_in_one_pass(monkeypatch: pytest.MonkeyPatch) -> None:
    # One paragraph; for each insertion itself, its run and its text.
    assert {count: steps(count, monkeypatch) for count in (300, 30_000)} == {300: 901, 30_000: 90_001}


def test_insertions_within_insertions_are_unwrapped_in_one_pass(monkeypatch: pytest.MonkeyPatch) -> None:
    depth, count = MOST_DEPTH - 5, 2_000
    inner = f"<w:ins {WHO}>" * depth + made.words("x") * count + "</w:ins>" * depth
    root, moves = etree.fromstring(made.header(inner)), list[int]()
    real = cleaning._list_kept
    monkeypatch.setattr(cleaning, "_list_kept", lambda *given: moves.append(len(done := real(*given))) or done)
    cleaning.clean_page_part(root, lambda word: None)
    assert len(root.findall(f"{qn('w:p')}/{qn('w:r')}")) == count
    # Two walks, each past the paragraph, the runs and their texts once, however deep the insertions lie.
    assert sum(moves) == 2 * (1 + 2 * count)


@pytest.mark.parametrize("packing", [zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA], ids=["bzip2", "lzma"])
def test_a_part_packed_as_no_package_may_be_is_refused(packing: int, tmp_path: Path) -> None:
    out = io.BytesIO(made.firm())
    with zipfile.ZipFile(out, "a", packing) as zipped:
        zipped.writestr("word/more.bin", bytes(100))
    with pytest.raises(Refused, match="the letterhead is damaged"):
        read_letterhead(made.kept(tmp_path, out.getvalue()))


def test_a_part_that_unpacks_to_more_than_it_claims_is_not_read_further(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = io.BytesIO(made.firm())
    with zipfile.ZipFile(out, "a", zipfile.ZIP_DEFLATED) as zipped:
        zipped.writestr("word/more.bin", bytes(30_000_000))
    content, size = bytearray(out.getvalue()), (30_000_000).to_bytes(4, "little")
    for sign, place in ((b"PK\x03\x04", 22), (b"PK\x01\x02", 24)):  # the sizes of each entry, APPNOTE 4.3.7 and 4.3.12
        at = content.rfind(sign)
        assert content[at + place : at + place + 4] == size
        content[at + place : at + place + 4] = (10).to_bytes(4, "little")
    lengths, real = list[int](), zipfile.ZipExtFile.read

    def noted(self: Any, n: int | None = -1) -> bytes:
        lengths.append(len(done := real(self, n)))
        return done

    monkeypatch.setattr(zipfile.ZipExtFile, "read", noted)
    unpacked = list[int]()
    decompress = zipfile.ZipExtFile._read1  # type: ignore[attr-defined]
    monkeypatch.setattr(zipfile.ZipExtFile, "_read1", lambda self, n: unpacked.append(n) or decompress(self, n))
    try:
        read_letterhead(made.kept(tmp_path, bytes(content)))
    except Refused as refused:
        assert "damaged" in str(refused)
    assert max(lengths) < 10_000
    assert max(unpacked) < 10_000
