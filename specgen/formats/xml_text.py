"""Text for XML: escaped, and without the characters that XML 1.0 does not allow.

The library's own module for this loads an HTTP client, which costs a tenth of a small package.
"""

import re
from html import escape as _escape

# Everything but the production Char of XML 1.0, section 2.2.
_NO_CHAR = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
# The same among bytes of UTF-8: controls, and the last two signs of the first plane.
_CONTROLS = bytes(code for code in range(32) if code not in b"\t\n\r")
_NO_SIGNS = ("\ufffe".encode(), "\uffff".encode())


def remove_non_xml(text: str) -> str:
    """The text without characters that XML does not allow."""
    return _NO_CHAR.sub("", text)


def encode_xml(text: str) -> bytes:
    """The text as UTF-8 without characters that XML does not allow; a text that has none is looked at as bytes."""
    try:
        encoded = text.encode()
    except UnicodeEncodeError:  # half a pair
        return remove_non_xml(text).encode()
    clean = len(encoded.translate(None, _CONTROLS)) == len(encoded) and not any(sign in encoded for sign in _NO_SIGNS)
    return encoded if clean else remove_non_xml(text).encode()


def escape(text: str) -> str:
    """The text escaped for use between two tags."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def quote(text: str) -> str:
    """The text as an attribute value in quotes; line ends and tabs are kept."""
    kept = _escape(text).replace("\n", "&#10;").replace("\r", "&#13;").replace("\t", "&#9;")
    return f'"{kept}"'
