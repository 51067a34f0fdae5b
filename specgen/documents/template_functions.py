"""Functions that templates call by name, with what belongs between their brackets."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.template_mistakes import Mistake
from specgen.documents.template_views import Page
from specgen.model.suggest import suggest


@dataclass(frozen=True)
class Function:
    """A function of templates: `needs` must be given, `may` can be; with `many` any number of the last of them,
    with `free` any names with their values."""

    name: str
    needs: tuple[str, ...] = ()
    may: tuple[str, ...] = ()
    run: Callable[..., Any] = tuple
    many: bool = False
    free: bool = False
    example: str = ""

    def __call__(self, *given: Any, **named: Any) -> Any:
        """What the function answers; raises Mistake if something is missing or does not belong there."""
        places = (*self.needs, *self.may)
        by_name = dict(zip(places, given, strict=False))
        wrong = [name for name in named if not self.free and (name not in places or name in by_name)]
        if wrong or (len(given) > len(places) and not self.many) or not set(self.needs) <= {*by_name, *named}:
            raise Mistake(f"{self.name}() takes {self._usage()} between its brackets", self._remedy())
        return self.run(*given, **named)

    def _usage(self) -> str:
        """What belongs between the brackets."""
        shown = ", ".join((*self.needs, *(f"{name} if wanted" for name in self.may)))
        return f"{shown}{', ...' if self.many else ''}" if shown else "nothing"

    def _remedy(self) -> str:
        return f"for example {self.example}" if self.example else f"write {self.name}({', '.join(self.needs)})"


def check_words(value: Any, what: str) -> str:
    """Words between brackets; raises Mistake for a list or a number."""
    text = getattr(value, "text", value)
    if not isinstance(text, str):
        raise Mistake(f"{what} must be words", "put them between quotes")
    return text


def figure_functions(context: DocumentContext) -> dict[str, Function]:
    """Functions that print a figure by the name of its row or calculation."""

    def row(answer: Callable[[str], Any]) -> Callable[[Any], Any]:
        return lambda name: answer(known_name(name, "limit", context.standards.limits))

    functions = (
        Function("limit", ("the name of a limit",), run=row(context.limit), example="limit('gloss.dry')"),
        Function("figure", ("the name of a limit",), run=row(context.figure), example="figure('straightedge.long')"),
        Function(
            "computed",
            ("the name of a calculation",),
            ("the section or member it is for",),
            run=lambda name, of=None: _compute(context, name, of),
            example="computed('power-line-distance')",
        ),
    )
    return {function.name: function for function in functions}


def known_name(name: Any, what: str, known: Iterable[str]) -> str:
    """A name that there is; raises Mistake with the nearest one."""
    text = check_words(name, f"the name of a {what}")
    names = list(known)
    if text not in names:
        raise Mistake(f"there is no {what} {text!r}", suggest(text, names))
    return text


def _compute(context: DocumentContext, name: Any, of: Any) -> DisplayValue:
    """The value of a calculation for the project, or for a section or member of it; raises Mistake for another."""
    if of is None:
        names = [known for known in context.resolve.names if not context.resolve.find(known).each]
        return context.computed(known_name(name, "calculation of the whole project", names))
    known = known_name(name, "calculation", context.resolve.names)
    if not isinstance(of, Page):
        raise Mistake("computed() asks for a section or a member", "name one after the comma, such as primer")
    try:
        return context.computed(known, of._path)
    except KeyError:
        raise Mistake(f"{known} is not worked out for {of.dotted()}", "name another section or member") from None
