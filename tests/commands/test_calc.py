"""`calc`: one sum as data, what it refuses, all of a name in a project."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from tests.running import run_main
from tests.support import ROOT, SMALL, merged, written


def test_a_sum_as_data_has_its_keys_and_a_bare_result(capsys: Any) -> None:
    keys = (
        "length=30ft",
        "alpha=3.6e-6/F",
        "movement_class=50",
        "tolerance=1/8in",
        "hot=105F",
        "cold=-15F",
        "install_low=60F",
        "install_high=75F",
        "moisture_strain=0.0002",
        "structural_closing=1/4in",
        "structural_opening=1/4in",
    )
    done = run_main(capsys, "calc", "joint-width", *keys, "--format", "json")
    made = json.loads(done.out)
    assert done.code == 0
    assert set(made) == {"name", "given", "result", "unit", "steps", "source", "notes"}
    assert set(made["steps"][0]) == {"symbol", "name", "expression", "substitution", "value", "unit"}
    # 0.8857 in before rounding: Cornell University, ARCH 262, fall 2007; the next sixteenth is 15/16.
    assert (made["result"], made["unit"]) == (0.9375, "in")
    metric = json.loads(run_main(capsys, "calc", "joint-width", *keys, "unit=mm", "--format", "json").out)
    assert metric["result"] == pytest.approx(0.9375 * 25.4)


@pytest.mark.parametrize(
    "wrong", [("length=30ft", "alpha"), ("alpha=steep",), ("movement_class=60",), ("length=30psi",), ("unit=psi",)]
)
def test_a_sum_refuses_what_it_cannot_use(wrong: tuple[str, ...], capsys: Any) -> None:
    good = {
        "length": "30ft",
        "alpha": "4e-6/F",
        "movement_class": "50",
        "tolerance": "0in",
        "temperature_range": "100F",
    }
    given = good | {w.partition("=")[0]: w.partition("=")[2] for w in wrong if "=" in w}
    words = [f"{key}={value}" for key, value in given.items()] + [w for w in wrong if "=" not in w]
    done = run_main(capsys, "calc", "joint-width", *words)
    assert (done.code, done.out) == (2, "")
    assert done.err.startswith("specgen: ")


def test_all_sums_of_a_project_are_told_and_what_they_wait_for(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "calc", "joint-width", "--from", str(ROOT / "project_examples" / "clean" / "project.yaml"))
    assert done.code == 0
    assert done.out.count("result ") == len(re.findall(r"(?m)^J\d+: ", done.out))
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "1 in"}}}))
    told = run_main(capsys, "calc", "joint-width", "--from", str(file)).out
    assert told.startswith("J1: waits for ")
    assert "joints.J1.elevation" in told
