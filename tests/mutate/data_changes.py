"""Changes of the rows: figures, units, senses, severities, order, words."""

import re
from collections.abc import Iterator

import yaml

from tests.mutate.change import Change
from tests.mutate.words import less_a_word, moved_figure

UNITS = {
    "in": "ft",
    "ft": "in",
    "mm": "cm",
    "h": "d",
    "d": "h",
    "psi": "psf",
    "psf": "psi",
    "F": "C",
    "C": "F",
    "%": "",
}
TURNED = {
    "at least": "at most",
    "at most": "at least",
    "yes": "no",
    "no": "yes",
    "R": "W",
    "W": "H",
    "H": "W",
}
GRAVE = {"stop": "caution", "caution": "stop", "never": "deviation", "deviation": "never"}
# Where the order of rows is the order of what is printed or asked.
IN_ORDER = ("steps.yaml", "criteria.yaml", "tools.yaml", "reading/schema/")


def data_changes(file: str, text: str) -> Iterator[Change]:
    """Every change that can be made to one file of rows."""
    root = yaml.compose(text, Loader=yaml.CSafeLoader)
    if root:
        yield from _below(file, text, root)


def _below(file: str, text: str, node: yaml.Node) -> Iterator[Change]:
    if isinstance(node, yaml.MappingNode):
        for _, value in node.value:
            yield from _below(file, text, value)
    elif isinstance(node, yaml.SequenceNode):
        if file.endswith(IN_ORDER[:3]) or IN_ORDER[3] in file:
            yield from _swapped(file, text, node)
        for value in node.value:
            yield from _below(file, text, value)
    elif isinstance(node, yaml.ScalarNode):
        yield from _of_scalar(file, text, node)


def _swapped(file: str, text: str, node: yaml.SequenceNode) -> Iterator[Change]:
    """Two neighbors of a list on one line, each in the other's place."""
    for left, right in zip(node.value, node.value[1:], strict=False):
        one, gap, two = (
            _text(text, left.start_mark.index, left.end_mark.index),
            _text(text, left.end_mark.index, right.start_mark.index),
            _text(text, right.start_mark.index, right.end_mark.index),
        )
        if gap.strip() == "," and one != two:
            yield Change("order", file, left.start_mark.index, one + gap + two, two + gap + one)


def _of_scalar(file: str, text: str, node: yaml.ScalarNode) -> Iterator[Change]:
    start, before = node.start_mark.index, _text(text, node.start_mark.index, node.end_mark.index)
    for kind, after in _other_scalars(node.value, before):
        if after and after != before:
            yield Change(kind, file, start, before, after)


def _other_scalars(value: str, written: str) -> Iterator[tuple[str, str]]:
    if value in GRAVE:
        yield "severity", GRAVE[value]
    elif value in TURNED:
        yield "turn", TURNED[value]
    elif value in UNITS:
        yield "unit", f'"{UNITS[value]}"'
    elif re.fullmatch(r"[-\d./ ]+( [^ ]+)?", value):
        yield "figure", moved_figure(written)
        number, _, unit = value.rpartition(" ")
        if number and unit in UNITS:
            yield "unit", f"{number} {UNITS[unit]}".strip()
    elif " " in value:
        yield "word", less_a_word(written)
        if "limit(" not in written:
            yield "figure", moved_figure(written)


def _text(text: str, start: int, end: int) -> str:
    return text[start:end].rstrip("\n") if "\n" in text[start:end] else text[start:end]


def template_changes(file: str, text: str) -> Iterator[Change]:
    """Every change that can be made to a template of a document: a line left out, a test turned, a word."""
    at = 0
    for line in text.splitlines(keepends=True):
        bare = line.rstrip("\n")
        if found := re.search(r"\{%-? (?:el)?if (?!not )", bare):
            yield Change("turn", file, at + found.end(), "", "not ")
        elif "{%" not in bare and not bare.startswith("---") and (less := less_a_word(bare)):
            yield Change("word", file, at, bare, less)
        at += len(line)
