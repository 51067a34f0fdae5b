"""The example `season`: what its records hold, counted by hand; the readings are invented."""

from specgen import pipeline
from specgen.model.record import COLLECTIONS
from specgen.quantities.quantity import Quantity
from tests.support import EXAMPLES

PROJECT = pipeline.read(EXAMPLES / "season" / "project.yaml")


def test_every_entry_of_its_files_is_read_without_a_remark() -> None:
    records = PROJECT.records
    assert {name: len(records.of(name)) for name in COLLECTIONS} == {
        "log": 139,
        "release": 31,
        "result": 42,
        "inspection": 52,
        "disposition": 9,
    }
    assert (records.faults, records.remarks) == ((), ())
    assert [(file.name, file.entries) for file in records.files][2:] == [
        ("records/wall.csv", 43),
        ("records/weather.csv", 64),
        ("records/pails.csv", 16),
        ("records/spray.csv", 16),
        ("records/releases.csv", 31),
        ("records/dispositions.yaml", 9),
    ]
    assert PROJECT.value(("accepted", "cup_time")) == Quantity.of(30, "s")


def test_its_batches_change_between_faces_and_two_panels_are_recoated() -> None:
    pails = [entry for entry in PROJECT.records.of("log") if entry.get("step") == "gloss" and entry.get("pail")]
    by_face = {face: {one.get("batch") for one in pails if one.get("elevation") == face} for face in ("E1", "E2", "E3")}
    assert by_face == {"E1": {"G-118"}, "E2": {"G-118", "G-126"}, "E3": {"G-126"}}
    (recoat,) = [one for one in PROJECT.records.of("log") if one.get("coat") == 3 and one.get("panels")]
    assert (recoat.get("elevation"), len(recoat.get("panels"))) == ("E2", 2)


def test_its_readings_are_those_of_a_wall_in_air() -> None:
    read = [one for one in PROJECT.records.of("log") if one.get("air") is not None]
    # A wall in shade keeps close to the air, and one that has had the sun is warmer by some degrees: from memory.
    apart = [one.get("surface").to("F") - one.get("air").to("F") for one in read]
    assert (len(read), min(apart) >= -4, max(apart) <= 8) == (64, True, True)
