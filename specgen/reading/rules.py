"""What may stand in a section, as rules for Cerberus: its known and required fields, their choices and bounds.

The rules are data, derived from the fields of the schema; this module says their errors in our words.
"""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from cerberus import Validator, errors
from cerberus.schema import UnvalidatedSchema

from specgen.model.field import Field, Node, Path
from specgen.model.suggest import near_hint
from specgen.reading.conversion import InvalidValue, convert

# What a project cannot do without, by section; all else that is absent is an open point. One wall must be whole.
REQUIRED: dict[Path, tuple[Path, ...]] = {
    (): (("project", "name"), ("package", "purpose")),
    ("walls", "*"): (("substrate", "kind"), ("attachment", "method")),
}

Fault = tuple[Path, errors.ErrorDefinition]


class Rules:
    """The rules of the sections that occur in one reading, each made once; a reading has its own, so has a thread."""

    def __init__(self) -> None:
        self._sections: dict[Path, SectionRules] = {}

    def of(self, section: Node) -> "SectionRules":
        """The rules of a section of the schema that is read."""
        if section.path not in self._sections:
            self._sections[section.path] = SectionRules(section)
        return self._sections[section.path]


class SectionRules:
    """The rules of a section, which is the head of a file or the members of one collection, and their validator.

    One validator holds member after member against the rules: one for each member would take most of a check.
    """

    def __init__(self, section: Node) -> None:
        self.section = section
        self.fields = dict(_leaves(section, ()))
        self.required = REQUIRED.get(section.path, ())
        # A project repeats itself: what one member gave and passed is not asked of the next.
        self.passed: dict[tuple[Path, str], Any] = {}
        self._rules = {place: rule_of(self.fields[place]) | {"required": True} for place in self.required}
        # Cerberus would hold the rules against rules of its own first, at forty times the cost: the tests do that once.
        self._validator = _Validator(UnvalidatedSchema(self._rules))

    def faults(self, values: Mapping[Path, Any]) -> list[Fault]:
        """The places below the section whose value may not stand there, each with the error of Cerberus."""
        # A file gives some fields of many: the bounds of the others need not be read from their text.
        for place in values:
            if place not in self._rules and place in self.fields:
                self._rules[place] = rule_of(self.fields[place])
        self._validator.validate(values, update=True, normalize=False)
        return list(self._validator._errors)

    def value(self, place: Path, text: str) -> Any:
        """The typed value of a text at a place, held against its rule alone; raises InvalidValue."""
        if (place, text) not in self.passed:
            value = convert(self.fields[place], text)
            faults = self.faults({place: value})
            if faults:
                raise InvalidValue(*self.explain(faults[0], text))
            self.passed[place, text] = value
        return self.passed[place, text]

    def missing(self, values: Mapping[Path, Any]) -> list[Path]:
        """The places that must be given and are not, in the order they are asked for."""
        self._validator.validate(values, normalize=False)
        absent = {place for place, error in self._validator._errors if error is errors.REQUIRED_FIELD}
        return [place for place in self.required if place in absent]

    def explain(self, fault: Fault, raw: Any) -> tuple[str, str]:
        """Message and hint of a fault, in our words; `raw` is the text that was written."""
        place, error = fault
        if error is errors.UNKNOWN_FIELD:
            return f"{place[-1]!r} is not known here", near_hint(place[-1], self._known_beside(place))
        field = self.fields[place]
        if error is errors.UNALLOWED_VALUE:
            return f"{raw!r} is no choice of this field", near_hint(raw, field.values)
        side, bound = ("below", field.least) if error is errors.MIN_VALUE else ("above", field.most)
        span = f"{field.least or 'less'} to {field.most or 'more'}"
        message = f"{raw} lies {side} {bound} and is outside the range anyone would mean"
        return message, f"{span}; asked for: {field.why}"

    def _known_beside(self, place: Path) -> tuple[str, ...]:
        """The names that are known where a place stands: those of its fields, or the marks of its collection."""
        node = self.section
        for name in place[:-1]:
            node = node.children[name]
        return node.collection.keys if node.collection else tuple(node.children)


def convert_checked(field: Field, text: str) -> Any:
    """The typed value of a text that stands alone, held against the rules of its field; raises InvalidValue."""
    return SectionRules(Node(field.path, field=field)).value((), text)


class _Validator(Validator):  # type: ignore[misc]
    """A Cerberus validator that only lists its errors.

    Its own trees of errors are sorted anew at each of them: 2,000 unknown keys in one mapping would take seconds, and
    ten times as many a hundred times as long. None of the rules it asks of every field, or before all others, is ours.
    """

    mandatory_validations = priority_validations = ()

    def _error(self, place: Path, error: errors.ErrorDefinition, *_info: Any) -> None:
        self._errors.append((place, error))


def _leaves(node: Node, place: Path) -> Iterator[tuple[Path, Field]]:
    """The fields of a section by their place below it, without those of the members of its collections."""
    if node.field is not None:
        yield place, node.field
    elif node.star is not None and node.star.field is not None and node.collection is not None:
        # A mapping of single values says which marks it may have.
        yield from ((place + (mark,), node.star.field) for mark in node.collection.keys)
    for name, child in node.children.items():
        yield from _leaves(child, place + (name,))


@cache
def rule_of(field: Field) -> dict[str, Any]:
    """The Cerberus rule of a value of a field, of one entry for a field that holds a list."""
    kind = field.of or field.kind
    if kind == "choice":
        return {"allowed": field.values}
    # The circle bounds a bearing whatever its unit; the converter knows it.
    bounds = {"min": field.least, "max": field.most} if kind != "bearing" else {}
    return {rule: convert(field, bound) for rule, bound in bounds.items() if bound}
