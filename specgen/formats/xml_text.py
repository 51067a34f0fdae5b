"""Text as XML holds it: escaped, and without the signs that XML 1.0 has no place for.

The library's own module for this loads an HTTP client, which costs a tenth of a small package.
"""

import re
from html import escape as _escape

# Everything but the production Char of XML 1.0, section 2.2.
_NO_CHAR = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def bare(text: str) -> str:
    """The text without signs that no XML file can hold."""
    return _NO_CHAR.sub("", text)


def escaped(text: str) -> str:
    """The text between two tags."""
    return _escape(text, quote=False)


def quoted(text: str) -> str:
    """The text as the value of an attribute, with its quotes; line ends and tabs are kept."""
    kept = _escape(text).replace("\n", "&#10;").replace("\r", "&#13;").replace("\t", "&#9;")
    return f'"{kept}"'
