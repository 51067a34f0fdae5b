"""The story of a project: read, resolve, judge, write."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from specgen import computing
from specgen.judging.context import JudgingContext
from specgen.judging.engine import clause_basis
from specgen.judging.explain import explain
from specgen.judging.judge import judge
from specgen.judging.registry import load_rules
from specgen.judging.rule import Rule
from specgen.model.field import Path as VocabularyPath
from specgen.model.field import dotted
from specgen.model.finding import Judgment, Severity, Verdict
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.suggest import near_hint
from specgen.model.value_text import words
from specgen.reading.project import read_project
from specgen.reading.schema import project_schema
from specgen.resolving.provider import Resolver
from specgen.standards import load_standards


@dataclass(frozen=True)
class Case:
    """A project that has been read and judged, with all that served it."""

    bench: JudgingContext
    judgment: Judgment
    rules: tuple[Rule, ...]

    @property
    def project(self) -> Project:
        """The facts."""
        return self.bench.project


@dataclass(frozen=True)
class Built:
    """What a build wrote, whether its pages are marked as a draft, whether stops stand against it, what is told."""

    files: tuple[str, ...]
    draft: bool
    stopped: bool
    notes: tuple[str, ...] = ()


schema = project_schema


def read(file: Path) -> Project:
    """The project of a file; raises Refused with every fault of its files."""
    return read_project(file, schema())


def check(file: Path) -> Case:
    """The project of a file, judged; raises Refused with every fault of its files."""
    return judged(read(file))


def judged(project: Project) -> Case:
    """A project, judged by every rule there is."""
    bench = JudgingContext(project, load_standards(), Resolver(project, computing.find, computing.names()))
    rules = load_rules()
    return Case(bench, judge(bench, rules), rules)


def new(file: Path, ring: str, units: str) -> None:
    """Write a commented starter; raises Refused where the file exists."""
    from specgen.output.disk import write_new
    from specgen.terminal.starter import starter

    write_new(file, starter(schema(), ring, units))


def build(
    file: Path,
    out: Path,
    formats: tuple[str, ...] = ("docx", "html"),
    only: tuple[str, ...] = (),
    draft: bool = False,
    letterhead: Path | None = None,
    templates: Path | None = None,
) -> Built:
    """Write the package to `out`, whole or not at all; raises Refused where stops stand, save in a draft."""
    from specgen.output import package
    from specgen.output.disk import write_package

    case = check(file)
    if case.judgment.stopped and not draft:
        hint = f"specgen check {file.name} lists them; --draft writes it all the same"
        raise refuse(f"nothing was written: {_standing(case.judgment)} against this package", hint)
    draft = draft or case.project.value(("package", "purpose")) == "design_draft"
    bench = case.bench
    facts = (bench.project, bench.standards, case.judgment, bench.resolve)
    made = package.made(*facts, formats, only, draft, letterhead, templates)
    write_package(out, made.files, made.about)
    return Built(tuple(made.files), draft, case.judgment.stopped, made.notes)


def _standing(judgment: Judgment) -> str:
    """`2 stops and 1 owed open point stand`."""
    opened = len(judgment.open_items) if judgment.stops_when_open else 0
    counts = ((len(judgment.of(Severity.STOP)), "stop"), (opened, "owed open point"))
    told = [f"{count} {word}{'' if count == 1 else 's'}" for count, word in counts if count]
    return f"{' and '.join(told)} {'stands' if sum(count for count, _ in counts) == 1 else 'stand'}"


def fields_text(name: str | None) -> str:
    """The list of fields, those below a path, or the manual of one; raises Refused with the nearest path."""
    from specgen.terminal.field_page import collection_line, field_list, field_page
    from specgen.terminal.manual import columns

    catalogue = schema()
    path = tuple(name.split(".")) if name else ()
    try:
        node = catalogue.node(path)
    except KeyError:
        known = [dotted(p) for p in catalogue.fields]
        raise refuse(f"there is no field {name!r}", near_hint(str(name), known)) from None
    if node.field is not None:
        return field_page(node.field)
    head = collection_line(node.collection) + "\n" if node.collection is not None else ""
    return head + columns(field_list(catalogue, node.path))


def schema_data(file: str) -> dict[str, Any]:
    """The JSON Schema of a kind of file, for editors."""
    from specgen.reading.json_schema import json_schema

    return json_schema(schema(), file)


def rule_code(code: str) -> str:
    """The code of a rule or clause as it is written; raises Refused with the nearest one."""
    known = {name.upper(): name for rule in load_rules() for name in (rule.code, *(c.code for c in rule.clauses))}
    if code.upper() not in known:
        raise refuse(f"there is no rule {code!r}", near_hint(code, list(known.values())))
    return known[code.upper()]


def rules_text(code: str | None) -> str:
    """The list of rules, or the manual page of one."""
    from specgen.terminal.manual import columns, rule_page

    if code is None:
        return columns([rule.code, rule.title] for rule in load_rules())
    name = rule_code(code)
    rule = next(r for r in load_rules() if name.startswith(r.code))
    rows = load_standards()
    lifts = {"never": ", no deviation lifts it", "deviation": ", lifted by an approved deviation"}
    clauses = [
        (c.letter, str(c.severity), lifts.get(c.lift, ""), c.say, str(clause_basis(c, rows))) for c in rule.clauses
    ]
    return rule_page(rule.code, rule.title, rule.manual, rule.remedy, clauses)


def explained_text(case: Case, code: str) -> str:
    """A rule or clause with this project's numbers, subject by subject."""
    from specgen.terminal.manual import explained_lines

    rule = next(r for r in case.rules if code.startswith(r.code))
    return explained_lines(rule.code, rule.title, rule.remedy, explain(case.bench, rule, code))


# What a new wall is taken to have where the matrix asks only for its kind.
_TYPICAL = {("wrb", "kind"): "fluid_applied", ("substrate", "condition"): (), ("substrate", "coating_removed"): False}


def matrix_text() -> str:
    """Substrate by attachment, as the attachment rules judge them."""
    from specgen.terminal.manual import MATRIX_NOTE, columns

    fields = schema().fields
    substrates = fields[("walls", "*", "substrate", "kind")].values
    methods = fields[("walls", "*", "attachment", "method")].values
    rows = [["", *map(words, methods)]]
    rows += [[words(substrate), *(_square(substrate, method) for method in methods)] for substrate in substrates]
    return columns(rows) + MATRIX_NOTE


def _square(substrate: str, method: str) -> str:
    given = _TYPICAL | {("substrate", "kind"): substrate, ("attachment", "method"): method}
    values: dict[VocabularyPath, Any] = {("walls", "W1", *path): value for path, value in given.items()}
    values[("package", "purpose")] = "design_draft"
    judgment = judged(Project(schema(), values, {("walls",): ("W1",)})).judgment
    codes = [f.code for f in judgment.findings if f.rule.startswith("ATT")]
    word = {Verdict.NO: "no", Verdict.WITH_MEASURES: "measure"}.get(judgment.walls["W1"], "yes")
    return f"{word} {codes[0]}" if codes else word
