"""Words as the inside of a run of WordprocessingML."""

from specgen.documents.no_break import NO_BREAK_HYPHEN
from specgen.formats.xml_text import escape

_OPEN, _CLOSE = '<w:t xml:space="preserve">', "</w:t>"


def render_text(text: str) -> str:
    """The text of a run; line ends become breaks, and hyphens that keep a line together Word's own sign for them."""
    content = escape(text)
    if "\n" in content:
        content = content.replace("\n", f"{_CLOSE}<w:br/>{_OPEN}")
    if NO_BREAK_HYPHEN in content:
        content = content.replace(NO_BREAK_HYPHEN, f"{_CLOSE}<w:noBreakHyphen/>{_OPEN}")
    return f"{_OPEN}{content}{_CLOSE}"
