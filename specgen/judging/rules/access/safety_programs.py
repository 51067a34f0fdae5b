"""The hazard communication, respirator and silica programs are in the package.

Why: spraying fills the air with mist, and sanding and mixing cement fill it with silica dust. The
written programs say who wears what and who looks after it.

passes
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha, hazcom: A1, respirator_program: A2, silica_plan: A3}
    attachments: {A1: {kind: program}, A2: {kind: program}, A3: {kind: program}}
fails ACC-07a at safety.hazcom
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
fails ACC-07b at safety.hazcom
    package: {purpose: mockup_submittal}
    safety: {rules: other}
fails ACC-07c at safety.respirator_program
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
fails ACC-07e at safety.silica_plan
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, STOP, Found, Rule, draft, found

RULE = Rule(
    "ACC-07",
    "Hazard, respirator and silica programs",
    remedy="Add the programs.",
    steps="site_conditions",
    documents="D15 D18",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The hazard communication program is missing.",
    lift="never",
    needs="safety.rules package.purpose safety.hazcom",
    basis="osha_hazcom_memory",
)
def no_hazcom(project: Any) -> Iterator[Found]:
    """The hazard communication program is owed by federal rules and missing."""
    if _missing(project, "us_osha", "hazcom"):
        yield found()


@RULE.clause(
    "b",
    CAUTION,
    "The hazard communication program is missing: local law governs, confirm.",
    needs="safety.rules package.purpose safety.hazcom",
    basis="osha_hazcom_memory",
)
def no_hazcom_elsewhere(project: Any) -> Iterator[Found]:
    """The hazard communication program is missing where local law governs."""
    if _missing(project, "other", "hazcom"):
        yield found()


@RULE.clause(
    "c",
    STOP,
    "Spraying is planned without a respirator program.",
    lift="never",
    needs="safety.rules package.purpose safety.respirator_program",
    basis="osha_respirator_memory",
)
def no_respirators(project: Any) -> Iterator[Found]:
    """The respirator program is owed by federal rules and missing."""
    if _missing(project, "us_osha", "respirator_program"):
        yield found()


@RULE.clause(
    "d",
    CAUTION,
    "Spraying is planned without a respirator program: local law governs, confirm.",
    needs="safety.rules package.purpose safety.respirator_program",
    basis="osha_respirator_memory",
)
def no_respirators_elsewhere(project: Any) -> Iterator[Found]:
    """The respirator program is missing where local law governs."""
    if _missing(project, "other", "respirator_program"):
        yield found()


@RULE.clause(
    "e",
    STOP,
    "Sanding and cement mixing are planned without a silica plan.",
    lift="never",
    needs="safety.rules package.purpose safety.silica_plan",
    basis="osha_silica_memory",
)
def no_silica_plan(project: Any) -> Iterator[Found]:
    """The silica plan is owed by federal rules and missing."""
    if _missing(project, "us_osha", "silica_plan"):
        yield found()


@RULE.clause(
    "f",
    CAUTION,
    "Sanding and cement mixing are planned without a silica plan: local law governs, confirm.",
    needs="safety.rules package.purpose safety.silica_plan",
    basis="osha_silica_memory",
)
def no_silica_plan_elsewhere(project: Any) -> Iterator[Found]:
    """The silica plan is missing where local law governs."""
    if _missing(project, "other", "silica_plan"):
        yield found()


def _missing(project: Any, rules: str, paper: str) -> bool:
    """Whether papers are owed, the named one is not there, and these rules apply."""
    return bool(not draft(project) and project.safety.get(paper) is None and project.safety.rules == rules)
