"""Which pails a pass was sprayed from, sorted by hand from entries of a few days."""

from pathlib import Path

from specgen.recording.pails import Water, find_pass_water
from tests.recording.records import job, log

DAY = "2027-06-16"


def pail(water: float, **more: object) -> dict[str, object]:
    return log(DAY, "gloss", pail="1", water=water, **more)


def water_of(folder: Path, *entries: dict[str, object], **values: object) -> Water | None:
    project = job(folder, *entries, log(DAY, "gloss", "07:00-08:00", wet_film=3, **values))
    return find_pass_water(project).get(len(entries))


def test_a_pass_has_the_water_of_the_pails_of_its_day_coat_and_area(tmp_path: Path) -> None:
    entries = (
        pail(4, coat=1, area="left bay"),
        pail(6, coat=1, area="E1 Left  Bay"),
        pail(1, coat=1, area="right bay"),
        pail(2, coat=2, area="left bay"),
        pail(3, coat=1, area="left bay", elevation="E2"),
        log("2027-06-15", "gloss", coat=1, water=9),
        log(DAY, "primer", coat=1, water=8),
    )
    assert water_of(tmp_path, *entries, coat=1, area="left bay") == Water(4, 6)


def test_a_pass_that_names_its_batch_was_not_sprayed_from_a_pail_of_another(tmp_path: Path) -> None:
    assert water_of(tmp_path, pail(4, batch="G-1"), pail(6, batch="G-2"), batch="G-2") == Water(6, 6)


def test_water_that_stands_with_the_pass_itself_counts(tmp_path: Path) -> None:
    assert water_of(tmp_path, pail(4), water=5) == Water(5, 5)


def test_a_pail_of_no_elevation_is_of_each(tmp_path: Path) -> None:
    assert water_of(tmp_path, pail(4, elevation=None)) == Water(4, 4)


def test_a_pass_without_a_pail_has_no_water_that_is_known(tmp_path: Path) -> None:
    assert water_of(tmp_path) is None
