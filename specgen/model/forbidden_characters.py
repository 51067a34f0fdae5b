"""Characters that cannot be seen on paper: no project and no template may contain them, and no message prints them."""

import unicodedata

# White space that editors and YAML know; every other line end is a character that Python does not print.
_SHORT = {"\t": r"\t", "\n": r"\n", "\r": r"\r"}
# Marks and letters of Unicode without a shape of their own: the rows of Default_Ignorable_Code_Point in its
# DerivedCoreProperties that Python prints, and two blank symbols (from memory).
_SHAPELESS = frozenset(
    chr(code)
    for first, last in (
        (0x034F, 0x034F),
        (0x115F, 0x1160),
        (0x17B4, 0x17B5),
        (0x180B, 0x180F),
        (0x2800, 0x2800),
        (0x3164, 0x3164),
        (0xFE00, 0xFE0F),
        (0xFFA0, 0xFFA0),
        (0x1D159, 0x1D159),
        (0xE0100, 0xE01EF),
    )
    for code in range(first, last + 1)
)


def find_forbidden(text: str) -> tuple[int, str, str] | None:
    """Position, message and hint for the first character of a text that cannot be printed, or None."""
    unseen = [char for char in set(text) if not (_is_seen(char) or char in _SHORT)]
    if not unseen:
        return None
    start = min(map(text.index, unseen))
    message = f"character {name_character(text[start])} is not allowed: it cannot be seen on paper"
    return start, message, "delete it, or type the words around it anew"


def name_character(char: str) -> str:
    """`U+202E RIGHT-TO-LEFT OVERRIDE`; the number alone where Unicode gives no name."""
    return f"U+{ord(char):04X} {unicodedata.name(char, '')}".rstrip()


def show_unseen(text: str, kept: str = "") -> str:
    """A text with each line end and unseen character as an escape, save those kept: it cannot forge a line."""
    if text.isascii() and text.isprintable():  # nearly every one
        return text
    escapes = {ord(char): escape_character(char) for char in set(text) if char not in kept and not _is_seen(char)}
    return text.translate(escapes) if escapes else text


def escape_character(char: str) -> str:
    r"""A character as JSON writes it: `\n`, or `\u` and four hexadecimal digits, twice for one beyond them."""
    if char in _SHORT:
        return _SHORT[char]
    units = char.encode("utf-16-be", "surrogatepass").hex()
    return "".join(f"\\u{units[at : at + 4]}" for at in range(0, len(units), 4))


def _is_seen(char: str) -> bool:
    """Whether a character has a shape, or is a space: every control, format and private character has none."""
    return (char.isprintable() or unicodedata.category(char) == "Zs") and char not in _SHAPELESS
