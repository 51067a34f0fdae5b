"""Composes a block tree from a template: Jinja2 in a sandbox, then Markdown, with every value kept intact.

Each printed value becomes a token of private-use characters, which no input may contain, and is put
back in the tree with its source: user text is never parsed as markup.
"""

import sys
from dataclasses import dataclass, field
from typing import Any, cast

from jinja2 import TemplateError

from specgen.documents.display_values import DisplayValue
from specgen.documents.sandbox import CLOSE, OPEN, Meter, Sandbox
from specgen.documents.template_mistakes import Mistake
from specgen.documents.template_reading import is_plain
from specgen.documents.tree import TOKEN, blocks_of, inlines_of
from specgen.model.block import (
    Blank,
    Block,
    Break,
    CheckBox,
    Emphasis,
    Equation,
    Figure,
    Formula,
    Inline,
    Inlines,
    Note,
    Ref,
    ReviewBoxes,
    Signature,
    Strong,
    Table,
    Text,
    Value,
)
from specgen.model.problem import Problem, Refused
from specgen.model.suggest import suggest


@dataclass
class Composer:
    """Renders the templates of one document and keeps the values behind its tokens."""

    kept: list[Any] = field(default_factory=list)
    # The line of the template that prints each block, by the number of its token, and each reference, by its heading.
    lines: dict[int | str, int] = field(default_factory=dict)
    place: str = ""
    first_line: int = 1
    document: str = ""  # its number; empty where no document is composed

    def __post_init__(self) -> None:
        self.environment = Sandbox(self.token)

    def token(self, value: Any) -> str:
        """The token for a printed value; text that already contains tokens is a rendered piece, returned as it is."""
        if isinstance(value, bool):
            value = "yes" if value else "no"
        if isinstance(value, str) and (OPEN in value or value == ""):
            return value
        self.kept.append(value)
        if isinstance(value, _BLOCKS):
            self.lines[len(self.kept) - 1] = self.line_now()
        return f"{OPEN}{len(self.kept) - 1}{CLOSE}"

    def text(self, template: str, names: dict[str, Any], place: str, first_line: int = 1) -> str:
        """The rendered template, with tokens in it; raises Refused with `place` and line.

        `first_line` is the line of the file on which the template begins.
        """
        if is_plain(template):
            return template
        before = self.environment.meter, self.place, self.first_line
        self.environment.meter, self.place, self.first_line = Meter(), place, first_line
        try:
            return self.environment.concat(self.environment.make_template(template).generate(names))
        except Mistake as mistake:
            line = mistake.line or _line(mistake)
            hint = suggest(mistake.word, sorted(names)) if mistake.word else mistake.hint
            raise _refuse_template(str(mistake), hint, place, line + first_line - 1 if line else 0) from None
        except (SyntaxError, RecursionError):
            raise _refuse_template("it is nested too deep", "take it apart", place, first_line) from None
        except MemoryError:
            raise _refuse_template("it needs too much memory", "shorten it", place, first_line) from None
        except (TemplateError, TypeError, ValueError, ArithmeticError, LookupError, AttributeError) as error:
            line = getattr(error, "lineno", 0) or _line(error)
            what = "this line cannot be worked out"
            raise _refuse_template(what, "name single values", place, line + first_line - 1) from None
        finally:
            self.environment.meter, self.place, self.first_line = before

    def line_now(self) -> int:
        """The line of the file on which the template now stands; 0 if none runs."""
        frame = sys._getframe()
        while frame is not None and frame.f_code.co_filename != "<template>":
            frame = frame.f_back  # type: ignore[assignment]
        running = frame.f_globals.get("__jinja_template__") if frame is not None else None
        return running.get_corresponding_lineno(frame.f_lineno) + self.first_line - 1 if running is not None else 0

    def plain(self, rendered: str) -> str:
        """The plain words of a rendered text, to tell whether two walls share a sentence."""
        return TOKEN.sub(lambda match: str(self.kept[int(match[1])]), rendered)

    def is_open(self, rendered: str) -> bool:
        """Whether a rendered text prints a value that is still to be given."""
        return any(getattr(self.kept[int(number)], "open", False) for number in TOKEN.findall(rendered))

    def take_over(self, rendered: str, other: "Composer") -> str:
        """A text that another composer rendered, its values kept here."""
        return TOKEN.sub(lambda match: self.token(other.kept[int(match[1])]), rendered)

    def blocks(self, rendered: str, place: str) -> tuple[Block, ...]:
        """The block tree of a rendered template; raises Refused for Markdown that has no block."""
        self.place = place
        try:
            _check_size(rendered, place)
            return tuple(blocks_of(rendered, self.inline, self.block, place))
        except (IndexError, RecursionError):
            raise _refuse_template("its lists or marks are nested too deep", "list less deep", place, 1) from None

    def inlines(self, rendered: str) -> Inlines:
        """The inline content of a rendered piece of Markdown."""
        return inlines_of(rendered, self.inline)

    def inline(self, number: int) -> Inline:
        """The inline content behind a token within a line."""
        value = self.kept[number]
        if isinstance(value, _BLOCKS):
            what = f"{_NAMES[type(value)]} stands within a line"
            line = self.lines.get(number, 0)
            raise _refuse_template(what, "put it on a line of its own between empty lines", self.place, line)
        return value if isinstance(value, _INLINES) else to_inline(value)

    def block(self, number: int) -> Block | None:
        """The block behind a token on a line of its own, or None if it is inline content."""
        value = self.kept[number]
        return cast(Block, value) if isinstance(value, _BLOCKS) else None


_INLINES = (Text, Value, Strong, Emphasis, Blank, CheckBox, Ref, Formula)
_NAMES: dict[type, str] = {
    Table: "a table",
    Equation: "a line of a calculation",
    Figure: "a drawing",
    Signature: "a place to sign",
    ReviewBoxes: "the boxes of the review",
    Break: "a new page",
    Note: "a note",
}
_BLOCKS = tuple(_NAMES)
# Bounds on the text of one document, as Markdown is read: lines, and the work its signs make in long paragraphs.
MOST_LINES = 200_000
MOST_MARKING = 500_000_000


def to_inline(value: Any) -> Inline:
    """A value of a template as inline content."""
    if isinstance(value, DisplayValue):
        return Value(value.text, value.source, open=value.open, about=value.about, asks=value.asks, row=value.row)
    return Text(str(value))


def letter_here(value: DisplayValue) -> Value:
    """A value as inline content, the letter of its source right behind it and not at the end of its cell."""
    return Value(
        value.text, value.source, lettered=True, open=value.open, about=value.about, asks=value.asks, row=value.row
    )


def _check_size(rendered: str, place: str) -> None:
    """Refuse a text that is larger, or has more signs in a paragraph, than a document can need."""
    if rendered.count("\n") > MOST_LINES:
        raise _refuse_template(f"it makes more than {MOST_LINES:,} lines", "shorten it", place, 0)
    marking = 0
    for paragraph in rendered.split("\n\n"):
        signs = sum(map(paragraph.count, ("\\", "*", "_", "  \n")))
        marking += signs * len(paragraph) + paragraph.count("\n") ** 2 // 10
    if marking > MOST_MARKING:
        raise _refuse_template("a paragraph is too long for the signs in it", "put empty lines into it", place, 0)


def _refuse_template(what: str, hint: str, place: str, line: int) -> Refused:
    return Refused(Problem(f"the template cannot be used: {what}", hint, "", place, line))


def _line(error: BaseException) -> int:
    """The line of the template that raised an error, from the innermost frame of template code."""
    line, frame = 0, error.__traceback__
    while frame is not None:
        if frame.tb_frame.f_code.co_filename == "<template>":
            line = frame.tb_lineno
        frame = frame.tb_next
    return line
