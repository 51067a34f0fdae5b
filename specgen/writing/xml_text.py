"""Text without the signs that XML 1.0 has no place for, wherever they came from."""

import re

# Everything but the production Char of XML 1.0, section 2.2.
_NO_CHAR = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def bare(text: str) -> str:
    """The text without signs that no XML file can hold."""
    return _NO_CHAR.sub("", text)
