"""The findings that a crew acts on at a step; what is mended by a document or a field stands with the warnings."""

from functools import lru_cache

from specgen.judging.registry import load_rules
from specgen.model.finding import Finding, Judgment
from specgen.model.standard import Step

# Groups of rules about documents, the code, color and dates, and single rules and clauses whose remedy is a letter, a
# report, a program or another entry of the project; and what the steps say themselves, with its measure.
_GROUPS = {"COD", "HEA", "SCH", "SUB"}
_OTHERS = {"ACC-04", "PLN-02", "SLT-06"} | {"ACC-05b", "ACC-05d", "ACC-09", "ATT-06a", "ATT-06b", "ATT-06c"}


def work_findings(judgment: Judgment, step: Step) -> tuple[Finding, ...]:
    """The findings that print at a step."""
    return tuple(f for f in judgment.findings if f.step == step.name and _is_of_the_work(f))


def _is_of_the_work(finding: Finding) -> bool:
    elsewhere = finding.rule[:3] in _GROUPS or not _OTHERS.isdisjoint((finding.rule, finding.code))
    return not elsewhere and finding.code not in _looking_for_documents()


@lru_cache(maxsize=1)
def _looking_for_documents() -> frozenset[str]:
    """The codes of the clauses that look for a document."""
    return frozenset(clause.code for rule in load_rules() for clause in rule.clauses if clause.document)
