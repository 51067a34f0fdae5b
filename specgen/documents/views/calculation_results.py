"""The results of all calculations in short: for whom, how much, and whether what was held against them is met."""

from specgen.documents.calculations import Instances, computed
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views.workings import against, mark, marks, outcome, result


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each calculation and each answer of the clauses that hold something against it."""
    made: list[tuple[str, str, str, str]] = []
    for one in computed(context):
        compared, groups = against(context, one.provider), dict[str, Instances]()
        for member, working in one.workings.items():
            by_answer: dict[str, list[str]] = {}
            for held in compared[member]:
                codes = by_answer.setdefault(outcome(context, held), [])
                codes += [] if held.code in codes else [held.code]
            answer = "; ".join(f"{said} ({', '.join(codes)})" for said, codes in by_answer.items())
            groups.setdefault(answer or "none", {})[member] = working
        for answer, workings in groups.items():
            made.append((one.provider.title, marks([mark(m) for m in workings]), _results(context, workings), answer))
    return TableView(("Calculation", "For", "Result", "Limits"), tuple(made), (31, 17, 32, 20))


def _results(context: DocumentContext, workings: Instances) -> str:
    """The one result of all, or the least and the greatest."""
    ends = (end(workings.values(), key=lambda working: float(working.result)) for end in (min, max))
    low, high = (result(context, working) for working in ends)
    return low if low == high else f"{low} to {high}"
