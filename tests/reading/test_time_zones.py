"""The time zone of a site is a name of the IANA time zone data (RFC 6557)."""

from pathlib import Path

import pytest

from specgen import pipeline
from specgen.model.problem import Refused
from tests.support import SMALL, merged, written


def test_a_name_of_the_data_is_taken(tmp_path: Path) -> None:
    project = pipeline.read(written(tmp_path, merged(SMALL, {"site": {"time_zone": "America/Denver"}})))
    assert project.get(("site", "time_zone")) == "America/Denver"


# A name, and what is right.
NO_ZONE = [
    ("America/Denvr", "did you mean America/Denver?"),
    ("eastward ho", "write a name such as America/Denver or Europe/Berlin"),
    ("../etc/passwd", "write a name such as America/Denver or Europe/Berlin"),
]


@pytest.mark.parametrize(
    ("name", "hint"),
    NO_ZONE,
)
def test_any_other_name_is_told_with_the_nearest(name: str, hint: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        pipeline.read(written(tmp_path, merged(SMALL, {"site": {"time_zone": name}})))
    (problem,) = refused.value.problems
    assert (problem.path, problem.message, problem.hint) == ("site.time_zone", f"{name!r} is not a time zone", hint)


def test_a_longitude_far_from_the_zone_is_refused(tmp_path: Path) -> None:
    site = {"longitude": "75.4 deg", "time_zone": "America/New_York"}
    with pytest.raises(Refused) as refused:
        pipeline.read(written(tmp_path, merged(SMALL, {"site": site})))
    (problem,) = refused.value.problems
    assert problem.path == "site.longitude"
    assert problem.message == "longitude 75.4° does not lie in America/New_York"
    assert problem.hint == "write degrees east of Greenwich, minus west of it"


def test_a_longitude_beyond_the_line_of_the_date_lies_in_its_zone(tmp_path: Path) -> None:
    # Kiritimati lies at 157 degrees west and keeps the date of the east, UTC+14: IANA time zone data.
    site = {"longitude": "-157.4 deg", "time_zone": "Pacific/Kiritimati"}
    assert pipeline.read(written(tmp_path, merged(SMALL, {"site": site}))).get(("site", "time_zone"))
