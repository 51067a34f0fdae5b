"""Test reports show how much sun the full coat throws back and how much heat it gives off.

Why: the heat at the board is worked out from these two figures. Flakes make both another one than the shade
suggests, so they are measured on primer and gloss as sprayed.

passes
    package: {purpose: mockup_submittal}
    colors: {C1: {kind: custom}}
    attachments:
      A1: {kind: test_report, covers: [gloss], standard: C1549}
      A2: {kind: test_report, covers: [gloss], standard: C1371}
fails HEA-01a at attachments.*.standard
    package: {purpose: mockup_submittal}
    colors: {C1: {kind: custom}}
fails HEA-01b at attachments.*.standard
    package: {purpose: mockup_submittal}
    colors: {C1: {kind: custom}}
    attachments: {A1: {kind: test_report, covers: [gloss], standard: C1549}}
"""

from specgen.judging.papers import Paper, by_standard, covering, of_kind, to_list
from specgen.judging.rule import CAUTION, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_documented
from specgen.model.project import asked_once
from specgen.model.typed_views import Color, Description

RULE = Rule(
    "HEA-01",
    "Reports of solar reflectance and emittance",
    remedy="Test the full coating by ASTM C1549 or E903, and submit the report.",
    steps="mockup",
    documents="D06 D19",
)


@RULE.test(
    "a",
    CAUTION,
    "No test report shows the solar reflectance of the full coating.",
    each="colors",
    at="attachments.*.standard",
    basis="reflectance_tests_memory",
)
def reflectance_untested(color: Color, project: Description) -> Violations:
    """No report shows the solar reflectance."""
    yield from _list_untested(project, "C1549", "E903")


@RULE.test(
    "b",
    CAUTION,
    "No test report shows the emittance of the full coating.",
    each="colors",
    at="attachments.*.standard",
    basis="emittance_tests_memory",
    remedy="Test the full coating by ASTM C1371 or E408, and submit the report.",
)
def emittance_untested(color: Color, project: Description) -> Violations:
    """No report shows the emittance."""
    yield from _list_untested(project, "C1371", "E408")


def _list_untested(project: Description, *methods: str) -> Violations:
    """The want of a report on the gloss by one of these test methods; a draft owes none."""
    if not is_draft(project) and not _is_tested(project, *methods):
        yield violation(to_add=to_list(_report_by(methods)))


@asked_once
def _is_tested(project: Description, *methods: str) -> bool:
    return is_documented(project, _report_by(methods))


def _report_by(methods: tuple[str, ...]) -> Paper:
    return (of_kind("test_report"), covering("gloss"), by_standard(*methods))
