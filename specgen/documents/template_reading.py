"""Reads a template: bounds its size and depth, knows every kind of part it may have, and puts meters into it.

A template is read once and bounded before a word of it runs; what stands in no list here is refused.
"""

from collections.abc import Iterable, Iterator
from typing import Any

from jinja2 import Environment, TemplateSyntaxError, nodes
from jinja2.parser import Parser
from jinja2.visitor import NodeTransformer

from specgen.documents.template_mistakes import Mistake, explain_syntax
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.suggest import suggest

MOST_LETTERS = 300_000  # of a template
MOST_PARTS = 30_000  # names, words, brackets and tags of a template
MOST_DEPTH = 50  # parts within parts
MOST_LOOPS = 8  # loops within loops
MOST_NUMBER = 10**9
# What the steps of a template weigh: a function may look through all rows of the trade.
_WEIGHTS: dict[type, int] = {nodes.Getattr: 30, nodes.Getitem: 30, nodes.Call: 60, nodes.Filter: 5, nodes.Test: 5}
_KNOWN: tuple[type, ...] = (
    *(nodes.Template, nodes.Output, nodes.TemplateData, nodes.For, nodes.If, nodes.Macro, nodes.CallBlock),
    *(nodes.FilterBlock, nodes.With, nodes.Assign, nodes.AssignBlock, nodes.Name, nodes.NSRef, nodes.Const),
    *(nodes.Tuple, nodes.List, nodes.Dict, nodes.Pair, nodes.Keyword, nodes.CondExpr, nodes.Filter, nodes.Test),
    *(nodes.Call, nodes.Getitem, nodes.Getattr, nodes.Concat, nodes.Compare, nodes.Operand, nodes.And, nodes.Or),
    *(nodes.Not, nodes.Add, nodes.Sub, nodes.Mul, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Pow, nodes.Neg),
    nodes.Pos,
)
_REFUSED: dict[type, tuple[str, str]] = {
    nodes.Slice: ("a list is not cut by [ : ]", "go through it and ask for loop.index"),
    **dict.fromkeys(
        (nodes.Include, nodes.Import, nodes.FromImport, nodes.Extends),
        ("a template takes nothing from another file", "copy the words into this one"),
    ),
}


def read_tree(environment: Environment, source: str) -> nodes.Template:
    """The tree of a template; raises Mistake with its line for what it may not have."""
    if len(source) > MOST_LETTERS:
        raise Mistake(f"it has more than {MOST_LETTERS:,} characters", "a template holds words, not data")
    parser = None
    try:
        parser = Parser(environment, source)
        tree = parser.parse()
    except TemplateSyntaxError as error:
        raise explain_syntax(error) from None
    except RecursionError:
        raise _too_deep(parser.stream.current.lineno if parser else 0) from None
    except ValueError:
        line = parser.stream.current.lineno if parser else 1
        raise Mistake("a number is too long", f"numbers go up to {MOST_NUMBER:,}", line) from None
    _check_tree(tree, environment)
    return tree


def is_plain(source: str) -> bool:
    """Whether a template is one line without a tag: it is its own words, and is not compiled."""
    return not set("{\n\r") & set(source) and len(source) <= MOST_LETTERS and find_forbidden(source) is None


def _too_deep(line: int) -> Mistake:
    return Mistake("it is nested too deep", "take it apart with {% set %}", line)


def _check_tree(tree: nodes.Template, environment: Environment) -> None:
    """Raise Mistake for too many parts, parts too deep, and parts that templates do not have."""
    waiting: list[tuple[nodes.Node, int, int, int]] = [(tree, 0, 0, 1)]
    count = 0
    while waiting:
        node, depth, loops, line = waiting.pop()
        line = node.lineno or line
        count += 1
        if count > MOST_PARTS:
            raise Mistake(f"it has more than {MOST_PARTS:,} parts", "a template holds words, not data", line)
        if depth > MOST_DEPTH or loops > MOST_LOOPS:
            raise _too_deep(line)
        _check_node(node, environment, line)
        loops += isinstance(node, nodes.For)
        waiting += [(child, depth + 1, loops, line) for child in node.iter_child_nodes()]


def _check_node(node: Any, environment: Environment, line: int) -> None:
    """Raise Mistake for a part that templates do not have."""
    if type(node) not in _KNOWN:
        what = ("this tag is not for templates of documents", "leave it out")
        raise Mistake(*_REFUSED.get(type(node), what), line)
    if isinstance(node, (nodes.Filter, nodes.Test)):
        _check_named(node, environment)
    elif isinstance(node, (nodes.Const, nodes.TemplateData)):
        _check_constant(node)
    if getattr(node, "dyn_args", None) or getattr(node, "dyn_kwargs", None):
        raise Mistake("a star stands between brackets", "write what belongs there one by one", node.lineno)
    if isinstance(node, nodes.If) and len(node.elif_) > MOST_DEPTH:
        raise Mistake(f"more than {MOST_DEPTH} {{% elif %}} follow one another", "write several {% if %}", node.lineno)
    if isinstance(node, nodes.For) and node.recursive:
        raise Mistake("a loop does not call itself", "write one loop within another", node.lineno)
    if isinstance(node, nodes.Pair) and not isinstance(node.key, nodes.Const):
        raise Mistake("the word before a colon is not between quotes", "write {'word': ...}", node.lineno)
    target = getattr(node, "target", None)
    if isinstance(target, nodes.Tuple) and not all(isinstance(part, nodes.Name) for part in target.items):
        raise Mistake("names are given one by one", "write {% for one, other in ... %}", line)


def _check_named(node: Any, environment: Environment) -> None:
    """Raise Mistake for a filter or test that there is not, or that takes other values."""
    known: Any
    known, sign = (environment.filters, "|") if isinstance(node, nodes.Filter) else (environment.tests, "is")
    shown = [name for name in known if " " not in name]
    if node.name not in shown:
        raise Mistake(
            f"there is nothing called {node.name!r} to write after {sign}", suggest(node.name, shown), node.lineno
        )
    least, most = known[node.name].takes
    if node.kwargs or not least <= len(node.args or ()) <= most:
        count = "no value" if not most else "one value" if least else "one value or none"
        hint = "write it without a name" if most else "leave the brackets out"
        raise Mistake(f"{node.name} takes {count} between brackets", hint, node.lineno)


def _check_constant(node: Any) -> None:
    """Raise Mistake for words that cannot be printed and for numbers that are too large."""
    value = node.data if isinstance(node, nodes.TemplateData) else node.value
    found = find_forbidden(value) if isinstance(value, str) else None
    if found:
        raise Mistake(found[1], found[2], node.lineno + value.count("\n", 0, found[0]))
    if isinstance(value, (int, float)) and not abs(value) <= MOST_NUMBER:
        raise Mistake("a number is too large", f"numbers go up to {MOST_NUMBER:,}", node.lineno)


def put_meters(tree: nodes.Template) -> nodes.Template:
    """The tree with a meter in every loop and macro, and every comparison and joining of words bounded."""
    metered: nodes.Template = _Meters().visit(tree)
    return metered


class _Meters(NodeTransformer):
    """Puts what a template does under the meters of its sandbox; names with a space are no template's own."""

    def visit_For(self, node: nodes.For) -> nodes.Node:  # noqa: D102
        weight = _weigh([*node.body, *([node.test] if node.test else [])])
        wide = len(node.target.items) if isinstance(node.target, nodes.Tuple) else 0
        self.generic_visit(node)
        node.iter = _apply("go through", node.iter, nodes.Const(weight), nodes.Const(wide))
        return node

    def visit_Macro(self, node: Any) -> nodes.Node:  # noqa: D102
        weight = _weigh(node.body)
        self.generic_visit(node)
        node.body.insert(
            0, nodes.ExprStmt(_apply("use up", nodes.Const(weight, lineno=node.lineno)), lineno=node.lineno)
        )
        return node  # type: ignore[no-any-return]

    visit_CallBlock = visit_Macro

    def visit_Compare(self, node: nodes.Compare) -> nodes.Node:  # noqa: D102
        self.generic_visit(node)
        steps = [part for step in node.ops for part in (nodes.Const(step.op), step.expr)]
        return _apply("compare values", node.expr, *steps)

    def visit_Concat(self, node: nodes.Concat) -> nodes.Node:  # noqa: D102
        self.generic_visit(node)
        return _apply("join words", nodes.List(node.nodes, lineno=node.lineno))

    def visit_Assign(self, node: nodes.Assign) -> nodes.Node:  # noqa: D102
        self.generic_visit(node)
        if isinstance(node.target, nodes.Tuple):
            node.node = _apply("take apart", node.node, nodes.Const(len(node.target.items)))
        return node

    def visit_CondExpr(self, node: nodes.CondExpr) -> nodes.Node:  # noqa: D102
        self.generic_visit(node)
        node.expr2 = node.expr2 or nodes.Const("", lineno=node.lineno)
        return node


def _apply(name: str, node: Any, *args: Any) -> nodes.Filter:
    return nodes.Filter(node, name, list(args), [], None, None, lineno=node.lineno)


def _weigh(parts: Iterable[nodes.Node]) -> int:
    """The weight of some parts, without the bodies of loops and macros in them, which weigh by themselves."""
    return sum(_WEIGHTS.get(type(node), 1) for node in _walk(parts))


def _walk(parts: Iterable[nodes.Node]) -> Iterator[nodes.Node]:
    waiting = list(parts)
    while waiting:
        node = waiting.pop()
        yield node
        own = ("body", "test") if isinstance(node, nodes.For) else ("body",)
        closed = isinstance(node, (nodes.For, nodes.Macro, nodes.CallBlock))
        waiting += node.iter_child_nodes(exclude=own if closed else ())
