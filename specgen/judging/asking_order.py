"""In which order to ask: what the stops of a wall wait for, the most first."""

from collections import Counter
from collections.abc import Iterable, Iterator

from specgen.judging.applies import applicable
from specgen.judging.rule import STOP, Rule
from specgen.judging.verdict import list_pending
from specgen.model.field import Field, Path, Schema
from specgen.model.finding import Judgment
from specgen.model.project import Project

_STAGE = "verdict"
# The name of the job stands above all else; what the file is for is told by the command that writes it.
_FIRST, _TOLD = ("project",), (("format",), ("package",))
# What one line on a terminal can answer; a mark of another part of the file is none of it.
_KINDS = {"choice", "yes_no", "integer", "number", "percent", "quantity", "text", "bearing", "date", "time"}


def order_fields(schema: Schema, blank: Judgment, rules: Iterable[Rule], wall: str) -> tuple[Path, ...]:
    """The fields of the verdict stage, as paths of a wall, section by section: that which most stops wait for first.

    `blank` is the judgment of a project of which nothing is told but the wall.
    """
    weights = _weigh_sections(blank, rules, wall)
    paths = [_at(wall, field) for field in schema.fields.values() if field.ring == _STAGE and is_askable(field)]
    asked = [path for path in paths if path[:1] not in _TOLD and path not in _TOLD]
    return tuple(sorted(asked, key=lambda path: (path[:-1] != _FIRST, *weights[path[:-1]])))


def is_askable(field: Field | None) -> bool:
    """Whether one line can answer a field of the project file."""
    return field is not None and field.home == "project" and (field.of or field.kind) in _KINDS


def _at(wall: str, field: Field) -> Path:
    return tuple(wall if name == "*" else name for name in field.path)


class _Weights(dict[Path, tuple[int, int]]):
    """The number of stops and of clauses that wait for fields of a section, each negative, as the most come first."""

    def __missing__(self, section: Path) -> tuple[int, int]:
        return (0, 0)


def _weigh_sections(blank: Judgment, rules: Iterable[Rule], wall: str) -> _Weights:
    stops = _list_stops(rules)
    heavy: Counter[Path] = Counter()
    all_: Counter[Path] = Counter()
    for clause in list_pending(blank, wall):
        for need in clause.needs:
            section = tuple(need.split("."))[:-1]
            heavy[section] -= clause.code in stops
            all_[section] -= 1
    return _Weights({section: (heavy[section], all_[section]) for section in all_})


def _list_stops(rules: Iterable[Rule]) -> set[str]:
    return {clause.code for rule in rules for clause in rule.clauses if clause.severity is STOP}


def list_due(project: Project, ordered: Iterable[Path]) -> Iterator[Path]:
    """Those of the ordered fields that apply to the project as far as it is told, and are not given."""
    return (path for path in ordered if path not in project.values and applicable(project, path))


def find_shortest_stop(
    project: Project, judgment: Judgment, rules: Iterable[Rule], wall: str, most: int, unknown: Iterable[Path]
) -> tuple[Path, ...]:
    """The fields of the stop that the fewest answers settle, at most so many; none if there is no such stop.

    A stop that waits for one of the `unknown` fields cannot be settled.
    """
    stops, not_known = _list_stops(rules), set(unknown)
    waits = [_paths(clause.needs) for clause in list_pending(judgment, wall) if clause.code in stops]
    fit = [
        needs
        for needs in waits
        if len(needs) <= most and not not_known & {*needs} and all(is_askable(_field(project, path)) for path in needs)
    ]
    return min(fit, key=len, default=())


def _paths(needs: Iterable[str]) -> tuple[Path, ...]:
    return tuple(tuple(need.split(".")) for need in needs)


def _field(project: Project, path: Path) -> Field | None:
    return project.schema.field_at(path)
