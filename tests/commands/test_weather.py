"""`weather`: what it prints, writes, gives as data, and refuses; the hours are invented."""

import json
from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from tests.running import run_main
from tests.support import SMALL, merged, written
from tests.weather.hourly import HEAD, PUBLIC_YEAR, plain_rows, write_rows

PROJECT = merged(
    SMALL,
    {
        "weather": {"max_spray_wind": "8 mph"},
        "site": {"latitude": "40 deg"},
        "schedule": {"shift_start": "06:00", "shift_hours": 10},
        "elevations": {"E1": {"name": "North face", "facing": "N"}, "E2": {"facing": "S"}},
        "shade": {"S1": {"elevation": "E2", "kind": "shade_cloth"}},
    },
)
# Ten days, fit but for rain in hour 60 and wind in hours 130 to 132.
ROWS = plain_rows(240, rain={60: "0.1"}, wind=dict.fromkeys((130, 131, 132), "12"))


def weather(capsys: Any, folder: Path, *more: str, rows: Any = None, project: Any = PROJECT) -> Any:
    hours = write_rows(folder, ROWS if rows is None else rows)
    return run_main(capsys, "weather", str(written(folder, project)), "--hours", str(hours), *more)


def data_of(done: Any) -> Any:
    assert done.code == 0, done.err
    return json.loads(done.out)


def test_the_data_have_counts_windows_and_what_is_not_known(tmp_path: Path, capsys: Any) -> None:
    data = data_of(weather(capsys, tmp_path, "--all-hours", "--format", "json"))
    assert {"fit_hours", "by_month", "windows", "unknown_hours"} <= data.keys()
    # Of 240 hours the last 24 are not known, hour 60 and the 24 before it are wet, and three are windy.
    assert (data["fit_hours"], data["unknown_hours"], data["hours"]) == (240 - 24 - 25 - 3, 24, 240)
    assert data["by_month"] == {"2027-06": 188}
    assert data["lost_by_month"] == {"2027-06": {"rain": 1, "rain in hold": 24, "wind": 3}}
    assert data["windows"] == [
        {"start": "2027-06-14T00:00", "end": "2027-06-15T12:00", "hours": 36, "ended_by": "rain in hold"},
        {"start": "2027-06-16T13:00", "end": "2027-06-19T10:00", "hours": 69, "ended_by": "wind"},
        {"start": "2027-06-19T13:00", "end": "2027-06-23T00:00", "hours": 83, "ended_by": "end of file"},
    ]
    assert data["by_elevation"] == {}
    assert {"reading": "wind", "sense": "most", "limit": 8.0, "unit": "mph"}.items() <= data["limits"][5].items()


def test_shift_and_shade_are_those_of_each_elevation(tmp_path: Path, capsys: Any) -> None:
    data = data_of(weather(capsys, tmp_path, "--format", "json"))
    north, south = data["by_elevation"]["E1"], data["by_elevation"]["E2"]
    assert data["hours"] == north["hours"] == south["hours"] == 100
    # Behind cloth every hour of the shift but the last ten, 4 and 6 before the rain and its own, and three of wind;
    # in June the north wall has the sun till 8:06 in the morning.
    assert south["fit_hours"] == 100 - 10 - (4 + 6 + 1) - 3
    assert north["lost_by_month"]["2027-06"]["direct sun"] > 0
    assert north["fit_hours"] < south["fit_hours"] == data["fit_hours"]
    one = data_of(weather(capsys, tmp_path, "--elevation", "E2", "--format", "json"))
    assert list(one["by_elevation"]) == ["E2"]


def test_the_text_tells_limits_with_their_sources_counts_and_windows(tmp_path: Path, capsys: Any) -> None:
    out = weather(capsys, tmp_path, "--elevation", "E2").out
    for line in (
        "Fit hours for gloss, Trial",
        "76 h fit of 100 h, on 9 days; 10 h not known",
        "  air minimum 50 °F, also 24 h after (common practice, no source)",
        "  wind maximum 8 mph (this project)",
        "  2027-06  76 h fit of 100; lost: rain in hold 10, wind 3, rain 1; not known 10",
        "  2027-06-14 06:00 to 16:00              10 h  ended by: end of shift",
        "NOT IN IT: gusts (no column gust): the wind alone is held against the limit",
        "  gust maximum 8 mph (this project): not judged",
    ):
        assert line in out.splitlines()


def test_a_surface_of_the_file_is_taken_unless_told_otherwise(tmp_path: Path, capsys: Any) -> None:
    rows = [[*row, "95" if hour == 5 else "65"] for hour, row in enumerate(plain_rows(48))]
    hours = write_rows(tmp_path, rows, HEAD + ",surface F")
    call = ("weather", str(written(tmp_path, PROJECT)), "--hours", str(hours), "--all-hours", "--format", "json")
    assert data_of(run_main(capsys, *call))["lost_by_month"] == {"2027-06": {"wall hot": 1}}
    assert data_of(run_main(capsys, *call, "--surface", "air"))["fit_hours"] == 24


def test_the_model_states_its_error(tmp_path: Path, capsys: Any) -> None:
    colored = merged(PROJECT, {"colors": {"C1": {"kind": "standard", "solar_reflectance": 0.4, "emittance": 0.8}}})
    out = " ".join(weather(capsys, tmp_path, "--surface", "model", project=colored).out.split())
    assert "within 0.1 °F" in out
    assert "the wall is modeled under a clear sky" in out
    assert "was not held against a measured wall" in out


def test_the_year_is_drawn_and_told_in_words(tmp_path: Path, capsys: Any) -> None:
    folder = tmp_path / "strips"
    done = weather(capsys, tmp_path, "--out", str(folder))
    assert done.err.endswith(f"specgen: wrote 5 files to {folder}\n")
    names = ["manifest.json", "weather-E1.png", "weather-E1.svg", "weather-E2.png", "weather-E2.svg", "weather.json"]
    assert sorted(file.name for file in folder.iterdir()) == names
    drawn = etree.fromstring((folder / "weather-E2.svg").read_bytes())
    alt = drawn.findtext("{http://www.w3.org/2000/svg}desc")
    assert "76 of 100 hours are fit for gloss" in alt
    before = {file.name: file.read_bytes() for file in folder.iterdir()}
    weather(capsys, tmp_path, "--out", str(folder))
    assert {file.name: file.read_bytes() for file in folder.iterdir()} == before


def test_a_public_year_is_read_as_it_was_issued(tmp_path: Path, capsys: Any) -> None:
    call = ("weather", str(written(tmp_path, PROJECT)), "--hours", str(PUBLIC_YEAR), "--all-hours", "--format", "json")
    data = data_of(run_main(capsys, *call))
    assert data["file"]["typical_year"]
    assert sum(data["by_month"].values()) == data["fit_hours"] == sum(one["hours"] for one in data["windows"])
    assert len(data["by_month"]) == 12


REFUSED = [
    (("--step", "glos"), "there is no step 'glos' (did you mean gloss?)"),
    (("--step", "heavy_mesh"), "the project has no step 'heavy_mesh'"),
    (("--elevation", "E11"), "there is no elevation 'E11' (did you mean E1?)"),
    (("--surface", "reading"), "has no column surface (name one surface F or surface C, or give --surface air)"),
    (("--surface", "model"), "E1 is not judged (give elevations.E1.color)"),
]


@pytest.mark.parametrize(("more", "told"), REFUSED)
def test_what_cannot_be_judged_is_refused(more: tuple[str, ...], told: str, tmp_path: Path, capsys: Any) -> None:
    done = weather(capsys, tmp_path, *more)
    assert (done.code, done.out) == (2, "")
    assert told in done.err


def test_a_file_without_what_the_step_needs_is_refused(tmp_path: Path, capsys: Any) -> None:
    hours = write_rows(tmp_path, [["2027-06-14 07:00", "60", "60"]], "time,air F,rh")
    call = ("weather", str(written(tmp_path, PROJECT)), "--hours", str(hours), "--all-hours")
    done = run_main(capsys, *call)
    assert (done.code, "has no column wind, which gloss needs (name one wind mph or wind m/s)" in done.err) == (2, True)
    assert run_main(capsys, *call, "--step", "boards").code == 0
    assert run_main(capsys, *call[:3], str(tmp_path / "gone.csv"), "--all-hours").code == 2


def test_hours_read_and_hours_missing_are_told_apart(tmp_path: Path, capsys: Any) -> None:
    out = weather(capsys, tmp_path, rows=[*ROWS[:100], *ROWS[106:]]).out
    assert "240 hours" not in out
    assert "234 hours read, 6 hours missing," in " ".join(out.split())
    assert " is missing in " not in out  # what the file has is whole


def test_what_the_fit_hours_leave_out_stands_at_the_answer(tmp_path: Path, capsys: Any) -> None:
    told = data_of(weather(capsys, tmp_path, "--format", "json"))["not_in_it"]
    assert [one.partition(" (")[0] for one in told] == ["a wall warmer than the air", "gusts"]
    boards = data_of(weather(capsys, tmp_path, "--step", "boards", "--format", "json"))
    assert boards["not_in_it"] == []
