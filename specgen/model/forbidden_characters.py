"""Characters that cannot be seen on paper: no input may hold them, be it a project or a template."""

import re

# Unseen characters that change how text reads, line ends that editors do not count, and the private-use ones, some of
# which the writing room marks values with. Tab, line feed and carriage return are white space.
_UNSEEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\uf8ff\ufdd0-\ufdef\ufeff\ufffe\uffff\U000f0000-\U0010ffff"
    + "".join(f"{chr(plane + 0xFFFE)}{chr(plane + 0xFFFF)}" for plane in range(0x10000, 0xF0000, 0x10000))
    + "]"
)


def unseen(text: str) -> tuple[int, str, str] | None:
    """Place, message and hint on the first character of a text that cannot be seen on paper, or None."""
    found = _UNSEEN.search(text)
    if found is None:
        return None
    message = f"character U+{ord(found[0]):04X} is not allowed: it cannot be seen on paper"
    return found.start(), message, "delete it"
