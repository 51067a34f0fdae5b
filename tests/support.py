"""What the tests share: a small project to change, and one call from YAML text to a judged case."""

from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

import yaml

from specgen import computing, pipeline
from specgen.judging.context import JudgingContext
from specgen.judging.engine import run_rules
from specgen.judging.registry import load_rules
from specgen.model.finding import Finding
from specgen.model.project import Project
from specgen.resolving.provider import Resolver
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
    file.write_text(
        data if isinstance(data, str) else yaml.safe_dump(data, sort_keys=False, allow_unicode=True), "utf-8"
    )
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


@dataclass(frozen=True)
class Told:
    """What a clause comes to where its own rule alone is run: whether it fires, whether it waits."""

    context: JudgingContext
    fires: bool
    waits: bool


def judging_of(project: Project) -> JudgingContext:
    """What the clauses judge a project with."""
    return JudgingContext(project, load_standards(), Resolver(project, computing.find, computing.names()))


def findings_of(project: Project, code: str) -> list[Finding]:
    """The findings of one clause alone."""
    return [one for one in run_rules(judging_of(project), (RULES[code[:-1]],))[0] if one.code == code]


def told_by(project: Project, code: str) -> Told:
    """What one clause says of a project; it rests on no other rule."""
    context = judging_of(project)
    findings, waiting, _ = run_rules(context, (RULES[code[:-1]],))
    return Told(context, code in {f.code for f in findings}, code in {n.code for n in waiting})
