"""The sandbox that templates run in: what they may use, and how much work they may do."""

from collections.abc import Callable, Iterable, Iterator
from types import CodeType
from typing import Any

from jinja2 import StrictUndefined, Template, TemplateError, TemplateSyntaxError, nodes, pass_context
from jinja2.sandbox import SandboxedEnvironment

from specgen.model.forbidden_characters import find_forbidden

# Bounds on one document: turns of all loops and macros, numbers in one range, values printed, size of the text.
MOST_TURNS = 100_000
MOST_RANGE = 1_000
MOST_PRINTED = 100_000
MOST_TEXT = 5_000_000  # characters
MOST_JOINED = 100_000
_FILTERS = ("capitalize", "first", "join", "last", "length", "lower", "string", "trim", "upper")
_TESTS = ("defined", "divisibleby", "even", "in", "none", "odd", "string", "number", "eq", "ne", "lt", "le", "gt", "ge")
_GLOBALS = ("namespace",)
# Compiled code by the text of its template. All steps of the work and all documents are about a third of what is kept.
_CODE: dict[str, CodeType] = {}
_MOST_CODE = 2_000


class TooMuch(TemplateError):
    """A template does more work than a document can need."""


class Unknown(StrictUndefined):
    """A name that a template uses and that is not defined."""

    @property
    def _undefined_message(self) -> str:
        return str(self._undefined_hint or f"there is no {self._undefined_name!r} here")


class Sandbox(SandboxedEnvironment):
    """The environment of one document; `token` prints a value."""

    # Operands are checked before the operation is run: `"a" * 10**9` is refused.
    intercepted_binops = frozenset(["+", "*", "**", "%"])

    def __init__(self, token: Callable[[Any], str]) -> None:
        super().__init__(
            undefined=Unknown,
            finalize=self._make_printer(token),
            trim_blocks=True,
            lstrip_blocks=True,
            autoescape=False,
        )
        self.turns = self.printed = self.size = 0
        self.filters = {name: self.filters[name] for name in _FILTERS} | {"_count_turns": self._count_turns}
        self.filters["_join"] = self._join
        self.tests = {name: self.tests[name] for name in _TESTS}
        self.tests["given"] = lambda value: not getattr(value, "open", False)
        self.globals = {name: self.globals[name] for name in _GLOBALS} | {"range": bounded_range}

    def _parse(self, source: str, name: str | None, filename: str | None) -> nodes.Template:
        """The syntax tree of a template, with a turn counter in every loop and macro."""
        tree = super()._parse(source, name, filename)
        for loop in tree.find_all(nodes.For):
            loop.iter = nodes.Filter(loop.iter, "_count_turns", [], [], None, None, lineno=loop.lineno)
        for concat in tree.find_all(nodes.Concat):
            concat.nodes = [nodes.Filter(nodes.List(concat.nodes), "_join", [], [], None, None, lineno=concat.lineno)]
        for text in tree.find_all((nodes.Const, nodes.TemplateData)):
            words = getattr(text, "value", None) or getattr(text, "data", None)
            found = find_forbidden(words) if isinstance(words, str) else None
            if found:
                raise TemplateSyntaxError(found[1], text.lineno)
        for macro in tree.find_all((nodes.Macro, nodes.CallBlock)):
            counted = nodes.Filter(
                nodes.List([nodes.Const("")]), "_count_turns", [], [], None, None, lineno=macro.lineno
            )
            body: list[nodes.Node] = getattr(macro, "body")  # noqa: B009  the two kinds share no typed base
            once = nodes.For(nodes.Name("_", "store"), counted, [], [], None, False, lineno=macro.lineno)
            body.insert(0, once)
        return tree

    def make_template(self, source: str) -> Template:
        """The template of a text; a text already met, in whichever document, is not compiled again."""
        if source not in _CODE:
            if len(_CODE) >= _MOST_CODE:
                _CODE.clear()
            _CODE[source] = self.compile(source)
        return self.template_class.from_code(self, _CODE[source], self.make_globals(None))

    def call_binop(self, context: Any, operator: str, left: Any, right: Any) -> Any:
        """The result of an operator on small numbers or of joining two texts; raises TooMuch."""
        if operator == "+" and isinstance(left, str) and isinstance(right, str):
            return self._join([left, right])
        small = all(isinstance(side, (int, float)) and abs(side) < 10**9 for side in (left, right))
        if not small or operator == "**":
            raise TooMuch(
                f"{operator} is for small numbers only; figures of the project are worked out by calculations"
            )
        return super().call_binop(context, operator, left, right)

    def join_pieces(self, pieces: Iterable[str]) -> str:
        """The text of a template from its pieces; raises TooMuch before it fills memory."""
        kept, size = [], 0
        for piece in pieces:
            kept.append(piece)
            size += len(piece)
            if size > MOST_TEXT:
                raise TooMuch(f"it makes more than {MOST_TEXT:,} characters")
        return "".join(kept)

    def _join(self, parts: Iterable[Any]) -> str:
        """The parts as one text; raises TooMuch if it is too long."""
        joined = "".join(map(str, parts))
        if len(joined) > MOST_JOINED:
            raise TooMuch(f"it joins more than {MOST_JOINED:,} characters")
        return joined

    def _count_turns(self, entries: Iterable[Any]) -> Iterator[Any]:
        for entry in entries:
            self.turns += 1
            if self.turns > MOST_TURNS:
                raise TooMuch(f"its loops and macros make more than {MOST_TURNS:,} turns")
            yield entry

    def _make_printer(self, token: Callable[[Any], str]) -> Callable[..., str]:
        # With the context asked for, a constant is printed when it is reached, so that code serves every document.
        @pass_context
        def print_value(context: Any, value: Any) -> str:  # noqa: ARG001
            self.printed += 1
            if self.printed > MOST_PRINTED:
                raise TooMuch(f"it prints more than {MOST_PRINTED:,} values")
            text = token(value)
            self.size += len(text)
            if self.size > MOST_TEXT:
                raise TooMuch(f"it makes more than {MOST_TEXT:,} characters")
            return text

        return print_value


def bounded_range(*ends: int) -> range:
    """The numbers of a loop; raises TooMuch if there are more than any table has rows."""
    numbers = range(*ends)
    if numbers and abs(numbers[-1] - numbers[0]) // abs(numbers.step) >= MOST_RANGE:
        raise TooMuch(f"a range has more than {MOST_RANGE:,} numbers")
    return numbers
