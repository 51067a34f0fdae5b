"""The findings that a crew acts on at a step; what is mended by a document or a field stands with the warnings."""

from dataclasses import dataclass
from functools import lru_cache

from specgen.documents.alike_measures import join_messages
from specgen.documents.display_values import Record
from specgen.judging.registry import load_rules
from specgen.judging.subject_names import join_subjects
from specgen.model.finding import Finding, Judgment, Severity
from specgen.model.standard import Step

# Groups of rules about documents, the code, color and dates, and single rules and clauses whose remedy is a letter, a
# report, a program or another entry of the project; and what the steps say themselves, with its measure.
_GROUPS = {"COD", "HEA", "SCH", "SUB"}
_OTHERS = {"ACC-04", "PLN-02", "SLT-06"} | {"ACC-05b", "ACC-05d", "ACC-09", "ATT-06a", "ATT-06b", "ATT-06c"}


# What the parts of a message stand apart by, and the subject of a finding that is about no member.
_PARTS, _NO_MEMBER = "; ", ("project",)


@dataclass(frozen=True, kw_only=True)
class WorkFinding(Record):
    """A finding as a crew reads it: by its code only while it stops the work, and what its subjects share said once."""

    code: str
    head: str  # `Caution`, `Stop FIN-03d`, `Note (E1, E2)`
    message: str
    remedy: str


def work_findings(judgment: Judgment, step: Step) -> tuple[WorkFinding, ...]:
    """The findings that print at a step."""
    return tuple(_tell(f) for f in judgment.findings if f.step == step.name and _is_of_the_work(f))


def _tell(finding: Finding) -> WorkFinding:
    code = f" {finding.code}" if finding.severity is Severity.STOP else ""
    named = all(name in finding.message for name in finding.subjects)
    whom = "" if named or finding.subjects == _NO_MEMBER else f" ({join_subjects(finding.subjects)})"
    head = f"{finding.severity.value.capitalize()}{code}{whom}"
    return WorkFinding(code=finding.code, head=head, message=_join_messages(finding), remedy=finding.remedy)


def _join_messages(finding: Finding) -> str:
    """The message; what the subjects share once, with their own figures in it or their own parts before it."""
    messages = {told.message: ", ".join(told.subjects) for told in finding.told}
    if len(messages) > 1 and (said := join_messages([(names, message) for message, names in messages.items()])):
        return said
    ends = {message.rpartition(_PARTS)[2] for message in messages}
    if len(messages) < 2 or len(ends) > 1 or not all(_PARTS in message for message in messages):
        return finding.message
    heads = (f"{names}: {message.rpartition(_PARTS)[0]}." for message, names in messages.items())
    (end,) = ends
    return f"{' '.join(heads)} {end[:1].upper()}{end[1:]}"


def _is_of_the_work(finding: Finding) -> bool:
    elsewhere = finding.rule[:3] in _GROUPS or not _OTHERS.isdisjoint((finding.rule, finding.code))
    return not elsewhere and finding.code not in _looking_for_documents()


@lru_cache(maxsize=1)
def _looking_for_documents() -> frozenset[str]:
    """The codes of the clauses that look for a document."""
    return frozenset(clause.code for rule in load_rules() for clause in rule.clauses if clause.document)
