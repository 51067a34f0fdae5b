"""Reads YAML to plain data: every scalar stays text, every path keeps its line and column.

The file is composed once, by the C loader if it is available, and then walked: duplicate keys are refused
with both lines named, and an empty, null or `tbd` value counts as absent.
"""

import gc
from dataclasses import dataclass, field
from pathlib import Path as FilePath
from typing import Any

import yaml

from specgen.model.field import Path, dotted_path
from specgen.model.finding import Place
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.problem import Problem, Refused
from specgen.reading.cut_text import find_cut
from specgen.reading.file_text import FileText, decode_source, read_source
from specgen.reading.unknown import TBD, is_unknown

Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_CORE = "tag:yaml.org,2002:"
_MERGE = _CORE + "merge"
# The tags of plain YAML; every scalar is read as text, whatever its tag.
_TAGS = {_CORE + kind for kind in ("map", "seq", "str", "int", "float", "bool", "null", "timestamp", "value")}
_PLAIN_KEY = "write one word before the colon"
MOST_DEPTH = 40
# A file with more faults is no project, or repeats one mistake; the first ones show which.
MOST_PROBLEMS = 100
MOST_MESSAGE = 300
# An alias repeats a whole branch; a few nested ones can repeat more than any machine holds.
MOST_REPEATED = 10_000
# Nodes are counted while the file is composed. A project of 50,000 lines holds 400,000 values, which take three seconds
# and 300 MB.
MOST_VALUES = 420_000


@dataclass
class Text:
    """The content of one file: nested dicts, lists and strings, with the place of each path; `empty` has no text."""

    file: str
    data: dict[str, Any] = field(default_factory=dict)
    places: dict[Path, Place] = field(default_factory=dict)
    empty: set[Path] = field(default_factory=set)
    problems: list[Problem] = field(default_factory=list)
    digest: str = ""  # of its bytes
    cut: dict[int, tuple[str, str]] = field(
        default_factory=dict
    )  # lines with text joined to a #: before it, from it on

    def problem(self, path: Path, message: str, hint: str = "") -> None:
        """Note a problem at a path, or at its nearest parent if the path is missing."""
        place = next((self.places[path[:n]] for n in range(len(path), -1, -1) if path[:n] in self.places), Place(""))
        self.problem_at(place, path, message, hint)

    def problem_at(self, place: Place, path: Path, message: str, hint: str = "") -> None:
        """Note a problem at a place."""
        here = dotted_path(path)
        self.add(Problem(_short(message), hint, _short(here), self.file, place.line, place.column))

    def add(self, problem: Problem) -> None:
        """Note a problem; raises Refused if there are more than anyone would read."""
        self.problems.append(problem)
        if len(self.problems) == MOST_PROBLEMS:
            more = Problem(f"there are {MOST_PROBLEMS} faults or more; no more are listed", "mend these first")
            raise Refused(*self.problems, more)


def _short(text: str) -> str:
    half = MOST_MESSAGE // 2
    return text if len(text) <= MOST_MESSAGE else f"{text[:half]} ... {text[-half:]}"


def read_text(path: FilePath, shown: str) -> Text:
    """The content of the file at `path`, named `shown` in messages; raises Refused if it is no YAML mapping."""
    return _read(read_source(path, shown), shown)


def parse_text(content: bytes, shown: str) -> Text:
    """The content of these bytes of a file, named `shown` in messages; raises Refused if they are no YAML mapping."""
    return _read(decode_source(content, shown), shown)


def _read(file: FileText, shown: str) -> Text:
    source, digest = file
    text = Text(shown, digest=digest)
    collecting = gc.isenabled()
    gc.disable()
    try:
        _fill(text, _compose(source, shown))
        text.cut = find_cut(source)
    finally:
        if collecting:
            gc.enable()
    return text


def _compose(source: str, shown: str) -> yaml.MappingNode:
    loader, counter = Loader(source), _Counter(shown)
    loader.descend_resolver, loader.ascend_resolver, loader.resolve = counter.enter, counter.leave, counter.tag
    try:
        node = loader.get_single_node()
    except yaml.MarkedYAMLError as error:
        from specgen.reading.unread_file import explain_no_yaml  # imported here: most files are YAML

        raise Refused(explain_no_yaml(error, source, shown)) from None
    except (ValueError, OverflowError):  # the pure Python loader turns any code into a character
        message, hint = "an escape names no character", "put the text in single quotes"
        raise Refused(Problem(message, hint, "", shown, 1, 1)) from None
    except (yaml.YAMLError, RecursionError) as error:
        raise Refused(Problem(f"the file is not valid YAML: {error}", file=shown)) from None
    finally:
        loader.dispose()
    if node is None:
        raise Refused(Problem("the file is empty", "`specgen new FILE` writes one to begin with", "", shown, 1, 1))
    if not isinstance(node, yaml.MappingNode):
        from specgen.reading.unread_file import explain_no_sections

        raise Refused(explain_no_sections(node.start_mark, source, shown))
    return node


class _Counter:
    """Replaces the loader's resolver: counts nodes, and guesses no types, as all scalars stay text."""

    def __init__(self, shown: str) -> None:
        self.shown, self.count = shown, 0

    def enter(self, parent: yaml.Node | None, index: Any) -> None:
        """Count a node that is about to be composed; raises Refused if there are too many."""
        self.count += 1
        node = index if isinstance(index, yaml.Node) else parent
        if self.count > MOST_VALUES and node is not None:
            message, hint = f"the file holds more than {MOST_VALUES:,} values", "split it, or leave some away"
            mark = node.start_mark
            raise Refused(Problem(message, hint, "", self.shown, mark.line + 1, mark.column + 1))

    def leave(self) -> None:
        """Do nothing at the end of a node."""

    def tag(self, kind: Any, value: Any, implicit: Any) -> str:
        """The tag of a node written without one."""
        if kind is not yaml.ScalarNode:
            return _CORE + ("map" if kind is yaml.MappingNode else "seq")
        return _MERGE if value == "<<" and implicit[0] else _CORE + "str"


def _fill(text: Text, node: yaml.MappingNode) -> None:
    text.places[()] = Place("", text.file, 1, 1)
    walk = _Walk(text)
    walk.inside.add(id(node))
    text.data = walk.mapping(node, ())


class _Walk:
    """Converts nodes to data; keeps the nodes it is inside of, to refuse one that contains itself."""

    def __init__(self, text: Text) -> None:
        self.text, self.inside, self.seen = text, set[int](), set[int]()
        self.repeated = 0

    def value(self, node: yaml.Node, path: Path) -> Any:
        if node.tag not in _TAGS:
            self.text.problem(path, f"a tag stands before this value: {node.tag}", "remove the tag")
            return TBD
        if isinstance(node, yaml.ScalarNode):
            return self.scalar(node, path)
        if id(node) in self.inside:
            self.text.problem(path, "this holds itself", "write the values out instead of the alias")
            return TBD
        if len(self.inside) > MOST_DEPTH:
            self.text.problem(path, "this is nested too deep", f"at most {MOST_DEPTH} levels")
            return TBD
        self.count(node)
        self.inside.add(id(node))
        data = self.mapping(node, path) if isinstance(node, yaml.MappingNode) else self.items(node, path)
        self.inside.discard(id(node))
        return data

    def count(self, node: yaml.Node) -> None:
        """Count the values that an alias repeats."""
        if id(node) in self.seen:
            self.repeat(node, 1 + len(node.value))
        self.seen.add(id(node))

    def repeat(self, node: yaml.Node, times: int) -> None:
        """Add to the count of repeated values; raises Refused if aliases and merge keys repeat too many."""
        self.repeated += times
        if self.repeated > MOST_REPEATED:
            mark, hint = node.start_mark, "write the values out, or leave them away"
            message = "aliases repeat this more often than a project can mean"
            raise Refused(Problem(message, hint, "", self.text.file, mark.line + 1, mark.column + 1))

    def scalar(self, node: yaml.ScalarNode, path: Path) -> Any:
        plain = not node.style
        if not self.is_printable(node, path):
            return TBD
        if plain and is_unknown(node.value):
            if not node.value:
                self.text.empty.add(path)
            return TBD
        return node.value.strip() if plain else node.value

    def is_printable(self, node: yaml.ScalarNode, path: Path) -> bool:
        """Whether a text can be printed; a character that only an escape can produce, such as "\\0", is noted."""
        fault = find_forbidden(node.value) if node.style == '"' else None
        if fault:
            self.text.problem_at(self.place(node, path), path, *fault[1:])
        return fault is None

    def place(self, node: yaml.Node, path: Path) -> Place:
        mark = node.start_mark
        return Place(dotted_path(path), self.text.file, mark.line + 1, mark.column + 1)

    def mapping(self, node: yaml.Node, path: Path) -> dict[str, Any]:
        data: dict[str, Any] = {}
        for key, value in self.pairs(node, path):
            if not isinstance(key, yaml.ScalarNode):
                self.text.problem_at(self.place(key, path), path, "a key must be plain text", _PLAIN_KEY)
                continue
            if not self.is_printable(key, path):
                continue
            here = path + (key.value,)
            place = self.place(key, here)
            if key.value in data:
                first = self.text.places[here].line
                message = f"{key.value!r} appears twice, in line {first} and in line {place.line}"
                self.text.problem_at(place, here, message, "keep one of them")
                continue
            self.text.places[here] = place
            data[key.value] = self.value(value, here)
        return data

    def pairs(self, node: yaml.Node, path: Path) -> list[tuple[yaml.Node, yaml.Node]]:
        """The pairs of a mapping, its own first, then those of a merge key whose names are new."""
        own = [(k, v) for k, v in node.value if k.tag != _MERGE]
        merges = [(k, v) for k, v in node.value if k.tag == _MERGE]
        for key, _ in merges[1:]:
            self.text.problem_at(self.place(key, path), path, "`<<` appears twice", "write `<<: [*one, *other]`")
        taken = {k.value for k, _ in own if isinstance(k, yaml.ScalarNode)}
        for _, value in merges[:1]:
            for merged in value.value if isinstance(value, yaml.SequenceNode) else [value]:
                new = [pair for pair in self.merged_pairs(merged, path) if pair[0].value not in taken]
                taken |= {key.value for key, _ in new}
                own += new
        return own

    def merged_pairs(self, node: yaml.Node, path: Path) -> list[tuple[yaml.Node, yaml.Node]]:
        """The pairs that a merge key takes in: those of a mapping above, including what that one merges."""
        message = "`<<` takes in a mapping that stands above"
        hint = "write `<<: *mark`, and `&mark` before that mapping"
        if len(self.inside) > MOST_DEPTH:
            message, hint = "this takes in others too deep", f"at most {MOST_DEPTH} levels"
        elif isinstance(node, yaml.MappingNode) and id(node) not in self.inside:
            self.repeat(node, 1 + len(node.value))
            self.inside.add(id(node))
            pairs = self.pairs(node, path)
            self.inside.discard(id(node))
            for key in (key for key, _ in pairs if not isinstance(key, yaml.ScalarNode)):
                self.text.problem_at(self.place(key, path), path, "a key must be plain text", _PLAIN_KEY)
            return [pair for pair in pairs if isinstance(pair[0], yaml.ScalarNode)]
        self.text.problem_at(self.place(node, path), path, message, hint)
        return []

    def items(self, node: yaml.Node, path: Path) -> list[Any]:
        entries: list[Any] = []
        for item in node.value:
            here = path + (str(len(entries)),)
            if isinstance(item, yaml.ScalarNode) and not item.style and not item.value:
                place = self.place(item, here)
                self.text.problem_at(place, here, "this entry of the list is empty", "write it, or `tbd`, or delete it")
                continue
            self.text.places[here] = self.place(item, here)
            entries.append(self.value(item, here))
        return entries
