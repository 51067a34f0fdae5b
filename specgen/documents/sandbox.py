"""The sandbox that templates run in: what they may use, and how much work they may do."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from types import CodeType
from typing import Any

from jinja2 import StrictUndefined, Template, nodes, pass_context
from jinja2.runtime import Context, Macro
from jinja2.sandbox import SandboxedEnvironment
from jinja2.utils import Namespace, missing

from specgen.documents import template_values as values
from specgen.documents.display_values import NO_ENTRIES
from specgen.documents.template_filters import (
    FILTERS,
    JOINS,
    LISTS,
    MAKERS,
    TESTS,
    Named,
    check_length,
    compare_all,
    unpack,
)
from specgen.documents.template_functions import Function
from specgen.documents.template_mistakes import MEND, Mistake
from specgen.documents.template_reading import MOST_NUMBER, put_meters, read_tree
from specgen.model.block import Table
from specgen.model.suggest import suggest

# Bounds on one template: steps of work, numbers in one range, values printed, size of the text, macros within macros.
MOST_WORK = 15_000_000
MOST_RANGE = 1_000
MOST_PRINTED = 100_000
MOST_TEXT = 5_000_000  # characters
MOST_MACROS = 20
CELL = 10  # work for a cell of a table
OPEN, CLOSE = "\ue000", "\ue001"  # around the number of a printed value
TOO_MUCH = "a document needs less; shorten it"
# Compiled code by the text of its template. All steps of the work and all documents are about a third of what is kept.
_CODE: dict[str, CodeType] = {}
_MOST_CODE = 2_000


@dataclass
class Meter:
    """What one template has used up."""

    work: int = 0
    printed: int = 0
    made: int = 0  # characters
    macros: int = 0  # that run within one another

    def charge(self, work: int = 0, made: int = 0, printed: int = 0) -> None:
        """Count work, characters and printed values; raises Mistake beyond what a document can need."""
        self.work += work
        self.made += made
        self.printed += printed
        if self.work > MOST_WORK:
            raise Mistake("its loops and macros do more than a document can need", TOO_MUCH)
        if self.made > MOST_TEXT:
            raise Mistake(f"it makes more than {MOST_TEXT:,} characters", TOO_MUCH)
        if self.printed > MOST_PRINTED:
            raise Mistake(f"it prints more than {MOST_PRINTED:,} values", TOO_MUCH)


class Unknown(StrictUndefined):
    """A name that a template uses and that there is not."""

    def __init__(self, hint: str | None = None, obj: Any = missing, name: str | None = None, *_: Any) -> None:
        def explain(_told: str) -> Mistake:
            if hint and name and obj is missing:
                return Mistake(
                    f"{name!r} is not given to this macro", "name it between the brackets, or give it a value"
                )
            word = "" if hint or obj is not missing else str(name)
            near = suggest(str(name), values.names_of(obj)) if obj is not missing else ""
            return Mistake(hint or f"there is no {name!r} {values.where(obj)}", near or MEND, word=word)

        super().__init__(hint, obj, name, explain)  # type: ignore[arg-type]


class Sandbox(SandboxedEnvironment):
    """The environment of one document; `token` prints a value."""

    # Every operator goes through the sandbox: `"a" * 10**9` is refused before it is worked out.
    intercepted_binops = frozenset(["+", "-", "*", "/", "//", "%", "**"])
    intercepted_unops = frozenset(["+", "-"])

    def __init__(self, token: Callable[[Any], str]) -> None:
        super().__init__(
            undefined=Unknown,
            finalize=self._make_printer(token),
            trim_blocks=True,
            lstrip_blocks=True,
            autoescape=False,
            optimized=False,  # nothing is worked out before it is metered
        )
        self.meter = Meter()
        self._token = token
        made: dict[str, Any] = {name: Named(self._count_made(make)) for name, make in MAKERS.items()}
        made |= {name: Named(self._count_looks(named), named.takes) for name, named in FILTERS.items()}
        made["join"] = Named(lambda *given: self._join(JOINS(*given)), JOINS.takes)
        made["listed"] = Named(self._list)
        self.filters = made | self._inner_filters()
        tests: dict[str, Any] = TESTS | {"in": Named(self._count_looks(TESTS["in"]), (1, 1))}
        self.tests = tests
        self.globals = {
            "namespace": Function("namespace", run=Namespace, free=True, example="namespace(count=0)"),
            "range": Function("range", ("to",), ("end", "step"), bounded_range),
        }

    def _inner_filters(self) -> dict[str, Callable[..., Any]]:
        """What reading puts into a template; no template can name them, as they have a space."""
        return {
            "go through": self._go_through,
            "use up": lambda weight: self.meter.charge(work=weight),
            "compare values": self._count_looks(compare_all),
            "join words": self._join,
            "take apart": unpack,
        }

    def _parse(self, source: str, *_: Any) -> nodes.Template:
        """The syntax tree of a template; raises Mistake with its line."""
        return read_tree(self, source)

    def _generate(
        self, source: nodes.Template, name: str | None, filename: str | None, defer_init: bool = False
    ) -> str:
        """The program of a template, with meters in it."""
        return super()._generate(put_meters(source), name, filename, defer_init)

    def getattr(self, obj: Any, attribute: str) -> Any:
        """The part of a value by its name."""
        return self.getitem(obj, attribute)

    def getitem(self, obj: Any, argument: Any) -> Any:
        """The part of a value by name, mark or place."""
        values.check_defined(obj)
        values.check_defined(argument)
        part = values.read_part(obj, argument)
        return Unknown(obj=obj, name=argument) if part is values.NOTHING else part

    def call(__self, __context: Context, __obj: Any, *args: Any, **kwargs: Any) -> Any:  # noqa: N805
        """What a function or macro of templates answers; raises Mistake for anything else."""
        values.check_defined(__obj)
        if isinstance(__obj, Macro):
            return __self._call_macro(__context, __obj, args, kwargs)
        if not isinstance(__obj, Function):
            raise Mistake(f"{values.describe(__obj)} takes no brackets", "leave the brackets out")
        answer = __obj(*args, **{name: value for name, value in kwargs.items() if not name.startswith("_")})
        cells = len(answer.rows) * len(answer.header) if isinstance(answer, Table) else len(args)
        __self.meter.charge(work=CELL * cells)
        return answer

    def _call_macro(self, context: Context, macro: Macro, args: tuple[Any, ...], kwargs: dict[str, Any]) -> Any:
        """The words a macro makes; raises Mistake for a value it does not take, and for one that calls itself."""
        given = [name for name in kwargs if not name.startswith("_") and name != "caller"]
        strange = [name for name in given if name not in macro.arguments[len(args) :]]
        if (len(args) > len(macro.arguments) and not macro.catch_varargs) or (strange and not macro.catch_kwargs):
            taken = ", ".join(macro.arguments) or "nothing"
            raise Mistake(f"the macro {macro.name} does not fit", f"between its brackets stands: {taken}")
        if self.meter.macros >= MOST_MACROS:
            raise Mistake("it calls itself without end", "let a macro call no macro that calls it again")
        self.meter.macros += 1
        try:
            return super().call(context, macro, *args, **kwargs)
        finally:
            self.meter.macros -= 1

    def make_template(self, source: str) -> Template:
        """The template of a text; a text already met, in whichever document, is not compiled again."""
        if source not in _CODE:
            if len(_CODE) >= _MOST_CODE:
                _CODE.clear()
            _CODE[source] = self.compile(source)
        return self.template_class.from_code(self, _CODE[source], self.make_globals(None))

    def call_binop(self, context: Any, operator: str, left: Any, right: Any) -> Any:
        """The result of an operator on small numbers or of joining two texts; raises Mistake."""
        if operator == "+" and isinstance(left, str) and isinstance(right, str):
            return self._join([left, right])
        for side in (left, right):
            values.check_defined(side)
            if operator == "**" or not isinstance(side, (int, float)) or not abs(side) <= MOST_NUMBER:
                raise Mistake(
                    f"{operator} is for small numbers only", "figures of the project are worked out by computed()"
                )
        if operator in ("/", "//", "%") and not right:
            raise Mistake("nothing is divided by zero", MEND)
        return super().call_binop(context, operator, left, right)

    def call_unop(self, context: Any, operator: str, arg: Any) -> Any:
        """A number with its sign; raises Mistake for anything else."""
        return self.call_binop(context, operator, 0, arg)

    def concat(self, pieces: Iterable[str]) -> str:
        """The text of a template or macro from its pieces; raises Mistake before it fills memory."""
        kept = []
        for piece in pieces:
            self.meter.charge(made=len(piece))
            kept.append(piece)
        return "".join(kept)

    def _join(self, parts: Iterable[Any]) -> str:
        """The parts as one text; raises Mistake if it is too long.

        Beside a piece that is rendered already, every other part becomes a token, so that it is never read as markup.
        """
        words, length = [], 0
        for part in parts:
            words.append(values.words_of_value(part))
            length += len(words[-1])
            check_length(length)
            self.meter.charge(work=1)
        if any(OPEN in text for text in words):
            words = [text if OPEN in text else self._token(text) for text in words]
        self.meter.charge(made=length)
        return "".join(words)

    def _list(self, value: Any) -> Any:
        """The entries as a sentence names them; an open value for a list still to be given or without entries."""
        return value if getattr(value, "open", False) else self._join(LISTS(value)) or NO_ENTRIES

    def _count_made(self, make: Callable[[Any], str]) -> Callable[[Any], str]:
        def run(value: Any) -> str:
            text = make(value)
            self.meter.charge(made=len(text))
            return text

        return run

    def _count_looks(self, run: Callable[..., Any]) -> Callable[..., Any]:
        def look_through(*given: Any) -> Any:
            self.meter.charge(work=sum(map(values.size_of, given)))
            return run(*given)

        return look_through

    def _go_through(self, entries: Any, weight: int, wide: int) -> Iterator[Any]:
        """The entries of a loop; each turn uses up what its body weighs."""
        for entry in values.entries_of(entries):
            self.meter.charge(work=1 + weight)
            yield unpack(entry, wide) if wide else entry

    def _make_printer(self, token: Callable[[Any], str]) -> Callable[[Any, Any], str]:
        @pass_context
        def print_value(_: Any, value: Any) -> str:
            values.check_printed(value)
            # A table counts by its rows: it is kept whole, however often it is printed.
            self.meter.charge(printed=len(value.rows) or 1 if isinstance(value, Table) else 1)
            return token(value)

        return print_value


def bounded_range(*ends: Any) -> range:
    """The numbers of a loop; raises Mistake if there are more than any table has rows."""
    if any(type(end) is not int for end in ends) or (len(ends) == 3 and not ends[2]):
        raise Mistake("a range is of whole numbers", "for example range(1, 4)")
    numbers = range(*ends)
    if len(numbers) > MOST_RANGE:
        raise Mistake(f"a range has more than {MOST_RANGE:,} numbers", TOO_MUCH)
    return numbers
