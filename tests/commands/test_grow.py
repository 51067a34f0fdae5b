"""`grow`: what it adds to a project file, what it leaves alone, and that the grown file is judged as before."""

import random
import shutil
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen import pipeline
from specgen.pipeline import JudgedProject
from tests.projects_at_random import draw_project
from tests.running import Ended, run_main
from tests.support import EXAMPLES, SMALL, merged, written

STAGES = ("verdict", "mockup", "work", "closeout")
# The purpose of a package that is whole at the end of each stage.
PURPOSES = dict(zip(STAGES, ("design_draft", "mockup_submittal", "work_submittal", "closeout"), strict=True))
NAMES = sorted(file.parent.name for file in EXAMPLES.glob("*/project.yaml") if file.parent.name != "large")


def grow(capsys: Any, file: Path, stage: str) -> Ended:
    return run_main(capsys, "grow", str(file), "--for", stage)


def copy_example(name: str, folder: Path) -> Path:
    shutil.copytree(EXAMPLES / name, folder / "job")
    return folder / "job" / "project.yaml"


def read_purpose(text: str) -> str:
    return text.split("purpose: ")[1].split()[0].strip("',}")


def judged(case: JudgedProject) -> tuple[list[Any], ...]:
    """All that a check tells, without the places in the file."""
    findings = [finding._replace(place=None, places=()) for finding in case.judgment.findings]
    return findings, list(case.judgment.open_items), list(case.judgment.walls), list(case.judgment.not_judged)


def hold_against(file: Path, before: str, purpose: str) -> None:
    """No line but the purpose's has changed, and the file is judged as it was, with the same purpose."""
    after = file.read_bytes().decode()
    repurposed = before.replace(f"purpose: {read_purpose(before)}", f"purpose: {purpose}", 1)
    rest = iter(after.splitlines(keepends=True))
    assert all(line in rest for line in repurposed.splitlines(keepends=True))
    grown = judged(pipeline.check(file))
    file.write_bytes(repurposed.encode())
    assert grown == judged(pipeline.check(file))
    file.write_bytes(after.encode())


@pytest.mark.parametrize("stage", ["mockup", "closeout"])
@pytest.mark.parametrize("name", NAMES)
def test_an_example_grows_and_changes_no_line_but_that_of_the_purpose(
    name: str, stage: str, tmp_path: Path, capsys: Any
) -> None:
    file = copy_example(name, tmp_path)
    before = file.read_bytes().decode()
    old = read_purpose(before)
    order = list(PURPOSES.values())
    purpose = PURPOSES[stage] if order.index(PURPOSES[stage]) > order.index(old) else old
    assert grow(capsys, file, stage).code == 0
    hold_against(file, before, purpose)
    grown = file.read_bytes()
    assert "nothing to add" in grow(capsys, file, stage).out
    assert file.read_bytes() == grown


@pytest.mark.parametrize("seed", range(12))
def test_a_project_drawn_at_random_grows_so_too(seed: int, tmp_path: Path, capsys: Any) -> None:
    chance = random.Random(seed)
    drawn = draw_project(seed)
    drawn["package"]["purpose"] = "design_draft"
    text = yaml.dump(drawn, sort_keys=False, default_flow_style=chance.choice([None, False]), width=10_000)
    file = written(tmp_path, text)
    stage = chance.choice(STAGES)
    assert grow(capsys, file, stage).code == 0
    hold_against(file, text, PURPOSES[stage])


def test_a_stage_that_is_whole_gets_nothing(tmp_path: Path, capsys: Any) -> None:
    file = copy_example("clean", tmp_path)
    before = file.read_bytes()
    done = grow(capsys, file, "mockup")
    assert (done.code, done.out) == (0, "nothing to add\npackage.purpose: work_submittal, as it was\n")
    assert done.err == f"specgen: next: specgen check {file}\n"
    assert file.read_bytes() == before
    assert not list(file.parent.glob("*.before*"))


TYPED = """\
# ours
format: 1
package:
  purpose: 'design_draft'   # until May
project:
  name: Trial  # kept
walls:
  N-1:
    substrate:
      kind: concrete
    attachment: {method: adhesive_full_bed}
  N-2:
    substrate:
      kind: plywood
    attachment: {method: adhesive_full_bed}
"""


def test_fields_stand_empty_below_their_comments_in_the_order_of_a_starter(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, TYPED)
    done = grow(capsys, file, "mockup")
    text = file.read_text("utf-8")
    assert text.startswith("# ours\nformat: 1\n\n# Firm file: people, equipment")
    assert "  purpose: mockup_submittal   # until May\n  # Number of the package" in text
    assert (
        "  name: Trial  # kept\n  # Number of the project: headings (architect)\n  # such as 2714\n  number:\n" in text
    )
    # What hangs on the substrate is asked of the wall of concrete, or of that of plywood, alone.
    first, second = text.split("  N-2:")
    assert "substrate:\n      kind: concrete\n      # " in first
    assert "fastener_schedule" not in second.split("\n\n")[0]
    # Of a collection that is not there one member is asked for.
    assert "\njoints:\n  J1:\n    # Sealant bond face: the gloss coat is never a bond face (applicator)\n" in text
    assert done.out.splitlines()[-1] == "kept as it was: project.yaml.before"
    assert (tmp_path / "project.yaml.before").read_text("utf-8") == TYPED
    assert "package.purpose: design_draft becomes mockup_submittal" in done.out


def test_a_second_member_is_asked_by_the_name_of_the_field_alone(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, TYPED)
    grow(capsys, file, "mockup")
    walls = yaml.safe_load(file.read_text("utf-8"))["walls"]
    assert "wrb" in walls["N-1"]
    assert set(walls["N-1"]) == set(walls["N-2"])
    assert file.read_text("utf-8").count("# such as fluid-applied") <= 1


def test_what_is_at_home_in_a_side_file_is_not_added(tmp_path: Path, capsys: Any) -> None:
    file = copy_example("metric", tmp_path)
    done = grow(capsys, file, "work")
    assert "of coating-system.yaml, which grow leaves as it is" in done.out
    assert "storage_temperature" not in file.read_text("utf-8")


def test_what_comes_by_an_alias_is_asked_for_once(tmp_path: Path, capsys: Any) -> None:
    text = TYPED.replace("  N-1:\n", "  N-1: &one\n") + "  N-3: *one\n  N-4:\n    <<: *one\n"
    file = written(tmp_path, text)
    assert grow(capsys, file, "mockup").code == 0
    grown = file.read_text("utf-8")
    assert "  N-3: *one\n" in grown
    assert grown.split("  N-4:\n")[1].startswith("    <<: *one\n\n")
    assert "nothing to add" in grow(capsys, file, "mockup").out


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("-", "--for", "mockup"), "standard input cannot be grown"),
        (("none.yaml", "--for", "mockup"), "none.yaml: the file cannot be read"),
    ],
)
def test_what_cannot_grow_is_refused(words: tuple[str, ...], message: str, capsys: Any) -> None:
    done = run_main(capsys, "grow", *words)
    assert (done.code, done.out) == (2, "")
    assert message in done.err


def test_a_file_with_faults_is_left_as_it_is(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "wide"}}}))
    before = file.read_bytes()
    done = grow(capsys, file, "work")
    assert (done.code, done.out, file.read_bytes()) == (2, "", before)
    assert "joints.J1.width" in done.err
    assert [path.name for path in tmp_path.iterdir()] == ["project.yaml"]
