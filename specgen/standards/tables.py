"""The shape of each data file: its keys, their kinds, and what a row becomes."""

import re
from collections.abc import Callable
from typing import Any, NamedTuple

from specgen.model.field import Schema
from specgen.model.finding import Severity
from specgen.model.source import Kind as SourceKind
from specgen.model.source import PublishedText, Source
from specgen.model.standard import (
    Criterion,
    Fault,
    FieldTest,
    ListedCheck,
    Reference,
    SafetyMeasure,
    Sentence,
    Step,
    Tool,
)
from specgen.quantities.comparison import Sense
from specgen.quantities.units import UNITS
from specgen.standards.limits import check_limit_field, make_limit
from specgen.standards.references import check_choice, find_field
from specgen.standards.rows import Wrong
from specgen.standards.shapes import (
    ANY_TEXT,
    COLLECTION,
    CONDITION,
    PATH,
    TEMPLATE,
    TEXT,
    WITH_FIGURES,
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
COUNTED = ("", "%", "month", "year", "years", "gloss units", "dBA")
# Hold, witness, review, carried out: what each asks of the crew is told where steps are printed.
_POINTS = ("H", "W", "R", "E")
# The articles of a three-part procedure that steps belong to, in their order.
_ARTICLES = ("examination", "preparation", "installation", "cleaning")
# A range would be a pair, and a row holds one figure: its two ends are two rows.
_SENSES = {sense.value: sense for sense in (Sense.AT_LEAST, Sense.AT_MOST, Sense.EXACTLY)}
_SEVERITIES = {word.value: word for word in (Severity.STOP, Severity.CAUTION)}
_BOXES = one_of([str(number) for number in range(1, 21)], "a number from 1 to 20")
_SOURCES = {word: SourceKind[word.upper()] for word in ("published", "practice", "memory", "computed")}


class Wanted(NamedTuple):
    """What a text must show, and what to write where it does not."""

    pattern: re.Pattern[str]
    hint: str


# A title is a proper name: two words of it begin with a capital, or it has a number. A trade column has none.
_FINDABLE = {
    "title": Wanted(re.compile(r"\d|\b[A-Z]\w*\b.*\b[A-Z]\w*"), "write its title as printed"),
    "issuer": Wanted(re.compile(r"\w\w"), "write who wrote or issued it"),
    "year": Wanted(re.compile(r"\b(19|20)\d\d\b|^undated (copy|reprint)$"), "write its year, or: undated copy"),
}
_PLACE = Wanted(
    re.compile(r"\d|\b(section|contents|equations?|example|answer|summary|title|line|withdrawal|paragraph)\b"),
    "write the page, section, table or figure",
)


class Table(NamedTuple):
    """The shape of the rows of a file, what each becomes, and a check of a whole row against the schema."""

    shape: Shape
    make: Callable[[str, dict[str, Any]], Any]
    check_fields: Callable[[str, dict[str, str], Schema], None] = lambda name, row, schema: None


def _make_text(name: str, row: dict[str, Any]) -> PublishedText:
    """A text that a reader can find: a trade column or a reference page without a title of its own is none."""
    for key, wanted in _FINDABLE.items():
        if not wanted.pattern.search(row[key]):
            raise Wrong(f"{row[key]!r} does not lead a reader to the text", wanted.hint, (key,))
    return PublishedText(**row)


def _make_source(name: str, row: dict[str, Any]) -> Source:
    """A published source is composed of a text and a place in it; any other names what it is to be confirmed by."""
    published = row["kind"] is SourceKind.PUBLISHED
    own, others = (
        (("text", "at"), ("reference",)) if published else ((), ("text", "at", "told", "controls", "elsewhere"))
    )
    for key in own:
        if key not in row:
            raise Wrong(f"the key {key} is missing", "name the text that was read, and the page or section in it")
    for key in others:
        if key in row:
            hint = "write text and at" if published else "only a published source has one: write a reference"
            raise Wrong("a source of this kind has no such key", hint, (key,))
    if published:
        at, told = row.pop("at"), row.pop("told", None)
        if not _PLACE.pattern.search(at):
            raise Wrong(f"{at!r} is no place in a text", _PLACE.hint, ("at",))
        row["reference"] = f"{row.pop('text').name}, {at}" + (f", as told in {told.name}" if told else "")
    return Source(**row)


def _make_step(name: str, row: dict[str, Any]) -> Step:
    return Step(name=name, sentences=row.pop("work"), **row)


def _make_sentence(say: str, **others: Any) -> Sentence:
    return Sentence(text=say, **others)


def _check_fault(name: str, row: dict[str, str], schema: Schema) -> None:
    check_choice(name, find_field(("walls", "*", "substrate", "condition"), schema))


def _make_edition(name: str, row: dict[str, Any]) -> dict[str, Any]:
    for part in ("eifs", "inspection"):
        if f"{part}_section" in row and f"{part}_source" not in row:
            raise Wrong(f"the key {part}_source is missing", "name the row of the text it was read in, or of memory")
    return row


def _check_edition(name: str, row: dict[str, str], schema: Schema) -> None:
    check_choice(name, find_field(("code", "edition"), schema))


_SENTENCE = text_or(
    "say",
    TEMPLATE,
    Shape({"say": TEMPLATE}, {"when": CONDITION, "each": COLLECTION, "otherwise": TEMPLATE, "faults": YES_NO}),
    _make_sentence,
)

_TEST = {
    "test": TEXT,
    "step": name_in("steps"),
    "standard": TEMPLATE,
    "frequency": TEMPLATE,
    "limit": _SENTENCE,
    "by": one_of(("applicator", "inspector")),
}
_TEST_MORE = {"when": CONDITION, "at": TEXT, "lines": list_of(ANY_TEXT)}

# In the order in which they are read: a row refers to rows of files before its own, and by name to those of any.
TABLES = {
    "texts": Table(Shape({"title": TEXT, "issuer": TEXT, "year": TEXT}), _make_text),
    "sources": Table(
        Shape(
            {"kind": one_of(_SOURCES)},
            {
                "reference": TEXT,
                "short": TEXT,
                "controls": TEXT,
                "elsewhere": YES_NO,
                "text": row_in("texts"),
                "at": TEXT,
                "told": row_in("texts"),
            },
        ),
        _make_source,
    ),
    "limits": Table(
        Shape(
            {"value": TEXT, "sense": one_of(_SENSES), "source": row_in("sources"), "about": WITH_FIGURES},
            {
                "value_si": TEXT,
                "source_si": row_in("sources"),
                "unit": one_of((*UNITS, *COUNTED)),
                "bounds": PATH,
                "maker_figure": PATH,
            },
        ),
        make_limit,
        check_limit_field,
    ),
    "forms": Table(Shape({"title": TEXT}), lambda name, row: f"{row['title']} ({name})"),
    "steps": Table(
        Shape(
            {"title": TEXT, "point": one_of(_POINTS), "article": one_of(_ARTICLES), "work": list_of(_SENTENCE)},
            {
                "follows": name_in("steps"),
                "point_of": ANY_TEXT,
                "waits": list_of(_SENTENCE),
                "released_by": PATH,
                "when": CONDITION,
                "cautions": list_of(_SENTENCE),
                "records": list_of(name_in("forms")),
                "once": YES_NO,
                "releases": name_in("steps"),
            },
        ),
        _make_step,
    ),
    "field_tests": Table(
        Shape({**_TEST, "form": name_in("forms")}, _TEST_MORE),
        lambda name, row: FieldTest(name=name, **row),
    ),
    "step_checks": Table(
        Shape(_TEST, {**_TEST_MORE, "form": name_in("forms")}),
        lambda name, row: FieldTest(name=name, **row),
    ),
    "third_party_checks": Table(Shape({"check": _SENTENCE}), lambda name, row: ListedCheck(name=name, **row)),
    "safety_measures": Table(
        Shape(
            {
                "hazard": TEXT,
                "clause": list_of(row_in("sources")),
                "measure": list_of(_SENTENCE),
                "by": one_of(("competent_person", "foreman")),
            },
            {"when": CONDITION},
        ),
        lambda name, row: SafetyMeasure(name=name, **row),
    ),
    "criteria": Table(
        Shape(
            {
                "title": TEXT,
                "method": TEMPLATE,
                "instrument": TEXT,
                "limit": TEMPLATE,
                "readings": TEXT,
                "location": TEXT,
                "basis": list_of(row_in("sources")),
            },
            {
                "when": CONDITION,
                "boxes": _BOXES,
                "for_each": PATH,
                "mean": YES_NO,
                "box_each": list_of(PATH),
                "shows": list_of(choice_of("mockup.includes")),
                "part": one_of(("sill_pan", "head_flashing", "test_area")),
                "for_record": YES_NO,
                "spare": YES_NO,
                "governing": TEMPLATE,
                "least": list_of(PATH),
                "most": list_of(PATH),
                "within": list_of(PATH),
            },
        ),
        lambda name, row: Criterion(name=name, **row),
    ),
    "tools": Table(
        Shape({"what": TEMPLATE, "step": name_in("steps")}, {"when": CONDITION}),
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
                "flashing_section": TEXT,
                "wind_standard": choice_of("code.wind_standard"),
            },
        ),
        _make_edition,
        _check_edition,
    ),
}
