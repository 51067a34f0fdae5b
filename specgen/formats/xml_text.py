"""Text for XML: escaped, and without the characters that XML 1.0 does not allow.

The library's own module for this loads an HTTP client, which costs a tenth of a small package.
"""

import re
from html import escape as _escape

# Everything but the production Char of XML 1.0, section 2.2.
_NO_CHAR = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def remove_non_xml(text: str) -> str:
    """The text without characters that XML does not allow."""
    return _NO_CHAR.sub("", text)


def escape(text: str) -> str:
    """The text escaped for use between two tags."""
    return _escape(text, quote=False)


def quote(text: str) -> str:
    """The text as an attribute value in quotes; line ends and tabs are kept."""
    kept = _escape(text).replace("\n", "&#10;").replace("\r", "&#13;").replace("\t", "&#9;")
    return f'"{kept}"'
