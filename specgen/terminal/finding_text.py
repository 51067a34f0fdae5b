"""A finding as lines of text: what, so what, what to do and to type, where, by whom, and where to read on."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import NamedTuple

from specgen.judging.owners import find_owners
from specgen.judging.registry import load_rules
from specgen.judging.rule import Clause
from specgen.model.field import Field
from specgen.model.figure_text import fill_figures
from specgen.model.finding import Finding, Judgment, Place, Severity, ToAdd
from specgen.model.project import Project
from specgen.model.source import Basis
from specgen.model.value_text import words
from specgen.resolving.editions import fill_editions
from specgen.resolving.limits_in_force import figure_alone
from specgen.resolving.party_names import party_name_path
from specgen.standards import load_standards
from specgen.terminal.field_lines import example_text
from specgen.terminal.ranges import join_marks
from specgen.terminal.screen import Line

_INDENT, _HANGING = "     ", 7
_MOST_ADDED = 6
_PAPERS = "attachments"  # which of them is meant, nobody can tell
# What draws the line of a file with a mark below the value of a place.
Marker = Callable[[Place], Iterable[Line]]


class Told(NamedTuple):
    """What findings are told with: the project, its judgment, and how a place is shown."""

    project: Project
    judgment: Judgment
    mark: Marker


def describe_finding(told: Told, finding: Finding, number: int = 0) -> Iterator[Line]:
    """The lines of a finding; a number stands before it where the list is numbered."""
    clause = find_clause(finding.code)
    head, severity = f"{number}. " if number else "", str(finding.severity)
    yield Line()
    title = f"{head}{severity.upper()} {finding.code}  {join_marks(finding.subjects)}"
    yield Line(title, _HANGING, severity.upper(), severity)
    yield from map(_body, _tell_groups(finding, "message"))
    if finding.lifted_by:
        yield _body(f"lifted by deviation {finding.lifted_by}")
    yield _body(f"so: {_tell_weight(told, finding, clause)}")
    if reason := _find_reason(told.project, clause):
        yield _body(f"why: {reason}")
    yield from (_body(f"measure: {text}") for text in _tell_groups(finding, "remedy"))
    yield from _list_added(told.project, finding)
    yield _body(f"by: {tell_owners(told.project, find_owners(told.project, finding))}")
    yield _body(f"at {tell_places(finding.places)}")
    yield from told.mark(finding.place)
    yield _body(f"basis: {tell_basis(told.project, finding.basis)}")
    yield _body(f"more: specgen rules {finding.rule}")


def find_clause(code: str) -> Clause:
    """The clause of a code."""
    return next(c for rule in load_rules() if code.startswith(rule.code) for c in rule.clauses if c.code == code)


def _body(text: str) -> Line:
    return Line(_INDENT + text, _HANGING)


def _tell_groups(finding: Finding, part: str) -> list[str]:
    """A sentence of a finding: once where it is the same for all its subjects, else once for those alike."""
    alike: dict[str, list[str]] = {}
    for one in finding.told:
        alike.setdefault(getattr(one, part), []).extend(one.subjects)
    if len(alike) <= 1:
        return [*alike]
    return [_name_in(text, names) for text, names in alike.items()]


def _name_in(text: str, names: Sequence[str]) -> str:
    """A sentence with those it is said of, unless it names them itself."""
    return text if all(name in text for name in names) else f"{join_marks(names)}: {text}"


def _tell_weight(told: Told, finding: Finding, clause: Clause) -> str:
    """What a finding does to the walls and to the package."""
    walls = told.judgment.walls
    refused = join_marks(mark for mark in finding.walls if finding.code in walls[mark].refused_by)
    lacking = join_marks(mark for mark in finding.walls if finding.code in walls[mark].lacking)
    if finding.severity is Severity.STOP:
        held = f"{refused} cannot be built as described" if refused else ""
        held = held or (f"{lacking} cannot be decided without it" if lacking else "the package is stopped")
        lift = "no deviation lifts it" if clause.lift == "never" else "only an approved deviation lifts it"
        return f"{held}; {lift}."
    documents = f"see {', '.join(finding.documents)}" if finding.documents else "nothing is stopped"
    return f"the work needs this measure; {documents}." if finding.severity is Severity.CAUTION else f"{documents}."


def _find_reason(project: Project, clause: Clause) -> str:
    """The reason of a clause, or else the first sentence of that of its rule."""
    reason = clause.why or clause.rule.manual.partition("Why:")[2].partition("\n\n")[0]
    first, dot, _ = " ".join(reason.split()).partition(". ")
    limits = load_standards().limits
    return fill_figures(first + dot.rstrip(), lambda name: figure_alone(project, limits[name]))


def tell_basis(project: Project, basis: Basis) -> str:
    """What a finding rests on: the texts in the editions that the project goes by, not in those they were read in."""
    standards = load_standards()
    named = (fill_editions(one.controls, project, standards) if one.controls else "" for one in basis.sources)
    said = (name or str(Basis((one,))) for name, one in zip(named, basis.sources, strict=True))
    return "; ".join(dict.fromkeys(said))


def _list_added(project: Project, finding: Finding) -> Iterator[Line]:
    """The lines that answer a finding, as they are typed."""
    for line in finding.to_add[:_MOST_ADDED]:
        text = f"add {tell_added(project, line)}"
        yield Line(_INDENT + text, _HANGING, text, "bold")
    if len(finding.to_add) > _MOST_ADDED:
        yield _body(f"add the like for {len(finding.to_add) - _MOST_ADDED:,} more")


def tell_added(project: Project, line: ToAdd) -> str:
    """`walls.W1.insulation.kind: eps`: a field with its example, or a member with its values."""
    field = None if line.value else project.schema.field_at(tuple(line.path.split(".")))
    if field is None:
        return f"{line.path}: {line.value}"
    if field.to == _PAPERS:
        return f"{line.path}: {'[X]' if field.kind == 'list' else 'X'}, and the document as X under {_PAPERS}"
    return f"{line.path}: {give_example(project, field)}"


def give_example(project: Project, field: Field) -> str:
    """An example value of a field as it is typed; a mark is one of those that the project has."""
    marks = project.members.get((field.to,), ()) if field.to and field.to != _PAPERS else ()
    if marks:
        return f"[{marks[0]}]" if field.kind == "list" else marks[0]
    return example_text(field, project.system)


def tell_owners(project: Project, roles: Iterable[str]) -> str:
    """`EIFS manufacturer (Graywether Wall Systems)`; the role alone while no name is given."""
    return ", ".join(tell_owner(project, role) for role in roles)


def tell_owner(project: Project, role: str) -> str:
    """A role with the name of its party, where the project gives one."""
    path = party_name_path(project.schema, role)
    name = project.get(path) if path else None
    return f"{words(role)} ({name})" if name else words(role)


def tell_places(places: Sequence[Place]) -> str:
    """The first place in full, and the lines of the others by their files."""
    first, lines = places[0], dict[str, dict[int, None]]()
    for place in places:
        lines.setdefault(place.file, {})[place.line] = None
    told = f"{first.file}:{first.line}:{first.column} {first.path}" if first.line else first.path
    lines[first.file].pop(first.line)
    others = [_tell_lines(file if file != first.file else "", list(rows)) for file, rows in lines.items() if rows]
    return f"{told}, and {', '.join(others)}" if others else told


def _tell_lines(file: str, rows: list[int]) -> str:
    """`lines 5 to 203 (199)`, `firm.yaml line 7`."""
    return f"{file} {'line' if len(rows) == 1 else 'lines'} {join_marks(map(str, rows))}".strip()
