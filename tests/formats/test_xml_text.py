"""Text in XML and back: a general parser of XML reads what was meant."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lxml import etree

from specgen.formats.xml_text import encode_xml, escape, quote, remove_non_xml
from tests.documents.support import AWKWARD
from tests.running import run_python

TEXTS = [AWKWARD, "", "a & b", "<w:t>", "]]>", "&amp;", "'\"'", " two  spaces ", "tab\tline\nend"]
# The production Char of XML 1.0, section 2.2; a parser reads a bare carriage return as a line end.
CHAR = st.characters(exclude_categories=["Cs"]).filter(lambda sign: remove_non_xml(sign) == sign and sign != "\r")


@pytest.mark.parametrize("text", TEXTS)
def test_awkward_text_comes_back(text: str) -> None:
    assert both(text) == (text, text)


@given(st.text(CHAR))
def test_any_text_comes_back(text: str) -> None:
    assert both(text) == (text, text)


def both(text: str) -> tuple[str, str]:
    """The text between tags and the value of an attribute, as the parser reads them."""
    made = etree.fromstring(f"<a b={quote(text)}>{escape(text)}</a>".encode())
    return made.text or "", made.get("b") or ""


def test_signs_without_a_place_in_xml_are_left_out() -> None:
    assert remove_non_xml("a\x00b\x0bc\ufffed\U0001f600") == "abcd\U0001f600"


@pytest.mark.parametrize("sign", ["\x00", "\x0b", "\x1f", "\ufffe", "\uffff", "\ud800"])
def test_bytes_hold_no_sign_without_a_place_in_xml(sign: str) -> None:
    assert encode_xml(f"a{sign}b\t°\n\U0001f600") == "ab\t°\n\U0001f600".encode()


def test_the_writer_of_word_files_loads_no_client_of_the_network() -> None:
    code = "import sys, specgen.formats.docx.word_file; print('http.client' in sys.modules)"
    assert run_python(code) == (0, "False\n", "")
