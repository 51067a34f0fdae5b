"""Panels that entries name and that no layout has: layouts and entries are invented."""

from specgen.recording.together import list_unknown_panels
from tests.recording.records import log, records_of

LAYOUTS = {"E1": ("E1-A1", "E1-A2"), "E2": ("E2-A1",), "E3": ()}
ENTRIES = (
    log("2027-06-14", "primer", "07:00-09:00", panels=("E1-A1", "E1-A9", "E2-A1")),
    log("2027-06-15", "gloss", "07:00-09:00", panels=("E1-A9",)),
    log("2027-06-15", "gloss", "09:00-10:00", elevation="E3", panels=("E3-Q7",)),
)


def test_a_panel_of_no_layout_is_told_once_at_its_first_entry_with_the_nearest_or_its_own_elevation() -> None:
    told = list(list_unknown_panels(records_of(ENTRIES).of("log"), tuple(LAYOUTS), lambda mark: LAYOUTS[mark]))
    assert [(one.file, one.message, one.hint) for one in told] == [
        ("log.csv, row 2", "the layout of E1 has no panel E1-A9, named in 2 entries", "did you mean E1-A2?"),
        ("log.csv, row 2", "E2-A1 stands on E2, not on E1", ""),
    ]
