"""Where a file is no YAML: the line that is at fault, the cause in plain words, and the line as it should stand.

The parser stops where it can go on no longer, which is often a line or more after the slip.
"""

import re
from collections.abc import Callable, Iterator
from typing import NamedTuple

import yaml

from specgen.quantities.number import quote
from specgen.reading.cut_text import split_lines

_GLUED = re.compile(r"\s*(?:- )?([A-Za-z_]\w*):([^\s:/\\].*)")
_NO_COLON = re.compile(r"\s*(?:- )?([A-Za-z_]\w*)[ \t]*(?:=[ \t]*)?([^:#\n]*)")
_KEY_ONLY = re.compile(r"\s*(?:- )?[^\s:#'\"\[{][^:#]*")
_NO_COMMA = re.compile(r".*[{,]\s*\w+:\s+[^,{}\[\]\"']*\s([A-Za-z_]\w+)")
_COMMENT = re.compile(r"(?:^|\s)#.*")
_CUT = re.compile(r"\s(#\w[^\n]*)")
_OPENING = re.compile(r"(?:^|[:,\[{-])\s*([\"'])")
_CLOSING = {'"': re.compile(r'(?:\\.|[^"\\])*"'), "'": re.compile(r"(?:''|[^'])*'")}
_LOOK_BACK = 12  # lines above the place where the parser stopped in which an open quote is sought
_LONG_LINE = 2000  # characters; longer ones are not looked through for a comma


class YamlFault(NamedTuple):
    """What is wrong with the text of a file, what would be right, and where; line and column count from 1."""

    message: str
    hint: str
    line: int
    column: int


class _Stop(NamedTuple):
    """Where the parser stopped, why, and where what it was reading begins; lines and columns count from 1."""

    lines: list[str]
    problem: str
    line: int
    column: int
    began: int
    began_column: int

    @property
    def text(self) -> str:
        """The line it stopped at."""
        return self.text_of(self.line)

    def text_of(self, line: int) -> str:
        """A line; empty after the last one."""
        return self.lines[line - 1] if 0 < line <= len(self.lines) else ""

    def above(self, line: int) -> Iterator[int]:
        """The lines above one that say something, the nearest first."""
        return (at for at in range(line - 1, 0, -1) if _COMMENT.sub("", self.text_of(at)).strip())


def find_yaml_fault(error: yaml.MarkedYAMLError, source: str) -> YamlFault:
    """The fault of a text that the parser refuses."""
    mark, context = error.problem_mark or error.context_mark, error.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark else (0, 0)
    began, began_column = (context.line + 1, context.column + 1) if context else (line, column)
    stop = _Stop(split_lines(source), error.problem or "syntax error", line, column, began, began_column)
    faults = (look(stop) for look in _LOOKS)
    plain = YamlFault(
        f"the file is not valid YAML: {stop.problem}", "check indentation, colons and quotes here", line, column
    )
    return next((fault for fault in faults if fault is not None), plain)


def _tab(stop: _Stop) -> YamlFault | None:
    text = stop.text
    if "\t" not in text[: len(text) - len(text.lstrip())]:
        return None
    return YamlFault("a tab is in the indentation", "indent with spaces", stop.line, stop.column)


def _second_document(stop: _Stop) -> YamlFault | None:
    if "but found another document" not in stop.problem:
        return None
    message = "the file holds more than one document"
    return YamlFault(message, "keep one; remove the line `---`", stop.line, stop.column)


def _quote(stop: _Stop) -> YamlFault | None:
    """A quote that is not closed in its line, or text after one that is."""
    if not any(words in stop.problem for words in ("expected key", "end of stream", "expected ','", "block end")):
        return None
    for line in [stop.line, *stop.above(stop.line)][:_LOOK_BACK]:
        text = stop.text_of(line)
        for opened, closed in _quotes(text):
            rest = _COMMENT.sub("", text[closed:]).strip()
            if closed and re.match(r"[^,:\]}]", rest):
                message = f"{quote(rest)} follows the closing quote"
                return YamlFault(message, f"write {_unquote(text[opened:].strip())}", line, opened + 1)
            if not closed:
                message = "the quote that opens here is not closed in this line"
                return YamlFault(message, "close it, or write the text without quotes", line, opened + 1)
    return None


def _quotes(text: str) -> Iterator[tuple[int, int]]:
    """Where each quoted text of a line opens, and where it ends; 0 where it does not."""
    at = 0
    while not text.lstrip().startswith("#") and (opening := _OPENING.search(text, at)):
        closing = _CLOSING[opening[1]].match(text, opening.end())
        yield opening.start(1), closing.end() if closing else 0
        if closing is None:
            return
        at = closing.end()


def _unquote(value: str) -> str:
    """A value without its outer quotes where it is a figure with its signs, else without any."""
    inner = value[1:-1] if value[-1] == value[0] else value[1:]
    return inner if inner[:1].isdigit() else value.replace(value[0], "")


def _cut_by_comment(stop: _Stop) -> YamlFault | None:
    """A `#` in a text that took the closing bracket with it."""
    cut = _CUT.search(stop.text_of(stop.began)) if "expected ','" in stop.problem else None
    if cut is None:
        return None
    message = f"{quote(cut[1])} is taken for a comment, and the bracket after it with it"
    return YamlFault(message, "put a text with a # in quotes", stop.began, cut.start(1) + 1)


def _open_bracket(stop: _Stop) -> YamlFault | None:
    """A bracket that is not closed, or a comma or a quote missing inside it."""
    closing = re.search(r"did not find expected ',' or '(.)'", stop.problem)
    if closing is None:
        return None
    before = stop.text[: stop.column - 1]
    if stop.text[stop.column - 1 : stop.column] == ":" and (stop.line == stop.began or not _KEY_ONLY.fullmatch(before)):
        missing = _NO_COMMA.fullmatch(before) if len(before) < _LONG_LINE else None
        comma = f"put a comma before {missing[1]}, or the text in quotes" if missing else "put the text in quotes"
        return YamlFault("there are two colons between two commas", comma, stop.line, stop.column)
    if stop.line == stop.began:
        return YamlFault("a comma is missing here", "put commas between values", stop.line, stop.column)
    hint = f"put {closing[1]} after its last value"
    return YamlFault("the bracket that opens here is not closed", hint, stop.began, stop.began_column)


def _no_colon(stop: _Stop) -> YamlFault | None:
    return _tell_no_colon(stop, stop.began) if "could not find expected ':'" in stop.problem else None


def _tell_no_colon(stop: _Stop, line: int) -> YamlFault | None:
    """A line without a colon, or without a space after it; None where it has both."""
    text = _COMMENT.sub("", stop.text_of(line)).rstrip()
    column = len(text) - len(text.lstrip()) + 1
    if glued := _GLUED.fullmatch(text):
        written = f"{glued[1]}: {glued[2]}"
        return YamlFault("there is no space after the colon", f"write {written}", line, column)
    if ": " in text or text.endswith(":"):
        return None
    bare = _NO_COLON.fullmatch(text)
    written = f"write {bare[1]}: {bare[2]}".rstrip() if bare else "write a name, a colon, a space and the value"
    return YamlFault("this line has no colon after its name", written, line, column)


def _deeper(stop: _Stop) -> YamlFault | None:
    """A first colon where none may stand: the line above has a value, or lacks its colon."""
    if "mapping values are not allowed" not in stop.problem or not _KEY_ONLY.fullmatch(stop.text[: stop.column - 1]):
        return None
    for above in stop.above(stop.line):
        fault = _tell_no_colon(stop, above)
        if fault is not None:
            return fault
        here, there = _indent(stop.text), _indent(stop.text_of(above))
        too_shallow = _too_shallow(stop, above) if here > there else None
        if too_shallow is not None:
            return too_shallow
        if here > there:
            message = f"this line is indented deeper than line {above}, which has a value of its own"
            return YamlFault(message, f"indent it by {there} spaces, as line {above}", stop.line, here + 1)
        break
    return None


def _too_shallow(stop: _Stop, line: int) -> YamlFault | None:
    """The first line that stands as far left as the section it belongs to, where those behind it stand deeper."""
    level = _indent(stop.text_of(line))
    for above in stop.above(line):
        text = _COMMENT.sub("", stop.text_of(above)).rstrip()
        if _indent(text) != level:
            return None
        if text.endswith(":"):
            name, deeper = text.strip(" -:"), _indent(stop.text)
            message = f"this line is indented as {name} above it, and line {stop.line} is indented deeper"
            hint = f"indent it by {deeper} spaces, as line {stop.line}, if it belongs under {name}"
            return YamlFault(message, hint, line, level + 1)
        line = above
    return None


def _second_colon(stop: _Stop) -> YamlFault | None:
    if "mapping values are not allowed" not in stop.problem:
        return None
    return YamlFault("there is a second colon in this line", "put the text in quotes", stop.line, stop.column)


def _uneven(stop: _Stop) -> YamlFault | None:
    """A line that begins in a column in which none above it begins."""
    if "did not find expected key" not in stop.problem and "expected <block end>" not in stop.problem:
        return None
    here = _indent(stop.text)
    if stop.column != here + 1:
        rest = stop.text[stop.column - 1 :].strip()
        message = f"{quote(rest)} follows a value that has ended"
        return YamlFault(message, "remove it, or put the whole text in quotes", stop.line, stop.column)
    above = next(stop.above(stop.line), 0)
    too_shallow = _too_shallow(stop, above) if here > _indent(stop.text_of(above)) else None
    if too_shallow is not None:
        return too_shallow
    near = min(stop.above(stop.line), key=lambda line: (abs(_indent(stop.text_of(line)) - here), -line), default=0)
    there = _indent(stop.text_of(near))
    message = f"this line is indented by {here} {_spaces(here)}, which matches no line above it"
    hint = f"line {near} has {there}: indent both alike if they belong together"
    return YamlFault(message, hint, stop.line, stop.column)


def _first_sign(stop: _Stop) -> YamlFault | None:
    """A sign that means something to YAML at the beginning of a value."""
    if not any(
        words in stop.problem for words in ("cannot start any token", "alphabetic or numeric", "undefined alias")
    ):
        return None
    named = "undefined alias" in stop.problem
    text = stop.text[stop.column - 1 if named or stop.began == 0 else stop.began_column - 1 :]
    value = re.split(r"[,\]}]|\s#", text)[0].strip()
    message = f"{quote(value)} refers to no anchor above" if named else f"{quote(value)} begins with a sign of YAML"
    hint = f'put the text in quotes: "{value}"'
    if value[:1] == "%":
        hint = f"write {value[1:].strip()}%"
    elif named:
        hint = f"write &{value[1:]} before what it stands for, or {hint}"
    return YamlFault(message, hint, stop.line, stop.column)


def _question_mark(stop: _Stop) -> YamlFault | None:
    """A `?` in place of a value, which is not known yet."""
    if stop.text[stop.column - 1 : stop.column] != "?":
        return None
    message = "a ? alone is not a value"
    return YamlFault(message, "write tbd where it is not known yet, or leave the line out", stop.line, stop.column)


def _escape(stop: _Stop) -> YamlFault | None:
    if "escape" not in stop.problem:
        return None
    message = "a backslash in double quotes names no character"
    return YamlFault(message, "put the text in single quotes", stop.line, stop.column)


def _indent(text: str) -> int:
    return len(text) - len(text.lstrip(" "))


def _spaces(count: int) -> str:
    return "space" if count == 1 else "spaces"


_LOOKS: tuple[Callable[[_Stop], YamlFault | None], ...] = (
    _tab,
    _question_mark,
    _second_document,
    _no_colon,
    _quote,
    _cut_by_comment,
    _open_bracket,
    _deeper,
    _second_colon,
    _uneven,
    _first_sign,
    _escape,
)
