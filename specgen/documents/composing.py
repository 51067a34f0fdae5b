"""Composes a block tree from a template: Jinja2 in a sandbox, then Markdown, with every value kept intact.

Each printed value becomes a token of private-use characters, which no input may contain, and is put
back in the tree with its source: user text is never parsed as markup.
"""

from dataclasses import dataclass, field
from typing import Any

from jinja2 import TemplateError, TemplateSyntaxError, Undefined

from specgen.documents.display_values import DisplayValue
from specgen.documents.sandbox import Sandbox
from specgen.documents.tree import TOKEN, blocks_of, inlines_of
from specgen.model.block import (
    Blank,
    Block,
    Break,
    CheckBox,
    Deferred,
    Emphasis,
    Equation,
    Formula,
    Inline,
    Inlines,
    Note,
    Ref,
    Signature,
    Strong,
    Table,
    Text,
    Value,
)
from specgen.model.problem import Problem, Refused

OPEN, CLOSE = "\ue000", "\ue001"


@dataclass
class Composer:
    """Renders the templates of one document and keeps the values behind its tokens."""

    kept: list[Any] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.environment = Sandbox(self.token)

    def token(self, value: Any) -> str:
        """The token for a printed value; text that already contains tokens is a rendered piece, returned as it is."""
        if isinstance(value, Undefined):
            return str(value)  # raises an error that names what the template misses
        if isinstance(value, str) and (OPEN in value or value == ""):
            return value
        self.kept.append(value)
        return f"{OPEN}{len(self.kept) - 1}{CLOSE}"

    def text(self, template: str, names: dict[str, Any], place: str, first_line: int = 1) -> str:
        """The rendered template, with tokens in it; raises Refused with `place` and line.

        `first_line` is the line of the file on which the template begins.
        """
        try:
            return self.environment.join_pieces(self.environment.make_template(template).generate(names))
        except TemplateSyntaxError as error:
            raise _refuse_template(error, place, error.lineno + first_line - 1) from None
        except SyntaxError:
            raise _refuse_template(TemplateError("it is nested too deep"), place, first_line) from None
        except RecursionError as error:
            raise _refuse_template(
                TemplateError("it calls itself without end"), place, _line(error) + first_line - 1
            ) from None
        except (TemplateError, TypeError, ValueError, ArithmeticError, LookupError, AttributeError) as error:
            raise _refuse_template(error, place, _line(error) + first_line - 1) from None

    def plain(self, rendered: str) -> str:
        """The plain words of a rendered text, to tell whether two walls share a sentence."""
        return TOKEN.sub(lambda match: str(self.kept[int(match[1])]), rendered)

    def blocks(self, rendered: str, place: str) -> tuple[Block, ...]:
        """The block tree of a rendered template; raises Refused for Markdown that has no block."""
        try:
            return tuple(blocks_of(rendered, self.inline, self.block, place))
        except (IndexError, RecursionError):
            raise _refuse_template(TemplateError("its lists or marks are nested too deep"), place, 1) from None

    def inlines(self, rendered: str) -> Inlines:
        """The inline content of a rendered piece of Markdown."""
        return inlines_of(rendered, self.inline)

    def inline(self, number: int) -> Inline:
        """The inline content behind a token within a line."""
        value = self.kept[number]
        return value if isinstance(value, _INLINES) else to_inline(value)

    def block(self, number: int) -> Block | None:
        """The block behind a token on a line of its own, or None if it is inline content."""
        value = self.kept[number]
        return value if isinstance(value, _BLOCKS) else None


_INLINES = (Text, Value, Strong, Emphasis, Blank, CheckBox, Ref, Formula)
_BLOCKS = (Table, Equation, Signature, Break, Note, Deferred)


def to_inline(value: Any) -> Inline:
    """A value of a template as inline content."""
    if isinstance(value, DisplayValue):
        return Value(value.text, value.source, open=value.open, about=value.about)
    return Text(str(value))


def _refuse_template(error: Exception, place: str, line: int) -> Refused:
    what = str(error) if isinstance(error, TemplateError) else f"{type(error).__name__}: {error}"
    return Refused(Problem(f"the template cannot be used: {what}", "mend this line of it", "", place, line))


def _line(error: BaseException) -> int:
    """The line of the template that raised an error, from the innermost frame of template code."""
    line, frame = 0, error.__traceback__
    while frame is not None:
        if frame.tb_frame.f_code.co_filename == "<template>":
            line = frame.tb_lineno
        frame = frame.tb_next
    return line
