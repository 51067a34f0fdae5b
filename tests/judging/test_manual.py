"""The docstring of each rule is its manual page, and its examples are run here.

`passes` or `fails CODE at PATH` opens an example; the indented YAML under it is laid over the small
project. No clause of the rule fires on the first kind, the named one fires there on the second.
"""

import re
import textwrap
from pathlib import Path
from typing import Any, NamedTuple

import pytest
import yaml

from specgen.judging.registry import load_rules
from tests.support import case_of, findings_of, project_of

RULES = {rule.code: rule for rule in load_rules()}
OPENING = re.compile(r"passes|fails (?P<code>[A-Z]{3}-\d\d[a-z]) at (?P<at>\S+)")


class Example(NamedTuple):
    """A fragment of a project, and the clause that fires on it with its place; none for one that passes."""

    rule: str
    code: str
    at: str
    project: Any


def examples(rule: str, manual: str) -> list[Example]:
    """The examples of a manual page, in their order."""
    made = []
    for block in re.split(r"\n(?=passes$|fails )", manual.strip(), flags=re.M)[1:]:
        first, _, fragment = block.partition("\n")
        opening = OPENING.fullmatch(first)
        assert opening, f"{rule}: {first!r} opens no example"
        made.append(
            Example(
                rule,
                opening["code"] or "",
                opening["at"] or "",
                yaml.load(textwrap.dedent(fragment), Loader=yaml.CSafeLoader),
            )
        )
    return made


EXAMPLES = [example for rule in RULES.values() for example in examples(rule.code, rule.manual)]


def is_open_item(code: str) -> bool:
    """Whether a clause speaks of open items, which are found apart from the clauses that are run."""
    return any(clause.code == code and clause.of_open_items for clause in RULES[code[:-1]].clauses)


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_a_manual_page_has_its_parts(rule: Any) -> None:
    first, reason, *_ = rule.manual.strip().split("\n\n")
    assert first.endswith(".") and "\n" not in first
    assert reason.startswith("Why: ") and reason.endswith(".")
    shown = [example for example in EXAMPLES if example.rule == rule.code]
    assert any(example.code for example in shown)
    assert any(not example.code for example in shown) or is_open_item(rule.clauses[0].code)


@pytest.mark.no_cover
@pytest.mark.parametrize("example", [e for e in EXAMPLES if not e.code], ids=lambda e: e.rule)
def test_an_example_that_passes(example: Example, tmp_path: Path) -> None:
    assert not findings_of(project_of(tmp_path, example.project), example.rule)


@pytest.mark.no_cover
@pytest.mark.parametrize("example", [e for e in EXAMPLES if e.code], ids=lambda e: e.code)
def test_an_example_that_fails(example: Example, tmp_path: Path) -> None:
    assert example.code[:-1] == example.rule
    if is_open_item(example.code):
        judgment = case_of(tmp_path, example.project).judgment
        clause = next(c for c in RULES[example.rule].clauses if c.code == example.code)
        assert (clause.severity == "stop") == judgment.stops_when_open
        assert example.at in {item.path for item in judgment.open_items}
    else:
        findings = findings_of(project_of(tmp_path, example.project), example.rule)
        assert example.at in {f.place.path for f in findings if f.code == example.code}
