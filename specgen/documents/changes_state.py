"""The state of a project as it is issued: what is given, in force, found, computed, owed and printed, in words."""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Any

from specgen.documents.calculations import CalculationValues, gather_calculations
from specgen.documents.changes_blocks import print_document
from specgen.documents.changes_time import list_times
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import with_unit
from specgen.documents.drafts import ANSWER
from specgen.documents.numbering import list_values
from specgen.documents.required_documents import list_pending
from specgen.judging.registry import load_rules
from specgen.model.block import Document
from specgen.model.field import Field, dotted_path
from specgen.model.finding import Finding, Severity
from specgen.model.project import Project
from specgen.model.source import Basis, Kind, Source
from specgen.model.state import DocumentPrint, Figure, OpenField, OwedDocument, Said, State, Told
from specgen.model.value_text import long_date, units_of, value_text
from specgen.model.working import Working
from specgen.quantities.format import format_decimal, format_unit
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS
from specgen.resolving.limits_in_force import limit_in_force

# These tell of the set itself and of what changed in it, and so are no part of what is compared.
TELLS_OF_CHANGES = ("D01", "D20")
_APART = (ANSWER, *TELLS_OF_CHANGES)
_SYSTEMS = ("ip", "si")
# Significant digits of a result: one more than documents print, so that nothing they show is passed over.
_DIGITS = 4


def take_state(context: DocumentContext, documents: Iterable[Document], whole: bool, draft: bool) -> State:
    """The state of a project, of which these documents are printed; `whole` tells whether they are all."""
    printed, project = tuple(documents), context.project
    calculations = tuple(gather_calculations(context))
    date = project.get(("package", "date"))
    return State(
        project=str(project.value(("project", "name"))),
        revision=str(project.get(("package", "revision")) or 0),
        date=long_date(date) if date else "",
        whole=whole,
        draft=draft,
        fields=dict(_list_fields(project)),
        limits=dict(_list_limits(context, printed, calculations)),
        findings=dict(_list_findings(context.judgment.findings)),
        verdicts={mark: str(wall.verdict) for mark, wall in context.judgment.walls.items()},
        results=dict(_list_results(calculations)),
        times=dict(list_times(context)),
        open={item.path: OpenField(item.label, item.owed_by) for item in context.judgment.open_items},
        owed=tuple(dict.fromkeys(OwedDocument(e.name, e.owed_by, e.subjects) for e in list_pending(context))),
        documents=print_documents(printed),
        attached={one.use: one.digest for one in context.attached},
    )


def _list_fields(project: Project) -> Iterator[tuple[str, Said]]:
    """What each value of a section says, by its dotted path; who answered which is no change of the work."""
    for path, value in project.values.items():
        if len(path) > 1 and path[0] != "answers":
            yield dotted_path(path), _say(value, project.schema.field_at(path))


def _list_findings(findings: Iterable[Finding]) -> Iterator[tuple[Told, tuple[Severity, str]]]:
    """What each clause tells of each of its subjects."""
    for finding in findings:
        messages = {subject: told.message for told in finding.told for subject in told.subjects}
        for subject in finding.subjects:
            yield (finding.code, subject), (finding.severity, messages.get(subject, finding.message))


def print_documents(documents: Iterable[Document]) -> dict[str, DocumentPrint]:
    """The documents that are compared, as they print, by id."""
    return {document.id: print_document(document) for document in documents if document.id not in _APART}


def _say(value: Any, field: Field | None, unit: str = "") -> Said:
    """A value in both systems; a bare number with its unit."""
    if field is not None:
        unit = "%" if field.kind == "percent" else field.unit_ip
    bare = isinstance(value, (int, Fraction, float)) and not isinstance(value, bool)
    told = (value_text(value, field, system, both=False) for system in _SYSTEMS)
    return Said(*(with_unit(text, unit) if bare else text for text in told))


def _list_limits(
    context: DocumentContext, documents: Iterable[Document], calculations: Iterable[CalculationValues]
) -> Iterator[tuple[str, Figure]]:
    """The limits in force that a document prints, a calculation takes or a clause found something by, by row."""
    found = {finding.code for finding in context.judgment.findings}
    used = {value.row for document in documents for value in list_values(document.blocks)}
    used |= {row.limit for one in calculations for working in one.workings.values() for row in working.inputs}
    used |= {clause.limit for rule in load_rules() for clause in rule.clauses if clause.code in found}
    for name, limit in context.standards.limits.items():
        if name in used:
            value, source = limit_in_force(context.project, limit)
            field = context.project.schema.field_at(limit.bounds) if limit.bounds else None
            yield name, Figure(_say(value, field, limit.unit), _cite(context, source))


def _cite(context: DocumentContext, source: Source) -> str:
    """The source as documents cite it; what nobody has verified by what it is."""
    cited = context.cite(source)
    return cited.reference if cited.kind is Kind.CITED else str(Basis((source,)))


def _list_results(calculations: Iterable[CalculationValues]) -> Iterator[tuple[Told, Figure]]:
    """The results of all calculations and look-ups."""
    for one in calculations:
        name, title = one.provider.name, one.provider.title
        for member, working in one.workings.items():
            yield (name, dotted_path(member)), Figure(_say_result(working), title)
        for member, answer in one.lookups.items():
            yield (name, dotted_path(member)), Figure(Said(*(value_text(answer.result),) * 2), title)


def _say_result(working: Working) -> Said:
    """A result in both systems, rounded."""
    number = float(working.result)
    if working.unit not in UNITS:
        return Said(*(with_unit(format_decimal(number, _DIGITS), working.unit),) * 2)
    quantity = Quantity.of(repr(number), working.unit)
    return Said(*(f"{format_decimal(quantity.to(u), _DIGITS)} {format_unit(u)}" for u in units_of(quantity, None)))
