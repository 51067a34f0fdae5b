"""The trade's data as YAML rows, the only place where a limit, a step, a criterion or a tool is written."""

from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any

from specgen.model.source import Kind, Source
from specgen.model.standard import Criterion, Limit, Reference, Sentence, Standards, Step, Tool
from specgen.quantities.comparison import Sense
from specgen.quantities.parse import QuantityError, measure
from specgen.standards.rows import read_rows

FOLDER = FilePath(__file__).parent


class StandardError(ValueError):
    """A row is malformed; names its file and key."""


@lru_cache(maxsize=1)
def load_standards() -> Standards:
    """All rows; raises StandardError with file and key of a malformed one."""
    sources = load_sources()
    return Standards(
        sources,
        load_limits(),
        dict(sorted(_rows("steps", _step).items(), key=lambda item: item[1].order)),
        _rows("criteria", lambda name, row: _criterion(name, row, sources)),
        _rows("tools", lambda name, row: Tool(name, **row)),
        _rows("forms", lambda name, row: f"{row['title']} ({name})"),
        _rows("references", lambda name, row: Reference(name, row["title"], sources[row["source"]], row["when"])),
        _rows("code_editions", lambda name, row: dict(row)),
    )


def load_limits() -> dict[str, Limit]:
    """The limits alone, for a sum that rests on one; raises StandardError with file and key of a malformed row."""
    return _limits_in(FOLDER)


def load_sources() -> dict[str, Source]:
    """The sources alone; raises StandardError with file and key of a malformed row."""
    return _sources_in(FOLDER)


# Kept by folder: another folder of rows is read anew.
@lru_cache(maxsize=1)
def _limits_in(folder: FilePath) -> dict[str, Limit]:
    sources = _sources_in(folder)
    return _rows("limits", lambda name, row: _limit(name, row, sources))


@lru_cache(maxsize=1)
def _sources_in(folder: FilePath) -> dict[str, Source]:
    return _rows("sources", _source)


def find_source(name: str) -> Source:
    """A source by the name of its row; KeyError for an unknown one."""
    return load_sources()[name]


def _rows(file: str, made: Any) -> dict[str, Any]:
    try:
        return {name: made(name, row) for name, row in read_rows(FOLDER / f"{file}.yaml").items()}
    except (KeyError, TypeError, ValueError, QuantityError) as error:
        raise StandardError(f"{file}.yaml: {error!r}") from error


def _source(name: str, row: Mapping[str, str]) -> Source:
    return Source(Kind[row["kind"].upper()], row.get("reference", ""), row.get("short", ""))


def _limit(name: str, row: Mapping[str, str], sources: Mapping[str, Source]) -> Limit:
    field = tuple(row["field"].split(".")) if "field" in row else None
    return Limit(
        name,
        _value(row["value"], "unit" in row),
        Sense(row["sense"]),
        sources[row["source"]],
        row.get("about", ""),
        row.get("unit", ""),
        field,
    )


def _value(text: str, bare: bool) -> Any:
    """A quantity, a bare number where the row gives its unit apart, or a word."""
    if not bare:
        return measure(text)
    if not text.replace(".", "").isdigit():
        return text
    number = Fraction(text)
    return int(number) if number.denominator == 1 else number


def _step(name: str, row: Mapping[str, Any]) -> Step:
    said = tuple(Sentence(s, "") if isinstance(s, str) else Sentence(s["say"], s["when"]) for s in row["work"])
    return Step(
        name,
        int(row["order"]),
        row["title"],
        row["point"],
        row.get("point_of", ""),
        row.get("wait", ""),
        said,
        tuple(row.get("records", ())),
        row.get("when", ""),
        tuple(row.get("cautions", ())),
    )


def _criterion(name: str, row: Mapping[str, Any], sources: Mapping[str, Source]) -> Criterion:
    basis = tuple(sources[key] for key in row["basis"])
    return Criterion(
        name,
        row["title"],
        row["method"],
        row["instrument"],
        row["limit"],
        row["readings"],
        row["location"],
        basis,
        row.get("when", ""),
    )
