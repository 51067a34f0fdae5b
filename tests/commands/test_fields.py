"""`fields`: the manual of each kind of field, and the list below a section, as the schema's own files word them."""

from typing import Any

import pytest

from tests.running import run_main

# Each page retyped from the entry of the field in specgen/reading/schema.
PAGES = {
    "joints.J1.at": """\
joints.*.at  Joint position

  why       distance from the lower left corner of the elevation
  kind      quantity with unit, such as ft or m
  limits    0 ft to 3000 ft: any other value is refused
  required  for the work stage, from the architect
  only if   joints.*.runs != around_opening
  stands    in the project file
  example   at: 12 ft
""",
    "joints.*.sealant": """\
joints.*.sealant  Joint sealant

  why       movement class and bond face go by the sealant
  kind      mark of one of sealants
  required  for the work stage, from the architect
  only if   count sealants > 1
  default   the only sealant
  stands    in the project file
  example   sealant: S1
""",
    "schedule.days_off": """\
schedule.days_off  Days off

  why       calendar: days of the week (mon to sun) or dates
  kind      list of texts
  required  optional
  stands    in the project file
  example   days_off: [sat, sun]
""",
    "schedule.later_trades": """\
schedule.later_trades  Later trades and their dates

  why       work that may damage the gloss afterward; may be empty
  kind      list of choices
  choices   roof_edge, window_cleaning, masonry_wash, landscape, signage, paving
  required  for the work stage, from the general contractor
  stands    in the project file
  example   later_trades: [signage]
""",
    "schedule.weather_days": """\
schedule.weather_days  Weather days

  why       float for unfit days
  kind      integer, in d
  limits    0 to 200: any other value is refused
  required  for the work stage, from the applicator
  stands    in the project file
  example   weather_days: 8
""",
    "log.fluid_pressure": """\
log.fluid_pressure  Fluid pressure used

  why       held against the accepted mockup; the stream decides how it is set
  kind      quantity with unit, such as psi or kPa
  limits    0 psi to 120 psi: any other value is refused
  required  for the closeout stage, from the applicator
  only if   log.step in {setup, primer, gloss}
  stands    in the record file
  example   fluid_pressure: 12 psi
""",
    "walls.*.wrb": """\
walls.*.wrb.kind                verdict   Water-resistive barrier (WRB)
walls.*.wrb.product             mockup    WRB product
walls.*.wrb.standard            mockup    WRB standard
walls.*.wrb.coats               work      Coats of WRB
walls.*.wrb.dry_thickness       work      WRB dry thickness
walls.*.wrb.dry_hours           work      WRB drying time
walls.*.wrb.least_temperature   work      WRB minimum temperature
walls.*.wrb.most_temperature    optional  WRB maximum temperature
walls.*.wrb.direct_sun          optional  WRB, direct sun before it is set
walls.*.wrb.most_exposure_days  work      WRB, maximum exposure to weather
walls.*.wrb.bond_report         mockup    Bond report of adhesive on WRB
""",
}


@pytest.mark.parametrize("path", PAGES)
def test_a_field_is_told_as_the_schema_words_it(path: str, capsys: Any) -> None:
    assert run_main(capsys, "fields", path) == (0, PAGES[path], "")


@pytest.mark.parametrize(
    ("path", "head"),
    [
        (
            "joints",
            "joints.*  Joints: a mapping keyed by marks, one entry for each joint\n"
            "  a mark holds letters, digits, single spaces inside, and - . / _ # & ( ) + , '; at most 60 characters\n",
        ),
        ("contract.demands", "contract.demands.*  Specification requirements: a list, one entry for each demand\n"),
    ],
)
def test_a_collection_says_how_its_members_are_named_above_their_fields(path: str, head: str, capsys: Any) -> None:
    done = run_main(capsys, "fields", path)
    assert done.code == 0
    told, _, rows = done.out.partition("\n\n")
    assert f"{told}\n" == head
    assert rows and all(row.startswith(f"{path}.*.") for row in rows.splitlines())


def test_a_name_below_a_record_that_is_no_field_is_refused_with_the_nearest(capsys: Any) -> None:
    done = run_main(capsys, "fields", "log.fluid_presure")
    assert (done.code, done.out) == (2, "")
    assert "there is no field 'log.fluid_presure'" in done.err and "log.fluid_pressure" in done.err


@pytest.mark.parametrize(
    ("path", "whole"), [("walls.insulation", "walls.*.insulation"), ("elevations.openings", "elevations.*.openings")]
)
def test_a_section_is_found_without_the_star_of_the_marks(path: str, whole: str, capsys: Any) -> None:
    done = run_main(capsys, "fields", path)
    assert done == run_main(capsys, "fields", whole)
    rows = [row for row in done.out.splitlines() if row.startswith(whole)]
    assert rows and not any(row.startswith(f"{whole.split('.')[0]}.*.joint") for row in done.out.splitlines())


def test_the_fields_below_a_mark_are_those_of_every_mark(capsys: Any) -> None:
    assert run_main(capsys, "fields", "walls.W1") == run_main(capsys, "fields", "walls.*")
    told = run_main(capsys, "fields", "walls.W1.insulation.thickness").out
    assert told.startswith("walls.*.insulation.thickness  ")


@pytest.mark.parametrize(
    ("path", "near"),
    [
        ("wals", "walls"),
        ("walls.insulaton", "walls.*.insulation"),
        ("walls.insulation.thicknes", "walls.*.insulation.thickness"),
        ("walls.W1.insulaton", "walls.*.insulation"),
    ],
)
def test_a_misspelled_section_or_field_is_refused_with_the_nearest(path: str, near: str, capsys: Any) -> None:
    done = run_main(capsys, "fields", path)
    assert (done.code, done.out) == (2, "")
    assert done.err == f"specgen: there is no field {path!r} (did you mean {near}?)\n"


def test_every_path_of_the_list_has_its_page(capsys: Any) -> None:
    for row in run_main(capsys, "fields").out.splitlines():
        path = row.split()[0]
        assert run_main(capsys, "fields", path).out.startswith(f"{path}  "), path


def test_without_a_path_every_field_is_listed_once(capsys: Any) -> None:
    paths = [row.split()[0] for row in run_main(capsys, "fields").out.splitlines()]
    assert len(paths) == len(set(paths)) > 500
    assert {"project.name", "walls.*.wrb.kind", "joints.*.width"} <= set(paths)


@pytest.mark.parametrize(
    ("word", "said"),
    [
        ("CMU", "CMU: read as concrete_masonry, a choice of walls.*.substrate.kind\n"),
        ("polystyrene", "polystyrene: may be eps or xps, a choice of walls.*.insulation.kind\n"),
    ],
)
def test_a_word_of_the_trade_is_found_with_the_choice_it_means(word: str, said: str, capsys: Any) -> None:
    done = run_main(capsys, "fields", word)
    assert done.code == 0
    assert said in done.out
