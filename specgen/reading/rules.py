"""Rules for Cerberus on what a section may contain: its known and required fields, their choices and bounds.

The rules are data derived from the fields of the schema; errors are reported in our own words.
"""

from collections.abc import Callable, Iterator, Mapping
from functools import cache, partial
from typing import Any

from cerberus import Validator, errors
from cerberus.schema import UnvalidatedSchema

from specgen.model.field import Field, Node, Path
from specgen.quantities.format import format_quantity
from specgen.quantities.number import parse_number
from specgen.quantities.quantity import Quantity
from specgen.reading.choices import refuse_choice
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.number_words import is_share, tell_share

# Required fields by section; any other absent field is an open item. One wall must be complete.
REQUIRED: dict[Path, tuple[Path, ...]] = {
    (): (("project", "name"), ("package", "purpose")),
    ("walls", "*"): (("substrate", "kind"), ("attachment", "method")),
}

# A length that is not 0 is at least this, by the unit its field is printed in: less is a slip of unit. Less than a leaf
# of a feeler gauge, than a mark of a tape, than a step of a wet film comb; common practice, no source.
_SLIVERS = {"in": Quantity.of("0.001", "in"), "ft": Quantity.of("1/32", "in"), "mil": Quantity.of("0.1", "mil")}
_SLIVER = errors.ErrorDefinition(0x1001, None)

Fault = tuple[Path, errors.ErrorDefinition]


class Rules:
    """The rules of the sections in use, each made once; every reading has its own, which keeps threads apart."""

    def __init__(self) -> None:
        self._sections: dict[Path, SectionRules] = {}

    def of(self, section: Node) -> "SectionRules":
        """The rules of a section of the schema."""
        if section.path not in self._sections:
            self._sections[section.path] = SectionRules(section)
        return self._sections[section.path]


class SectionRules:
    """The rules and validator of a section, which is the head of a file or the members of one collection.

    One validator serves all members: one for each member would take most of the time of a check.
    """

    def __init__(self, section: Node) -> None:
        self.section = section
        self.fields = dict(_leaves(section, ()))
        self.required = REQUIRED.get(section.path, ())
        # Projects repeat values: what has passed for one member is not checked again for the next.
        self.passed: dict[tuple[Path, str], Any] = {}
        self._rules = {place: rule_of(self.fields[place]) | {"required": True} for place in self.required}
        # Cerberus would validate the rules themselves first, at forty times the cost: the tests do that once.
        self._validator = _Validator(UnvalidatedSchema(self._rules))

    def faults(self, values: Mapping[Path, Any]) -> list[Fault]:
        """The places below the section with an invalid value, each with the error of Cerberus."""
        # A file gives a few of many fields: the bounds of the others need not be parsed.
        for place in values:
            if place not in self._rules and place in self.fields:
                self._rules[place] = rule_of(self.fields[place])
        self._validator.validate(values, update=True, normalize=False)
        return list(self._validator._errors)

    def value(self, place: Path, text: str) -> Any:
        """The typed value of a text at a place, checked by its own rule; raises InvalidValue."""
        if (place, text) not in self.passed:
            value = convert(self.fields[place], text)
            faults = self.faults({place: value})
            if faults:
                raise InvalidValue(*self.explain(faults[0], text))
            self.passed[place, text] = value
        return self.passed[place, text]

    def missing(self, values: Mapping[Path, Any]) -> list[Path]:
        """The required places that are absent, in the order of the schema."""
        self._validator.validate(values, normalize=False)
        absent = {place for place, error in self._validator._errors if error is errors.REQUIRED_FIELD}
        return [place for place in self.required if place in absent]

    def explain(self, fault: Fault, raw: Any) -> tuple[str, str]:
        """Message and hint of a fault of a value, in our words; `raw` is the text that was written."""
        place, error = fault
        field = self.fields[place]
        if error is errors.UNALLOWED_VALUE:
            return refuse_choice(field, raw)
        if error is _SLIVER:
            thinnest = _SLIVERS[field.unit_ip]
            least = format_quantity(thinnest, thinnest.unit)
            return f"{raw} is thinner than anyone would measure", f"write 0, or {least} or more"
        if error is errors.MAX_VALUE and is_share(field) and 2 < (percent := parse_number(raw)) <= 100:
            return tell_share(raw, percent)
        least, most = tell_bounds(field, raw)
        side, bound = ("below", least) if error is errors.MIN_VALUE else ("above", most)
        span = f"{least or 'less'} to {most or 'more'}"
        return f"{raw} is {side} {bound}, outside the range of this field", span

    def known_beside(self, fault: Fault) -> tuple[str, ...] | None:
        """Where a name is not known, those that are: fields of its section, or marks of its collection; else None."""
        if fault[1] is not errors.UNKNOWN_FIELD:
            return None
        node = self.section
        for name in fault[0][:-1]:
            node = node.children[name]
        return node.collection.keys if node.collection else tuple(node.children)


def convert_checked(field: Field, text: str) -> Any:
    """The typed value of a single text, checked by the rules of its field; raises InvalidValue."""
    return SectionRules(Node(field.path, field=field)).value((), text)


def tell_bounds(field: Field, raw: Any) -> tuple[str, str]:
    """The bounds of a field as they stand; of a value in the unit of neither, in its unit: `47.9 kPa` for 1000 psf."""
    bounds = (field.least, field.most)
    if field.kind != "quantity":
        return bounds
    unit, limits = convert(field, str(raw)).unit, [convert(field, bound) for bound in bounds if bound]
    if unit in [limit.unit for limit in limits]:
        return bounds
    least, most = (format_quantity(convert(field, bound), unit) if bound else bound for bound in bounds)
    return least, most


class _Validator(Validator):  # type: ignore[misc]
    """A Cerberus validator that only lists its errors.

    Cerberus re-sorts its error trees at each error: 2,000 unknown keys in one mapping would take seconds, and ten times
    as many a hundred times as long. Its mandatory and priority rules are switched off, as we use none of them.
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
        for mark in node.collection.keys:
            yield from _leaves(node.below(mark) or node.star, place + (mark,))
        return
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
    rule = {name: convert(field, bound) for name, bound in bounds.items() if bound}
    if isinstance(rule.get("min"), Quantity) and rule["min"].dimension == "length" and rule["min"].amount <= 0:
        rule["check_with"] = partial(_refuse_sliver, _SLIVERS[field.unit_ip])
    return rule


def _refuse_sliver(least: Quantity, place: Path, value: Quantity, note: Callable[..., None]) -> None:
    if 0 < abs(value.amount) < least.amount:
        note(place, _SLIVER)
