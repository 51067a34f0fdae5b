"""A record as YAML, in files of its own or in the project file itself: one way for both."""

import datetime
from pathlib import Path

import pytest

from specgen import pipeline
from specgen.model.problem import Refused
from specgen.quantities.quantity import Quantity
from specgen.reading.records.reading import add_records
from tests.reading.records.faulty import TEXTS
from tests.reading.records.support import SITE, read, site_of
from tests.support import merged, written

WEEK = """format: 1
log:
  - {date: 2027-06-15, elevation: E1, step: gloss, air: 61 F}
  - date: 2027-06-16
    elevation: E2
"""


def test_the_files_that_a_project_names_are_its_entries_in_their_order(tmp_path: Path) -> None:
    written(tmp_path, WEEK, "week.yaml")
    (tmp_path / "days.csv").write_text("date,elevation\n2027-06-17,E3\n")
    project = site_of(tmp_path, {"records": ["week.yaml", "days.csv"], "log": [{"date": "2027-06-14"}]})
    days = [entry.get("date").day for entry in project.records.of("log")]
    assert days == [14, 15, 16, 17]
    assert project.members[("log",)] == ("0", "1", "2", "3")
    assert [project.place(("log", str(number))).line for number in range(1, 4)] == [3, 4, 2]
    assert project.place(("log", "0", "date")).file == "project.yaml"
    assert [(file.name, file.entries) for file in project.records.files] == [("week.yaml", 2), ("days.csv", 1)]
    assert [given.name for given in project.inputs] == ["project.yaml", "week.yaml", "days.csv"]
    assert not any(path[0] == "log" for path in project.values)


def test_entries_of_the_project_file_are_reached_as_before(tmp_path: Path) -> None:
    project = site_of(tmp_path, {"result": [{"criterion": "gloss", "passed": "no"}], "log": []})
    assert project.value(("result", "0", "passed")) is False
    assert project.records.of("result")[0].get("criterion") == "gloss"
    assert project.members[("log",)] == ()
    assert ("release",) not in project.members


def test_a_fault_of_an_entry_is_told_at_its_line_and_the_project_is_refused(tmp_path: Path) -> None:
    written(tmp_path, "format: 1\nlog:\n  - {date: 2027-06-15, wind: 1048 mph}\n  - {elevation: E9}\n", "week.yaml")
    with pytest.raises(Refused) as refused:
        pipeline.read(written(tmp_path, merged(SITE, {"records": ["week.yaml"]})))
    told = [(problem.file, problem.line, problem.path) for problem in refused.value.problems]
    assert told == [("week.yaml", 3, "log.0.wind"), ("week.yaml", 4, "log.1.elevation")]


def test_a_log_of_the_command_line_stands_behind_those_of_the_project(tmp_path: Path) -> None:
    written(tmp_path, WEEK, "week.yaml")
    project = site_of(tmp_path, {"records": ["week.yaml"]})
    (tmp_path / "more.csv").write_text("date,elevation,step,air\n2027-06-15,E1,gloss,61 F\n2027-06-17,E1,gloss,60 F\n")
    added = add_records(project, [tmp_path / "more.csv"])
    assert [entry.get("date") for entry in added.records.of("log")] == [
        datetime.date(2027, 6, day) for day in (15, 16, 17)
    ]
    assert [remark.message for remark in added.records.remarks] == ["this entry stands already in week.yaml, line 3"]
    assert len(project.records.of("log")) == 2
    (tmp_path / "bad.csv").write_text("date,elevation\n2027-06-15,E9\n")
    with pytest.raises(Refused):
        add_records(project, [tmp_path / "bad.csv"])


def test_settings_of_the_mockup_in_two_files_must_agree(tmp_path: Path) -> None:
    written(tmp_path, "format: 1\naccepted:\n  water: 6\n  distance: 18 in\n", "mockup.yaml")
    project = site_of(tmp_path, {"records": ["mockup.yaml"], "accepted": {"water": 6}})
    assert project.get(("accepted", "distance")) == Quantity.of(18, "in")
    with pytest.raises(Refused) as refused:
        site_of(tmp_path, {"records": ["mockup.yaml"], "accepted": {"water": 7}})
    (problem,) = refused.value.problems
    assert (problem.file, problem.line, problem.path) == ("mockup.yaml", 3, "accepted.water")


def test_what_does_not_belong_in_a_record_is_told_and_papers_are_not_read(tmp_path: Path) -> None:
    records = read(tmp_path, TEXTS["what belongs elsewhere, and papers"], "w.yaml")
    assert [(fault.line, fault.message) for fault in records.faults] == [
        (3, "this belongs in the coating system file, not here")
    ]
    assert [remark.message for remark in records.remarks] == ["papers of a record file are part of no document"]


def test_a_file_that_is_no_yaml_is_told_at_its_line(tmp_path: Path) -> None:
    (fault,) = read(tmp_path, TEXTS["no YAML"], "w.yaml").faults
    assert fault.file == "w.yaml"
    assert fault.line
