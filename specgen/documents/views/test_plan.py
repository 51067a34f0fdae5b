"""The inspection and test plan: what is checked at each step, how, how often, by which limit, and by whom."""

from collections.abc import Iterator
from itertools import chain
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.cup_method import BY_MAKER
from specgen.documents.marks import list_marks
from specgen.documents.sentences import Sentences
from specgen.documents.steps import StepPage, steps
from specgen.documents.views.field_quality import list_tests
from specgen.documents.views.instruments import CUPS, WITH_CUP
from specgen.model.block import Ref
from specgen.model.standard import FieldTest, Step
from specgen.model.value_text import words
from specgen.scheduling.releases import find_releasing_role, has_inspector, is_inspected

# The kinds of instrument that a method is read with, by its words.
_READ_WITH = {
    "straightedges": ("long_straightedge", "short_straightedge", "feeler_gauge"),
    " straightedge": ("long_straightedge", "feeler_gauge"),
    "moisture meter": ("moisture_meter",),
    "profile gauge": ("profile_gauge",),
    "raking light": ("raking_lamp",),
    "step gauge": ("step_gauge",),
    "micrometer": ("micrometer",),
    "pH strips": ("ph_strips",),
    "pressure gauge": ("pressure_gauge",),
    "surface thermometer": ("surface_thermometer",),
    "instruments at the wall": ("air_thermometer", "surface_thermometer", "hygrometer", "wind_meter"),
    **dict.fromkeys(("D4212", "D1200", "ISO 2431", BY_MAKER), (*CUPS, *WITH_CUP)),
    "D4414": ("wet_film_comb",),
    "D7091": ("film_gauge",),
    "D523": ("gloss_meter",),
    "E2194": ("color_meter",),
    "D2244": ("color_meter",),
    "D7234": ("pull_tester",),
}
_NONE = "–"
_ROLES = ("applicator", "inspector", "architect")
_DOCUMENT = "D12"  # the name of a document; that of one of its forms is longer


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each check of each step that applies; a step without any prints with its point alone."""
    tests = _by_step(context, composer)
    lines = tuple(
        chain.from_iterable(_lines(context, page, tests.get(page.name, [])) for page in steps(context, composer))
    )
    inspector = ("Insp.",) if has_inspector(context.project) else ()
    header = ("Step", "Check", "Method, instrument", "Frequency", "Limit", "Form", "Appl.", *inspector, "Arch.")
    widths = (15, 13, 20, 12, 22, 5, 4, 5, 4) if inspector else (18, 14, 18, 12, 22, 6, 5, 5)
    return TableView(header, lines, widths)


def _by_step(context: DocumentContext, composer: Composer) -> dict[str, list[tuple[FieldTest, tuple[Any, ...]]]]:
    """The tests in place and the other checks, by the step after which they are made."""
    found: dict[str, list[tuple[FieldTest, tuple[Any, ...]]]] = {}
    standards = context.standards
    sentences = Sentences(context, composer)
    for table, rows_of in (("step_checks", standards.step_checks), ("field_tests", standards.field_tests)):
        for test, line in list_tests(sentences, table, rows_of.values()):
            found.setdefault(test.step, []).append((test, line))
    return found


def _lines(
    context: DocumentContext, page: StepPage, tests: list[tuple[FieldTest, tuple[Any, ...]]]
) -> Iterator[tuple[Any, ...]]:
    step = context.standards.steps[page.name]
    forms = list_forms(step.records)
    for number, (test, (name, method, frequency, limit, by, form)) in enumerate(tests):
        cell = [*name_procedure(method), *_name_instruments(context, method)]
        title = test.at or (page.title if number == 0 else "")
        said = (title, name, cell, frequency, name_procedure(limit), form or forms or _NONE)
        yield (*said, *(_witnesses(context) if test.at else _parts(context, step, page.hold, by)))


def list_forms(records: tuple[str, ...]) -> str:
    """`D11, D12d`; `D12a to D12d` for three or more forms of one document that follow each other."""
    runs: list[list[str]] = []
    for form in records:
        follows = bool(runs) and len(form) > len(_DOCUMENT) and runs[-1][-1] == form[:-1] + chr(ord(form[-1]) - 1)
        runs = [*runs[:-1], [*runs[-1], form]] if follows else [*runs, [form]]
    return ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs)


def name_procedure(cell: Any) -> list[Any]:
    """A cell whose references lead to the procedure, which is another document."""
    return [part for one in cell for part in (["D08, ", one] if isinstance(one, Ref) else [one])]


def _name_instruments(context: DocumentContext, method: Any) -> list[str]:
    """The marks of the instruments that a method is read with, in brackets."""
    said = "".join(getattr(part, "text", "") for part in method)
    kinds = {kind for words, named in _READ_WITH.items() if words in said for kind in named}
    marks = [m for m in list_marks(context, "instruments") if context.project.get(("instruments", m, "kind")) in kinds]
    return [f" ({', '.join(marks)})"] if marks else []


def _witnesses(context: DocumentContext) -> tuple[str, ...]:
    """The letters of a witness point that everybody is asked to."""
    return ("E", *(("W",) if has_inspector(context.project) else ()), "W")


def _parts(context: DocumentContext, step: Step, hold: int, by: str) -> tuple[str, ...]:
    """The letters of applicator, inspector where there is one, and architect; another party is named at its letter."""
    inspected = has_inspector(context.project)
    letters: dict[str, list[str]] = {role: [] for role in _ROLES if inspected or role != "inspector"}
    inspector = "inspector" if inspected else "architect"
    letters["inspector" if by == "inspector" and inspected else "applicator"].append("E")
    if not letters["applicator"]:
        letters["applicator"].append("C")
    if step.point == "R":
        letters["applicator"].append("R")
    elif hold:
        role = find_releasing_role(context.project, step)
        letters[role if role in letters else "architect"].append(
            f"H{hold}" if role in letters else f"H{hold} ({words(role)})"
        )
    elif step.point == "W":
        letters[inspector].append("W first" if step.point_of else "W")
    if is_inspected(context.project) and not letters["inspector"]:
        letters["inspector"].append("S")
    return tuple(", ".join(told) or _NONE for told in letters.values())
