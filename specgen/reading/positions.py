"""YAML text to plain data: every scalar stays text, every path keeps its line and column.

One compose with the C loader where it is built in, then our own walk: duplicate keys are refused
with both lines named, and an empty, null or `tbd` value counts as absent.
"""

import gc
import re
from dataclasses import dataclass, field
from pathlib import Path as FilePath
from typing import Any

import yaml

from ..vocabulary.field import Path, dotted
from ..vocabulary.finding import Place
from ..vocabulary.problem import Problem, Refused

_Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_NULLS = {"", "~", "null", "Null", "NULL"}
_MERGE = "tag:yaml.org,2002:merge"
MOST_BYTES = 20_000_000
MOST_DEPTH = 40
# An alias stands for a whole branch; a few of them nested stand for more than any machine holds.
MOST_REPEATED = 10_000
# Unseen characters that change how text reads, and the private-use ones that the writing room
# marks values with. Tab, line feed and carriage return are white space.
_UNSEEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ue000-\uf8ff\ufffe\uffff]")


class Missing:
    """Stands for a value that is written but not known: empty, null or `tbd`."""

    def __repr__(self) -> str:
        return "tbd"


TBD = Missing()


@dataclass
class Text:
    """The content of one file: nested dicts, lists and strings, with the place of each path."""

    file: str
    data: dict[str, Any] = field(default_factory=dict)
    places: dict[Path, Place] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)

    def problem(self, path: Path, message: str, hint: str = "") -> None:
        """Note a fault at a path; a missing path is placed at its nearest parent."""
        place = next((self.places[path[:n]] for n in range(len(path), -1, -1) if path[:n] in self.places), Place(""))
        self.problems.append(Problem(message, hint, dotted(path), self.file, place.line, place.column))


def read_text(path: FilePath, shown: str) -> Text:
    """The content of the file at `path`, named `shown` in messages; raises Refused where it is no YAML mapping."""
    source = _decoded(path, shown)
    text = Text(shown)
    collecting = gc.isenabled()
    gc.disable()
    try:
        _fill(text, _composed(source, shown))
    finally:
        if collecting:
            gc.enable()
    return text


def _decoded(path: FilePath, shown: str) -> str:
    try:
        if path.stat().st_size > MOST_BYTES:
            raise Refused(Problem(f"the file is larger than {MOST_BYTES // 10**6} MB", "split it", file=shown))
        if not path.is_file():
            raise Refused(Problem("this is no regular file", "name a YAML file", file=shown))
        source = path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise Refused(
            Problem(f"the file is not UTF-8 (byte {error.start + 1})", "save it as UTF-8", file=shown)
        ) from None
    except OSError as error:
        raise Refused(
            Problem(f"the file cannot be read: {error.strerror}", "check name and folder", file=shown)
        ) from None
    unseen = _UNSEEN.search(source)
    if unseen:
        before = source[: unseen.start()]
        line, column = before.count("\n") + 1, unseen.start() - before.rfind("\n")
        message = f"character U+{ord(unseen[0]):04X} is not allowed: it cannot be seen on paper"
        raise Refused(Problem(message, "delete it", "", shown, line, column))
    return source


def _composed(source: str, shown: str) -> yaml.Node | None:
    loader = _Loader(source)
    try:
        node = loader.get_single_node()
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line, column = (mark.line + 1, mark.column + 1) if mark else (0, 0)
        raise Refused(Problem(*_explained(error, source, line), "", shown, line, column)) from None
    except (yaml.YAMLError, RecursionError) as error:
        raise Refused(Problem(f"the file is no YAML: {error}", file=shown)) from None
    finally:
        loader.dispose()
    if node is not None and not isinstance(node, yaml.MappingNode):
        raise Refused(Problem("the file does not open with a mapping", "begin with `format: 1`", file=shown))
    return node


def _explained(error: yaml.MarkedYAMLError, source: str, line: int) -> tuple[str, str]:
    problem = error.problem or "syntax error"
    written = source.split("\n")[line - 1] if line else ""
    if "\t" in written[: len(written) - len(written.lstrip())]:
        return "a tab stands in the indentation", "indent with spaces"
    if "but found another document" in problem:
        return "the file holds more than one document", "keep one; remove the line `---`"
    if "mapping values are not allowed" in problem:
        return "a second colon stands in this line", "put the text in quotes"
    return f"the file is no YAML: {problem}", "check indentation, colons and quotes here"


def _fill(text: Text, node: yaml.Node | None) -> None:
    text.places[()] = Place("", text.file, 1, 1)
    if node is not None:
        made = _Walk(text).mapping(node, ())
        text.data = made if isinstance(made, dict) else {}


class _Walk:
    """Nodes to data; keeps the nodes it is inside of, so that a node that holds itself is refused."""

    def __init__(self, text: Text) -> None:
        self.text, self.inside, self.seen = text, set[int](), set[int]()
        self.repeated = 0

    def value(self, node: yaml.Node, path: Path) -> Any:
        if isinstance(node, yaml.ScalarNode):
            return self.scalar(node)
        if id(node) in self.inside or len(self.inside) >= MOST_DEPTH:
            self.text.problem(path, "nested too deep, or inside itself", f"at most {MOST_DEPTH} levels")
            return TBD
        self.count(node)
        self.inside.add(id(node))
        made = self.mapping(node, path) if isinstance(node, yaml.MappingNode) else self.items(node, path)
        self.inside.discard(id(node))
        return made

    def count(self, node: yaml.Node) -> None:
        """Count what aliases repeat; raises Refused where that is more than a project can mean."""
        if id(node) in self.seen:
            self.repeated += 1 + len(node.value)
            if self.repeated > MOST_REPEATED:
                mark, hint = node.start_mark, "write the values out, or leave them away"
                message = "aliases repeat this more often than a project can mean"
                raise Refused(Problem(message, hint, "", self.text.file, mark.line + 1, mark.column + 1))
        self.seen.add(id(node))

    def scalar(self, node: yaml.ScalarNode) -> Any:
        plain = not node.style
        if plain and (node.value in _NULLS or node.value.lower() == "tbd"):
            return TBD
        return node.value.strip() if plain else node.value

    def mapping(self, node: yaml.Node, path: Path) -> dict[str, Any]:
        made: dict[str, Any] = {}
        for key, value in _pairs(node):
            if not isinstance(key, yaml.ScalarNode):
                self.text.problem(path, "a key must be plain text")
                continue
            here = path + (key.value,)
            mark = key.start_mark
            if key.value in made:
                first = self.text.places[here].line
                self.text.problems.append(
                    Problem(
                        f"{key.value!r} stands twice here, in line {first} and in line {mark.line + 1}",
                        "keep one of them",
                        dotted(here),
                        self.text.file,
                        mark.line + 1,
                        mark.column + 1,
                    )
                )
                continue
            self.text.places[here] = Place(dotted(here), self.text.file, mark.line + 1, mark.column + 1)
            made[key.value] = self.value(value, here)
        return made

    def items(self, node: yaml.Node, path: Path) -> list[Any]:
        made = []
        for number, item in enumerate(node.value):
            here = path + (str(number),)
            mark = item.start_mark
            self.text.places[here] = Place(dotted(here), self.text.file, mark.line + 1, mark.column + 1)
            made.append(self.value(item, here))
        return made


def _pairs(node: yaml.Node) -> list[tuple[yaml.Node, yaml.Node]]:
    """The pairs of a mapping; those of a merge key stand behind its own and do not repeat them."""
    own = [(k, v) for k, v in node.value if k.tag != _MERGE]
    taken = {k.value for k, _ in own if isinstance(k, yaml.ScalarNode)}
    for key, value in node.value:
        if key.tag == _MERGE:
            for merged in value.value if isinstance(value, yaml.SequenceNode) else [value]:
                pairs = merged.value if isinstance(merged, yaml.MappingNode) else []
                for pair in pairs:
                    if isinstance(pair[0].value, str) and pair[0].value not in taken:
                        taken.add(pair[0].value)
                        own.append(pair)
    return own
