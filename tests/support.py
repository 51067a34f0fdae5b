"""What the tests share: a small project to change, and one call from YAML text to a judged case."""

from copy import copy
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import yaml

from specgen import pipeline
from specgen.judging.context import JudgingContext
from specgen.judging.deviations import lift
from specgen.judging.engine import run_rules
from specgen.judging.judge import judge
from specgen.judging.registry import load_rules
from specgen.judging.rule import Rule
from specgen.model.finding import Finding, Judgment
from specgen.model.project import Project
from specgen.standards import load_standards

ROOT = Path(__file__).parents[1]
EXAMPLES = ROOT / "project_examples"
RULES = {rule.code: rule for rule in load_rules()}

# A wall that no clause of part 1 fires on, told in as few words as the reader accepts.
SMALL: dict[str, Any] = {
    "format": 1,
    "package": {"purpose": "design_draft"},
    "project": {"name": "Trial"},
    "walls": {"W1": {"substrate": {"kind": "concrete"}, "attachment": {"method": "adhesive_full_bed"}}},
}


def mixed(number: Fraction | int) -> str:
    """A number as the trade writes it: `2 1/4`, `3/4`, `5`."""
    whole, part = divmod(number, 1)
    return f"{whole} {part}" if whole and part else f"{part or whole}"


def merged(base: Any, change: Any) -> Any:
    """`base` with `change` laid over it; a key whose new value is the word `drop` is taken out."""
    if not isinstance(base, dict) or not isinstance(change, dict):
        return change
    made = {key: merged(base[key], change[key]) if key in change else value for key, value in base.items()}
    made |= {key: value for key, value in change.items() if key not in base}
    return {key: value for key, value in made.items() if value != "drop"}


def written(folder: Path, data: Any, name: str = "project.yaml") -> Path:
    """The file with this content; `data` is text or plain data."""
    file = folder / name
    if not isinstance(data, str):
        # By the fast writer of the library, as the tests write some thousands of projects.
        data = yaml.dump(data, Dumper=yaml.CSafeDumper, sort_keys=False, allow_unicode=True)
    file.write_text(data, "utf-8")
    return file


def project_of(folder: Path, change: Any = None, base: Any = None) -> Project:
    """The small project with a change laid over it; `coating` is the coating source's file."""
    if change and "coating" in change:
        written(folder, {"format": 1} | change["coating"], "coating.yaml")
        change = {k: v for k, v in change.items() if k != "coating"} | {"coating_system": "coating.yaml"}
    return pipeline.read(written(folder, merged(base or SMALL, change or {})))


def case_of(folder: Path, change: Any = None, base: Any = None) -> pipeline.JudgedProject:
    """The same project, judged by every rule."""
    return pipeline.judge_project(project_of(folder, change, base))


def alone(code: str) -> Rule:
    """A rule with one of its clauses only."""
    rule = copy(RULES[code[:-1]])
    rule.clauses = tuple(clause for clause in rule.clauses if clause.code == code)
    return rule


def context_of(project: Project) -> JudgingContext:
    """What a project is judged with."""
    return JudgingContext(project, load_standards(), pipeline.make_resolver(project))


def judged_alone(project: Project, code: str) -> Judgment:
    """A project judged by one clause, deviations and walls with it; a clause on entries as any other."""
    context, rules = context_of(project), (alone(code),)
    judgment = judge(context, rules)
    if not rules[0].clauses[0].of_entries:
        return judgment
    return replace(judgment, findings=tuple(lift(project, run_rules(context, rules)[0], rules)))


def findings_of(project: Project, code: str) -> list[Finding]:
    """The findings of a rule, those on entries of the site record among them."""
    return run_rules(context_of(project), (RULES[code],))[0]


@dataclass(frozen=True)
class Told:
    """What a clause comes to where it alone is run: its finding if it fires, and whether it waits."""

    context: JudgingContext
    finding: Finding | None
    waits: bool

    @property
    def fires(self) -> bool:
        """Whether the clause fires on any member."""
        return self.finding is not None


def told_by(project: Project, code: str) -> Told:
    """What one clause says of a project; it rests on no other."""
    context = context_of(project)
    findings, waiting, _ = run_rules(context, (alone(code),))
    return Told(context, next(iter(findings), None), bool(waiting))


# A deviation as a user writes it; what it answers and when it was approved differ.
_DEVIATION = """
deviations:
  DV9:
    kind: deviation
    answers: [{answers}]
    demanded: what the rule asks for
    proposed: another way of doing it
    reason: the wall was built before the finish was chosen
    effects: {{cost: none, time: none, fire: none, warranty: none}}
    approved_on: {approved_on}
"""


def with_deviation(change: Any, answers: str, approved_on: str = "tbd") -> Any:
    """A change of a project, with a deviation that answers a rule or clause."""
    text = _DEVIATION.format(answers=answers, approved_on=approved_on)
    return merged(change, yaml.load(text, Loader=yaml.CSafeLoader))
