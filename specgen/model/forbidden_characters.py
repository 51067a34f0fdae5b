"""Characters that cannot be printed: no project and no template may contain them."""

import re

# Invisible characters that change how text reads, line ends that editors do not count, and private-use characters, some
# of which mark values in templates. Tab, line feed and carriage return are white space.
_UNSEEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\uf8ff\ufdd0-\ufdef\ufeff\ufffe\uffff\U000f0000-\U0010ffff"
    + "".join(f"{chr(plane + 0xFFFE)}{chr(plane + 0xFFFF)}" for plane in range(0x10000, 0xF0000, 0x10000))
    + "]"
)


def find_forbidden(text: str) -> tuple[int, str, str] | None:
    """Position, message and hint for the first character of a text that cannot be printed, or None."""
    match = _UNSEEN.search(text)
    if match is None:
        return None
    message = f"character U+{ord(match[0]):04X} is not allowed: it cannot be seen on paper"
    return match.start(), message, "delete it"
