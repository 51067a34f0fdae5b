"""The compressor that would do: by the share of its rating that a compressor gives at the site. Worked by hand."""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.absence import Absent
from tests.computing._figures import resolver_of

# Two guns of 12 scfm, half the time: 12 scfm, with 10 % for leaks and 20 % in reserve 15.84 scfm.
JOB: dict[str, Any] = {
    "guns": {"G1": {"air_flow": "12 scfm", "count": 2, "duty": 0.5}},
    "compressor": {"air_flow": "20 cfm", "engine_derate": "0 %/1000 ft"},
    "site": {"altitude": "0 ft"},
}


@pytest.mark.parametrize(("altitude", "rating"), [("0 ft", 15.84), ("5000 ft", 19.04)])
def test_what_is_rated_for_the_site_gives_the_air_that_is_needed_there(
    altitude: str, rating: float, tmp_path: Path
) -> None:
    resolver = resolver_of(tmp_path, JOB | {"site": {"altitude": altitude}})
    working = resolver((), "compressor-rating")
    assert working.unit == "cfm"
    # At 5,000 ft air has 0.832 of the pressure at sea level: U.S. Standard Atmosphere, 1976, from memory.
    assert float(working.result) == pytest.approx(rating, rel=2e-3)


def test_without_a_compressor_there_is_nothing_to_scale(tmp_path: Path) -> None:
    with pytest.raises(Absent):
        resolver_of(tmp_path, {key: value for key, value in JOB.items() if key != "compressor"})(
            (), "compressor-rating"
        )
