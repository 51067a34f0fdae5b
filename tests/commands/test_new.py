"""`new`: the starter it writes."""

import re
from pathlib import Path
from typing import Any

import pytest

from tests.running import run_main
from tests.support import written


def test_a_new_file_in_a_folder_that_is_not_there_is_refused(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "new", str(tmp_path / "none" / "a.yaml"))
    assert (done.code, done.out) == (2, "")
    assert "nothing was written" in done.err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("ring", ["verdict", "mockup", "work", "closeout"])
@pytest.mark.parametrize("units", ["ip", "si"])
def test_a_starter_is_accepted_by_check_and_never_overwrites(
    ring: str, units: str, tmp_path: Path, capsys: Any
) -> None:
    file = tmp_path / "new.yaml"
    assert run_main(capsys, "new", str(file), "--for", ring, "--units", units).code == 0
    before = file.read_bytes()
    assert run_main(capsys, "check", str(file)).code == 0
    done = run_main(capsys, "new", str(file))
    assert done.code == 2
    assert "is not overwritten" in done.err
    assert file.read_bytes() == before


@pytest.mark.parametrize("ring", ["verdict", "mockup", "work"])
@pytest.mark.parametrize("units", ["ip", "si"])
def test_every_line_of_a_starter_can_be_taken_into_use(ring: str, units: str, tmp_path: Path, capsys: Any) -> None:
    run_main(capsys, "new", str(tmp_path / "new.yaml"), "--for", ring, "--units", units)
    lines = (tmp_path / "new.yaml").read_text("utf-8").splitlines()[2:]
    text = "\n".join(re.sub(r"^(\s*)# ", r"\1", re.sub(r"^# ", "", line)) for line in lines)
    done = run_main(
        capsys, "check", str(written(tmp_path, text.replace("purpose: mockup_submittal", "purpose: design_draft")))
    )
    # A paper or face that another ring describes is all that may be missing.
    assert [
        line for line in done.err.splitlines() if "is the mark of no" not in line and "cannot be read" not in line
    ] == []
