"""Converts the text of each leaf to the type of its field and checks it by the rules of its section."""

from collections.abc import Iterable, Iterator
from typing import Any

from specgen.model.field import Path
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.positions import Text
from specgen.reading.rules import Rules, SectionRules
from specgen.reading.structure import Record


def read_values(text: Text, records: Iterable[Record], rules: Rules) -> dict[Path, Any]:
    """The typed values of the records of a file by path; faults are noted on `text`."""
    values: dict[Path, Any] = {}
    for record in records:
        values |= _read_record(text, record, rules.of(record.node))
    return values


def _read_record(text: Text, record: Record, rules: SectionRules) -> dict[Path, Any]:
    depth = len(record.path)
    values: dict[Path, Any] = {}
    asked: dict[Path, Any] = {}
    for path, raw in record.leaves.items():
        place = path[depth:]
        field = rules.fields.get(place)
        if field is None:
            # A value under an unknown name is left as it is, for the rules to refuse.
            asked[place] = raw
        elif field.kind == "list":
            values[path] = tuple(_read_entries(text, rules, place, path, raw))
        elif (place, raw) in rules.passed:
            values[path] = rules.passed[place, raw]
        else:
            try:
                values[path] = asked[place] = convert(field, raw)
            except InvalidValue as invalid:
                text.problem(path, invalid.message, invalid.hint)
    for path in _find_refused(text, record, rules, asked):
        values.pop(path, None)
    if text.cut:
        _tell_cut(text, record, rules)
    return values


def _tell_cut(text: Text, record: Record, rules: SectionRules) -> None:
    """Note each text that lost its end to a `#`, which YAML takes for a comment."""
    for path, raw in record.leaves.items():
        field = rules.fields.get(path[len(record.path) :])
        if field is None or "text" not in (field.kind, field.of):
            continue
        written = {path: raw} if isinstance(raw, str) else {(*path, str(n)): one for n, one in enumerate(raw)}
        for at, one in written.items():
            before, comment = text.cut.get(text.places[at].line if at in text.places else 0, ("", ""))
            if isinstance(one, str) and one and before.endswith(one):
                message = f"{comment!r} is taken for a comment, which leaves {one!r}"
                text.problem(at, message, f'write "{one} {comment}", or put a space after # for a comment')


def _find_refused(text: Text, record: Record, rules: SectionRules, asked: dict[Path, Any]) -> list[Path]:
    """The paths whose values the rules refuse; values that pass are remembered."""
    faults = rules.faults(asked)
    for fault in faults:
        path, known = record.path + fault[0], rules.known_beside(fault)
        if known is None:
            text.problem(path, *rules.explain(fault, record.leaves[path]))
        else:
            from specgen.reading.unknown_keys import explain_unknown  # imported here: most names are known

            text.problem(path, *explain_unknown(text, path, known))
        del asked[fault[0]]
    rules.passed |= {(place, record.leaves[record.path + place]): value for place, value in asked.items()}
    return [record.path + place for place, _ in faults]


def _read_entries(text: Text, rules: SectionRules, place: Path, path: Path, raw: list[Any]) -> Iterator[Any]:
    """The valid entries of a list, each checked alone: Cerberus would make a new validator for each list."""
    field = rules.fields[place]
    for number, entry in enumerate(raw):
        here = path + (str(number),)
        if not isinstance(entry, str):
            text.problem(here, "a single value is wanted here", f"for example {field.example}")
            continue
        try:
            yield rules.value(place, entry)
        except InvalidValue as invalid:
            text.problem(here, invalid.message, invalid.hint)
