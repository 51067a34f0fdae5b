"""The verdict of each wall, and what it rests on."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_measured
from specgen.documents.views._document_stages import list_deciding
from specgen.documents.views._following import tell_split
from specgen.documents.views._rules import name_rules
from specgen.documents.views._walls import SAID, describe_build_up
from specgen.judging.owners import looks_for_document
from specgen.model.finding import Severity, Verdict, WallJudgment
from specgen.model.value_text import count

_NONE = "None"
_RULES, _MEASURES = "D02", "D05"  # the documents that list rules not evaluated, and exceptions with their measures


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Wall, build-up, verdict, and what it rests on."""
    return set_verdicts(context, composer.document)


def set_verdicts(context: DocumentContext, document: str = "") -> TableView:
    """The same; what another document lists than the one that prints it is cited by its number."""
    where = "below" if document == _RULES else f"in {_RULES}"
    lines = tuple(
        (
            mark,
            describe_build_up(context, mark),
            SAID[judged.verdict],
            _tell_exceptions(context, mark, judged),
            _tell_pending(context, mark, where),
        )
        for mark, judged in context.judgment.walls.items()
    )
    found = "Exceptions and measures" + ("" if document == _MEASURES else f", see {_MEASURES}")
    header = ("Wall", "Build-up to the board", "Suitable for finish", found, "Pending")
    if all(pending == _NONE for *_, pending in lines):
        return TableView(header[:-1], tuple(line[:-1] for line in lines), (7, 40, 15, 38))
    return TableView(header, lines, (5, 32, 11, 27, 25))


def _tell_exceptions(context: DocumentContext, mark: str, judged: WallJudgment) -> str:
    """The rules that are not met, and those met with a measure."""
    found = [f for f in context.judgment.findings if f.code in judged.deciding and mark in f.walls]
    stops = name_rules(f.rule for f in found if f.severity is Severity.STOP and not looks_for_document(f))
    measures = name_rules(f.rule for f in found if f in list_measured(context))
    parts = (
        f"Not met: {'; '.join(stops)}." if stops else "",
        f"Measures required: {'; '.join(measures)}." if measures else "",
    )
    besides = any(f.severity is Severity.CAUTION for f in context.judgment.findings)
    none = "None for the wall" if besides else _NONE
    none = "None so far" if judged.verdict is Verdict.NOT_YET_KNOWN else none
    return " ".join(filter(None, parts)) or none


def _tell_pending(context: DocumentContext, mark: str, where: str) -> str:
    """`10 documents; 20 rules not evaluated; listed below`: how much the decision on a wall waits for."""
    documents = sum(entry.number for entry in list_deciding(context, mark))
    told = "; ".join(filter(None, (count(documents, "document") if documents else "", tell_split(context, mark))))
    return f"{told}; listed {where}" if told else _NONE
