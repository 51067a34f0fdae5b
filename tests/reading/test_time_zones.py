"""The time zone of a site is a name of the IANA time zone data (RFC 6557)."""

from pathlib import Path

import pytest

from specgen import pipeline
from specgen.model.problem import Refused
from tests.support import SMALL, merged, written


def test_a_name_of_the_data_is_taken(tmp_path: Path) -> None:
    project = pipeline.read(written(tmp_path, merged(SMALL, {"site": {"time_zone": "America/Denver"}})))
    assert project.get(("site", "time_zone")) == "America/Denver"


@pytest.mark.parametrize(
    ("name", "hint"),
    [
        ("America/Denvr", "did you mean America/Denver?"),
        ("eastward ho", "write a name such as America/Denver or Europe/Berlin"),
        ("../etc/passwd", "write a name such as America/Denver or Europe/Berlin"),
    ],
)
def test_any_other_name_is_told_with_the_nearest(name: str, hint: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        pipeline.read(written(tmp_path, merged(SMALL, {"site": {"time_zone": name}})))
    (problem,) = refused.value.problems
    assert (problem.path, problem.message, problem.hint) == ("site.time_zone", f"{name!r} is not a time zone", hint)
