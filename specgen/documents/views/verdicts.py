"""The verdict of each wall, and what it rests on."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_measured, looks_for_document
from specgen.documents.views._rules import list_undecided, name_rules
from specgen.documents.views._walls import SAID, describe_build_up
from specgen.documents.views.answers import name_documents
from specgen.model.finding import Severity, Verdict, WallJudgment
from specgen.model.value_text import count

# Up to this many rules not evaluated are named where the verdict stands.
MOST_NAMED = 3


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Wall, build-up, verdict, and the exceptions that decide it, in the document that lists the rules below."""
    return set_verdicts(context, "below")


def set_verdicts(context: DocumentContext, where: str) -> TableView:
    """The same, with the place `where` the rules not evaluated are marked."""
    lines = tuple(
        (mark, describe_build_up(context, mark), SAID[judged.verdict], _tell_exceptions(context, mark, judged, where))
        for mark, judged in context.judgment.walls.items()
    )
    return TableView(("Wall", "Build-up", "Suitable for finish", "Exceptions and open items"), lines, (8, 28, 14, 50))


def _tell_exceptions(context: DocumentContext, mark: str, judged: WallJudgment, where: str) -> str:
    """The rules that are not met, the documents pending, and the rules not evaluated."""
    found = [f for f in context.judgment.findings if f.code in judged.deciding and mark in f.walls]
    stops = name_rules(f.rule for f in found if f.severity is Severity.STOP and not looks_for_document(f))
    measures = name_rules(f.rule for f in found if f in list_measured(context))
    documents = name_documents(context, mark)
    unjudged = name_rules(list_undecided(context, mark))
    not_judged = (
        "; ".join(unjudged) if len(unjudged) <= MOST_NAMED else f"{count(len(unjudged), 'rule')}, marked {where}"
    )
    parts = (
        "None." if judged.verdict is Verdict.YES else "",
        f"Not met, see D05: {'; '.join(stops)}." if stops else "",
        f"Measures required, see D05: {'; '.join(measures)}." if measures else "",
        f"Documents pending: {'; '.join(documents)}." if documents else "",
        f"Not evaluated: {not_judged}." if unjudged else "",
    )
    return " ".join(filter(None, parts))
