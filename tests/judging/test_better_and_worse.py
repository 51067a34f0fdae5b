"""Better documents never make a worse verdict: nothing is gained by leaving out, nothing is lost by mending.

The order of the verdicts is ours: no, not yet known, with measures, yes.
"""

import random
import shutil
import tempfile
from functools import cache
from pathlib import Path

import pytest

from specgen import pipeline
from specgen.judging.registry import load_rules
from specgen.model.field import Path as FieldPath
from specgen.model.finding import Severity, Verdict
from specgen.model.problem import Refused
from specgen.model.project import Project
from specgen.quantities.quantity import Quantity
from specgen.reading.positions import read_text
from tests.judging.test_outcomes import judged, lacking, verdicts
from tests.projects_at_random import draw_anew, draw_project
from tests.support import EXAMPLES, written

LIMITS = {clause.code: clause.limit for rule in load_rules() for clause in rule.clauses}
NEEDED = {("package", "purpose"), ("project", "name")}
KEPT = {("substrate", "kind"), ("attachment", "method")}
# A wall that is a no and one that is not yet known are both none to build on.
GAIN = {Verdict.NO: 0, Verdict.NOT_YET_KNOWN: 0, Verdict.WITH_MEASURES: 1, Verdict.YES: 2}
ORDER = [Verdict.NO, Verdict.NOT_YET_KNOWN, Verdict.WITH_MEASURES, Verdict.YES]


def drawn(seed: int, folder: Path) -> Project | None:
    """A project at random, or an example some of whose figures and choices are drawn anew; none if it cannot be."""
    chance = random.Random(seed)
    if seed % 4 == 0:
        return pipeline.read(written(folder, draw_project(seed)))
    example = ("clean", "metric", "old-wall")[seed % 3]
    shutil.copytree(EXAMPLES / example, folder, dirs_exist_ok=True)
    whole = read_text(folder / "project.yaml", "project.yaml").data
    try:
        return pipeline.read(written(folder, draw_anew(whole, seed, chance.randint(1, 6))))
    except Refused:
        return None


# Every test asks the same draws, and changes none of them.
@cache
def drawn_and_judged(seed: int) -> pipeline.JudgedProject | None:
    """The same, judged."""
    with tempfile.TemporaryDirectory() as name:
        project = drawn(seed, Path(name))
    return None if project is None else pipeline.judge_project(project)


@pytest.mark.parametrize("seed", range(100))
@pytest.mark.no_cover
def test_no_wall_gains_by_a_document_or_field_left_away(seed: int) -> None:
    made, chance = drawn_and_judged(seed), random.Random(seed)
    if made is None:
        return
    project, whole = made.project, verdicts(made.judgment)
    for _ in range(2):
        gone = chance.sample(sorted(project.values, key=str), chance.randint(1, min(40, len(project.values))))
        less = lacking(project, *(path for path in gone if path not in NEEDED and path[-2:] not in KEPT))
        assert [wall for wall, verdict in verdicts(judged(less)).items() if GAIN[verdict] > GAIN[whole[wall]]] == []


@pytest.mark.parametrize("seed", range(100))
@pytest.mark.no_cover
def test_no_wall_loses_by_a_caution_cured(seed: int) -> None:
    made = drawn_and_judged(seed)
    if made is None:
        return
    project = made.project
    for finding in made.judgment.of(Severity.CAUTION):
        path, limit = tuple(finding.place.path.split(".")), LIMITS[finding.code]
        figure = made.context.limit(limit) if limit else None
        found = project.values.get(path)
        if not isinstance(figure, Quantity) or not isinstance(found, Quantity) or figure.dimension != found.dimension:
            continue
        # A value that is the limit itself is within it.
        cured = holding(project, path, figure)
        before, after = verdicts(made.judgment), verdicts(judged(cured))
        assert [wall for wall in before if ORDER.index(after[wall]) < ORDER.index(before[wall])] == [], finding.code


def holding(project: Project, path: FieldPath, value: object) -> Project:
    """The project with another value at a path."""
    held = lacking(project, path)
    held.values[path] = value
    return held


def test_the_draws_reach_every_verdict() -> None:
    reached: set[Verdict] = set()
    for seed in range(400):
        made = drawn_and_judged(seed)
        reached |= set(verdicts(made.judgment).values()) if made is not None else set()
        if reached == set(Verdict):
            return
    assert reached == set(Verdict)
