"""What a text is shown on: its width, whether it takes color, and lines that wrap with a hanging indent."""

import os
import sys
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.model.forbidden_characters import show_unseen
from specgen.model.value_text import close_percent

WIDTH = 80
_LEAST_WIDTH, _MOST_WIDTH = 40, 1000
# Select Graphic Rendition of ECMA-48: weight and the eight plain colors, which every terminal has.
_STYLES = {"bold": "1", "stop": "1;31", "caution": "33", "note": "36", "good": "32", "faint": "2"}
_ESCAPE = "\x1b["


class Screen(NamedTuple):
    """Where a report is shown; a file or a pipe is plain and as wide as a usual terminal."""

    width: int = WIDTH
    painted: bool = False
    is_terminal: bool = False


PLAIN = Screen()


class Line(NamedTuple):
    """A line of a report as it is written, before it is wrapped; `part` is what is painted in its style."""

    text: str = ""
    hanging: int = 0  # blanks before what follows on
    part: str = ""
    style: str = ""
    whole: bool = False  # whether it is kept on one line


def find_screen(color: str = "auto") -> Screen:
    """The screen of standard output; `color` is auto, always or never."""
    is_terminal = sys.stdout.isatty()
    painted = color == "always" or (color == "auto" and is_terminal and _takes_color())
    return Screen(_find_width(is_terminal), painted, is_terminal)


def _takes_color() -> bool:
    """Whether a terminal is to be painted: by the custom of NO_COLOR, and where it is known to understand."""
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        return False
    return os.name != "nt" or bool(os.environ.get("WT_SESSION") or os.environ.get("TERM"))


def _find_width(is_terminal: bool) -> int:
    """The columns told in COLUMNS, as by POSIX, else those of the terminal."""
    told = os.environ.get("COLUMNS", "")
    if told.isascii() and told.isdigit() and 0 < int(told) < _MOST_WIDTH:
        return max(int(told), _LEAST_WIDTH)
    if not is_terminal:
        return WIDTH
    try:
        columns = os.get_terminal_size(sys.stdout.fileno()).columns
    except (OSError, ValueError):
        return WIDTH
    return max(columns, _LEAST_WIDTH) if columns else WIDTH


def show_lines(lines: Iterable[Line], screen: Screen) -> str:
    """The text of the lines: what the user wrote stands inside a line and never makes one."""
    return "".join(f"{shown}\n" for line in lines for shown in _show(line, screen))


def _show(line: Line, screen: Screen) -> Iterator[str]:
    text, part = show_unseen(line.text), show_unseen(line.part)
    shown = [text] if line.whole else wrap(close_percent(text), line.hanging, screen.width)
    for number, one in enumerate(shown):
        painted = screen.painted and line.style and (not part or not number)
        yield _paint(one, part or one, line.style) if painted else one


def _paint(text: str, part: str, style: str) -> str:
    return text.replace(part, f"{_ESCAPE}{_STYLES[style]}m{part}{_ESCAPE}0m", 1) if part else text


def wrap(text: str, hanging: int, width: int) -> list[str]:
    """A text as lines of at most a width, broken at blanks; a longer word stays whole on a line of its own."""
    if len(text) <= width:
        return [text.rstrip(" ")]
    bare = text.lstrip(" ")
    first, *words = bare.split(" ")
    lines, line = list[str](), text[: len(text) - len(bare)] + first
    for word in words:
        if len(line) + 1 + len(word) <= width:
            line += f" {word}"
        elif word:
            lines.append(line.rstrip(" "))
            line = " " * hanging + word
    return [*lines, line.rstrip(" ")]
