"""The shape of each data file: its keys, their kinds, and what a row becomes."""

from collections.abc import Callable
from typing import Any, NamedTuple

from specgen.model.field import Schema
from specgen.model.finding import Severity
from specgen.model.source import Kind as SourceKind
from specgen.model.source import Source
from specgen.model.standard import Criterion, Fault, Reference, Sentence, Step, Tool
from specgen.quantities.comparison import Sense
from specgen.quantities.units import UNITS
from specgen.standards.limits import check_limit_field, make_limit
from specgen.standards.references import check_choice, find_field
from specgen.standards.rows import Wrong
from specgen.standards.shapes import (
    ANY_TEXT,
    CONDITION,
    PATH,
    TEMPLATE,
    TEXT,
    YES_NO,
    Shape,
    choice_of,
    list_of,
    name_in,
    one_of,
    row_in,
    text_or,
)

# What is counted, not measured; an empty unit is that of a bare count, a ratio or a word.
COUNTED = ("", "%", "month", "year", "years", "stories", "gloss units")
# Hold, witness, review, carried out: what each asks of the crew is told where steps are printed.
_POINTS = ("H", "W", "R", "E")
# A range would be a pair, and a row holds one figure: its two ends are two rows.
_SENSES = {sense.value: sense for sense in (Sense.AT_LEAST, Sense.AT_MOST, Sense.EXACTLY)}
_SEVERITIES = {word.value: word for word in (Severity.STOP, Severity.CAUTION)}
_SOURCES = {word: SourceKind[word.upper()] for word in ("published", "practice", "memory", "computed")}


class Table(NamedTuple):
    """The shape of the rows of a file, what each becomes, and a check of a whole row against the schema."""

    shape: Shape
    make: Callable[[str, dict[str, Any]], Any]
    check_fields: Callable[[str, dict[str, str], Schema], None] = lambda name, row, schema: None


def _make_source(name: str, row: dict[str, Any]) -> Source:
    if row["kind"] is SourceKind.PUBLISHED and "reference" not in row:
        raise Wrong("the key reference is missing", "name the text that was read")
    return Source(**row)


def _make_step(name: str, row: dict[str, Any]) -> Step:
    return Step(name=name, sentences=row.pop("work"), **row)


def _make_sentence(say: str, when: str = "", faults: bool = False) -> Sentence:
    return Sentence(text=say, when=when, faults=faults)


def _check_fault(name: str, row: dict[str, str], schema: Schema) -> None:
    check_choice(name, find_field(("walls", "*", "substrate", "condition"), schema))


def _make_edition(name: str, row: dict[str, Any]) -> dict[str, Any]:
    for part in ("eifs", "inspection"):
        if f"{part}_section" in row and f"{part}_source" not in row:
            raise Wrong(f"the key {part}_source is missing", "name the row of the text it was read in, or of memory")
    return row


def _check_edition(name: str, row: dict[str, str], schema: Schema) -> None:
    check_choice(name, find_field(("code", "edition"), schema))


_SENTENCE = text_or("say", TEMPLATE, Shape({"say": TEMPLATE, "when": CONDITION}, {"faults": YES_NO}), _make_sentence)

# In the order in which they are read: a row refers to rows of files before its own, and by name to those of any.
TABLES = {
    "sources": Table(Shape({"kind": one_of(_SOURCES)}, {"reference": TEXT, "short": TEXT}), _make_source),
    "limits": Table(
        Shape(
            {"value": TEXT, "sense": one_of(_SENSES), "source": row_in("sources"), "about": TEXT},
            {"value_si": TEXT, "unit": one_of((*UNITS, *COUNTED)), "bounds": PATH, "maker_figure": PATH},
        ),
        make_limit,
        check_limit_field,
    ),
    "forms": Table(Shape({"title": TEXT}), lambda name, row: f"{row['title']} ({name})"),
    "steps": Table(
        Shape(
            {"title": TEXT, "point": one_of(_POINTS), "work": list_of(_SENTENCE)},
            {
                "follows": name_in("steps"),
                "point_of": ANY_TEXT,
                "wait": TEMPLATE,
                "when": CONDITION,
                "cautions": list_of(TEMPLATE),
                "records": list_of(name_in("forms")),
            },
        ),
        _make_step,
    ),
    "criteria": Table(
        Shape(
            {
                "title": TEXT,
                "method": TEXT,
                "instrument": TEXT,
                "limit": TEMPLATE,
                "readings": TEXT,
                "location": TEXT,
                "basis": list_of(row_in("sources")),
            },
            {"when": CONDITION},
        ),
        lambda name, row: Criterion(name=name, **row),
    ),
    "tools": Table(
        Shape({"what": TEMPLATE, "why": TEMPLATE, "step": name_in("steps")}, {"when": CONDITION}),
        lambda name, row: Tool(name=name, **row),
    ),
    "references": Table(
        Shape({"title": TEXT, "source": row_in("sources")}, {"when": CONDITION}),
        lambda name, row: Reference(name=name, **row),
    ),
    "faults": Table(
        Shape({"severity": one_of(_SEVERITIES), "mend": TEXT}),
        lambda name, row: Fault(name=name, **row),
        _check_fault,
    ),
    "code_editions": Table(
        Shape(
            {"drainage_source": row_in("sources")},
            {
                "inspection_section": TEXT,
                "inspection_source": row_in("sources"),
                "eifs_section": TEXT,
                "eifs_source": row_in("sources"),
                "mcm_section": TEXT,
                "hpl_section": TEXT,
                "wind_standard": choice_of("code.wind_standard"),
            },
        ),
        _make_edition,
        _check_edition,
    ),
}
