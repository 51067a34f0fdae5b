"""A rule as text: its manual page, and its outcome with the values of a project."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

from specgen.judging.explain import ClauseExplanation
from specgen.judging.rule import Rule
from specgen.model.source import Basis
from specgen.terminal.searching import tells_of

_OF_LIMIT = ("limit", "margin")
_LIFTS = {"never": ", no deviation lifts it", "deviation": ", lifted by an approved deviation"}


def format_rule(rule: Rule, bases: Iterable[Basis]) -> str:
    """The manual page of a rule: reason, examples, and each clause with severity, message and basis."""
    lines = [f"{rule.code}  {rule.title}", "", rule.manual.strip(), "", "clauses"]
    for clause, basis in zip(rule.clauses, bases, strict=True):
        lines += [
            f"  {rule.code}{clause.letter}  {clause.severity}{_LIFTS.get(clause.lift, '')}",
            f"      {clause.say}",
            f"      basis: {basis}",
        ]
        if clause.remedy != rule.remedy:
            lines.append(f"      measure: {clause.remedy}")
    return "\n".join([*lines, "", f"measure: {rule.remedy}"]) + "\n"


def rule_tells_of(rule: Rule, words: Sequence[str]) -> bool:
    """Whether code, title, manual, sentences and remedies of a rule have all these words."""
    said = (text for clause in rule.clauses for text in (clause.say, clause.remedy))
    return tells_of(words, (rule.code, rule.title, rule.manual, rule.remedy, *said))


def rule_to_data(rule: Rule, bases: Iterable[Basis], fill: Callable[[str], str]) -> dict[str, Any]:
    """A rule as data, with the keys that the help of `rules` names; `fill` puts figures in their places."""
    return {
        "code": rule.code,
        "title": rule.title,
        "manual": fill(rule.manual.strip()),
        "remedy": fill(rule.remedy),
        "clauses": [
            {
                "code": clause.code,
                "severity": str(clause.severity),
                "says": fill(clause.say),
                "lifted_by": clause.lift or None,
                "basis": fill(str(basis)),
                "remedy": fill(clause.remedy),
            }
            for clause, basis in zip(rule.clauses, bases, strict=True)
        ],
    }


def format_explained_rule(rule: Rule, clauses: Iterable[ClauseExplanation], lifted: Mapping[str, str]) -> str:
    """A rule with the values of a project: each clause and subject with its outcome, figures and measure.

    `lifted` names the deviations that lift a stop, by the code of its clause.
    """
    lines = [f"{rule.code}  {rule.title}", ""]
    told = list(clauses)
    if not told:
        lines.append("nothing to judge: the project has no member and no entry of the record that it asks about")
    for clause in told:
        by = f", lifted by deviation {lifted[clause.code]}" if clause.remedy and clause.code in lifted else ""
        lines.append(f"{clause.code} {clause.severity}, {clause.subject}: {clause.outcome}{by}")
        lines += [f"    {name}{': ' if name in _OF_LIMIT else ' = '}{text}" for name, text in clause.figures]
        lines += [f"    measure: {clause.remedy}"] if clause.remedy else []
    return "\n".join(lines) + "\n"
