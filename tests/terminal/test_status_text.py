"""What `status` prints, on a phone of 40 columns and a terminal of 80, retyped from records of a few days."""

from pathlib import Path

import pytest

from specgen.model.status import ProjectStatus, Remark
from specgen.terminal.screen import Screen, show_lines
from specgen.terminal.status_face import list_face_lines
from specgen.terminal.status_text import list_against, list_status_lines
from tests.recording.records import inspection, log, release, status

DAYS = (
    inspection("2027-06-01", "substrate"),
    inspection("2027-06-01", "mockup"),
    inspection("2027-06-02", "flashings", "refused"),
    log("2027-06-10", "mesh", "07:00-09:00", area="left bay", crew="red"),  # dry at 19:00
    log("2027-06-10", "mesh", "10:00-12:00", area="right bay", crew="blue"),  # dry at 22:00
    release("2027-06-10", "mesh", "20:00"),
    log("2027-06-10", "second_pass", "20:30-21:00", area="left bay"),
)
GRID_40 = """\
                           E1     E2
Access and site safety     none   -
Substrate                  rel    -
Equipment                  none   -
Mockup                     rel    rel
Flashings and terminations FAIL   -
Board layout               none   -
Insulation boards          none   -
Rasping and leveling       none   -
Aesthetic joints           none   -
Base coat with standard    dries! -
  mesh
Base coat, leveling pass   work   -
First smoothing coat       -      -
"""
LEGEND_80 = """\
- not begun; work under way; dries drying; rel released; none no entry, and a
  later step has begun; FAIL failed; ! begun too early
"""
OWED_80 = """\
Required
  The applicator (Larkwall)
    E1: correct Flashings and terminations
  Plumb Line
    E1: release of Flashings and terminations, after correction
    E1: release of Base coat with standard mesh, right bay, from 2027-06-10
      22:00
    E1: release of Base coat, leveling pass, left bay, from 2027-06-11 21:00
"""
NEXT_40 = """\
Next
  E1  correct Flashings and
      terminations, then release by
      Plumb Line
      Base coat, leveling pass goes on,
      from 2027-06-10 21:00
  E2  Access and site safety, from
      2027-06-10 21:00
"""
ALSO_80 = """\
Also
  E1 Base coat with standard mesh, right bay: release not counted: signed
    2027-06-10 20:00, before the 10 h were up 2027-06-10 22:00
    (walls.W1.base_coat.first_pass_dry_hours) (log.csv:7)
"""
MESH_80 = """\
Base coat with standard mesh: drying until 2027-06-10 22:00
  dries 10 h (walls.W1.base_coat.first_pass_dry_hours)
  left bay: 2027-06-10 07:00 to 09:00; crew red; released 2027-06-10 20:00 by P.
    Line
"""


def shown(found: ProjectStatus, width: int = 80, painted: bool = False) -> str:
    screen = Screen(width, painted)
    return show_lines(list_status_lines(found, screen), screen)


@pytest.mark.parametrize("width", [40, 80])
def test_no_line_is_wider_than_the_screen_but_a_word_that_is(tmp_path: Path, width: int) -> None:
    lines = shown(status(tmp_path, *DAYS), width).splitlines()
    assert [line for line in lines if len(line) > width and " " in line.strip()] == []


def test_the_grid_has_a_line_a_step_and_a_column_an_elevation(tmp_path: Path) -> None:
    found = status(tmp_path, *DAYS)
    assert GRID_40 in shown(found, 40)
    assert "Base coat with standard mesh dries! -\n" in shown(found, 80)


def test_signs_are_told_in_words_below_the_grid(tmp_path: Path) -> None:
    assert LEGEND_80 in shown(status(tmp_path, *DAYS))


def test_many_elevations_stand_in_blocks_of_those_that_fit(tmp_path: Path) -> None:
    found = status(tmp_path, change={"elevations": {f"E{number}": {} for number in range(1, 9)}})
    heads = [line.split() for line in shown(found, 40).splitlines() if line.startswith(" " * 16 + " E")]
    assert heads == [["E1", "E2", "E3"], ["E4", "E5", "E6"], ["E7", "E8"]]


def test_what_is_next_who_owes_what_and_what_does_not_count_is_told(tmp_path: Path) -> None:
    found = status(tmp_path, *DAYS)
    assert NEXT_40 in shown(found, 40)
    assert OWED_80 in shown(found)
    assert ALSO_80 in shown(found)


def test_color_stands_beside_words_and_never_for_them(tmp_path: Path) -> None:
    found = status(tmp_path, *DAYS)
    painted = shown(found, painted=True)
    for code in ("\x1b[1m", "\x1b[1;31m", "\x1b[33m", "\x1b[2m", "\x1b[0m"):
        painted = painted.replace(code, "")
    assert painted == shown(found)


def test_one_elevation_is_told_with_areas_dates_crews_and_the_source_of_hours(tmp_path: Path) -> None:
    found = status(tmp_path, *DAYS)
    text = show_lines(list_face_lines(found, found.faces[0]), Screen(80))
    assert "E1 South face, wall W1\n" in text
    assert MESH_80 in text
    assert "  left bay: 2027-06-10 20:30 to 21:00; drying until 2027-06-11 21:00\n  not begun: right bay\n" in text
    assert "No entry, and a later step has begun (6 steps)\n" in text


def test_a_pending_release_names_who_signs_it(tmp_path: Path) -> None:
    found = status(tmp_path, log("2027-06-10", "mesh", "07:00-09:00"), at="2027-06-11T07:00")
    text = show_lines(list_face_lines(found, found.faces[0]), Screen(80))
    assert "Base coat with standard mesh: release pending by Plumb Line\n" in text


def test_an_empty_record_says_what_is_first_and_who_owes_it(tmp_path: Path) -> None:
    text = shown(status(tmp_path))
    assert text.startswith("Nothing is recorded.\n")
    assert "  E1  Access and site safety\n" in text
    assert "  The applicator (Larkwall)\n    E1, E2: record Access and site safety\n" in text


def test_what_stands_against_entries_of_no_step_has_a_place_of_its_own() -> None:
    status = ProjectStatus(None, 1, (), failed=(Remark("wind 12 mph, maximum 8 mph"),))
    told = " ".join(line.text for line in list_against(status))
    assert "Failed or begun too early" in told
    assert "Entries of no step" in told and "wind 12 mph, maximum 8 mph" in told
