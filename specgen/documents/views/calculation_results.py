"""Summary of all calculations: members, result, and whether the limits on it are met."""

from specgen.documents.calculations import Instances, gather_calculations
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views.workings import limit_checks, mark, marks, outcome, result


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each calculation and each outcome of the clauses that check it."""
    lines: list[tuple[str, str, str, str]] = []
    for calculation in gather_calculations(context):
        checks, groups = limit_checks(context, calculation.provider), dict[str, Instances]()
        for member, working in calculation.workings.items():
            by_answer: dict[str, list[str]] = {}
            for check in checks[member]:
                codes = by_answer.setdefault(outcome(context, check), [])
                codes += [] if check.code in codes else [check.code]
            answer = "; ".join(f"{answer_text} ({', '.join(codes)})" for answer_text, codes in by_answer.items())
            groups.setdefault(answer or "none", {})[member] = working
        for answer, workings in groups.items():
            lines.append(
                (calculation.provider.title, marks([mark(m) for m in workings]), _results(context, workings), answer)
            )
    return TableView(("Calculation", "For", "Result", "Limits"), tuple(lines), (31, 17, 32, 20))


def _results(context: DocumentContext, workings: Instances) -> str:
    """The common result, or the smallest and the largest."""
    ends = (end(workings.values(), key=lambda working: float(working.result)) for end in (min, max))
    low, high = (result(context, working) for working in ends)
    return low if low == high else f"{low} to {high}"
