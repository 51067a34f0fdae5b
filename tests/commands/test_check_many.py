"""`check` of many projects: a line or an object for each, whatever becomes of the others."""

import json
import os
import signal
import sys
import time
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest

from specgen.commands import _many
from specgen.terminal.many_projects import ProjectReport, format_projects
from tests.commands.support import STOPPED, SUBMITTAL
from tests.running import run_main, run_python, run_specgen, start_process
from tests.support import EXAMPLES, SMALL, merged, written

# What is checked in processes of their own whatever machine this is.
TWO_CORES = "import sys; from specgen.commands import _many; _many._count_cores = lambda: 2; "
RUN = "from specgen.cli import main; sys.exit(main(sys.argv[1:]))"


@pytest.fixture(autouse=True)
def one_process() -> Any:
    with patch.object(_many, "_count_cores", lambda: 1):
        yield


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Two projects and what lies beside them."""
    (tmp_path / "jobs" / "b").mkdir(parents=True)
    written(tmp_path, SMALL, "jobs/a.yaml")
    written(tmp_path, STOPPED, "jobs/b/stops.yml")
    written(tmp_path, "format: 1\nparties: {}\n", "jobs/firm.yaml")
    written(tmp_path, "package: {purpose: design_draft}\nproject: {name: Hidden}\n", "jobs/notes.txt")
    (tmp_path / "jobs" / ".old").mkdir()
    written(tmp_path, SMALL, "jobs/.old/a.yaml")
    return tmp_path


def test_each_project_has_a_line_in_the_order_in_which_it_is_named(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    monkeypatch.chdir(folder / "jobs")
    written(folder, merged(SMALL, SUBMITTAL), "jobs/owed.yaml")
    done = run_main(capsys, "check", "b/stops.yml", "owed.yaml", "a.yaml")
    lines = [line.split() for line in done.out.splitlines()]
    assert [line[0] for line in lines[:3]] == ["b/stops.yml", "owed.yaml", "a.yaml"]
    assert done.out.splitlines()[0].startswith("b/stops.yml  1 no             1 stop, 0 cautions, ")
    assert done.out.splitlines()[1].endswith(" open items")
    assert lines[2][1:6] == ["1", "not", "yet", "known", "0"]
    assert done.out.splitlines()[4:6] == ["3 projects: 2 stopped", "walls: 1 no, 2 not yet known"]
    assert (done.code, done.err) == (1, "")


def test_a_project_that_open_items_alone_stop_says_so() -> None:
    counts = {"stop": 0, "caution": 1, "open": 2}
    data = {"errors": [], "walls": [{"wall": "W1", "verdict": "yes"}], "counts": counts}
    told = format_projects([ProjectReport("a.yaml", True, data), ProjectReport("b.yaml", False, data)]).splitlines()
    assert told[:2] == [
        "a.yaml  1 yes  0 stops, 1 caution, 2 open items; open items stop it",
        "b.yaml  1 yes  0 stops, 1 caution, 2 open items",
    ]
    assert told[3:] == ["2 projects: 1 stopped", "walls: 2 yes", "0 stops, 2 cautions, 4 open items"]


def test_the_totals_are_those_of_the_projects_by_themselves(folder: Path, capsys: Any) -> None:
    names = [str(folder / "jobs" / name) for name in ("a.yaml", "b/stops.yml")]
    counts = [json.loads(run_main(capsys, "check", name, "--format", "json").out)["counts"] for name in names]
    stops, cautions, owed = (sum(count[key] for count in counts) for key in ("stop", "caution", "open"))
    last = run_main(capsys, "check", *names).out.splitlines()[-1]
    assert (stops, cautions) == (1, 0)
    assert last == f"1 stop, 0 cautions, {owed} open items"


def test_a_folder_stands_for_every_project_in_it_and_says_what_it_leaves_out(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    monkeypatch.chdir(folder)
    done = run_main(capsys, "check", "jobs")
    assert [line.split()[0] for line in done.out.splitlines()[:2]] == ["jobs/a.yaml", "jobs/b/stops.yml"]
    assert done.err == "specgen: left out, as no project files: jobs/firm.yaml\n"
    assert done.code == 1


@pytest.mark.parametrize(
    "text",
    [
        "\ufeffpackage: {purpose: design_draft}\nproject: {name: A}\n",
        "'project' : {name: A}\r\n\"package\":\r\n  purpose: design_draft\r\n",
        "project: {name: A}\rpackage: {purpose: design_draft}\r",
    ],
)
def test_a_project_is_known_by_its_sections_however_they_are_written(text: str, tmp_path: Path, capsys: Any) -> None:
    written(tmp_path, text)
    assert "1 project: none stopped, 1 not checked" in run_main(capsys, "check", str(tmp_path)).out


def test_sections_that_stand_inside_another_make_no_project(tmp_path: Path, capsys: Any) -> None:
    written(tmp_path, "notes:\n  project: {}\n  package: {}\n")
    done = run_main(capsys, "check", str(tmp_path))
    assert done.code == 2
    assert "the folder holds no project file (a project file has package and project)" in done.out


def test_one_that_cannot_be_read_stops_no_other(folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any) -> None:
    monkeypatch.chdir(folder / "jobs")
    written(folder, merged(SMALL, {"primmer": {}, "wals": {}}), "jobs/bad.yaml")
    (folder / "empty").mkdir()
    done = run_main(capsys, "check", "bad.yaml", "../empty", "none.yaml", "a.yaml", "c.yaml/")
    lines = done.out.splitlines()
    assert lines[0].startswith("bad.yaml   not checked: line ")
    assert lines[0].endswith("(did you mean primer?); 1 more problem")
    assert lines[1].startswith("../empty   not checked: the folder holds no project file")
    assert lines[2].startswith("none.yaml  not checked: the file cannot be read: No such file or directory")
    assert lines[3].startswith("a.yaml     1 not yet known  0 stops")
    assert lines[4].startswith("c.yaml/    not checked: a slash follows the name of the file")
    assert lines[6] == "5 projects: none stopped, 4 not checked"
    assert done.code == 2


def test_a_fault_of_ours_in_one_project_stops_no_other(folder: Path, capsys: Any) -> None:
    right = _many.check

    def fail(file: Path) -> Any:
        if file.name == "stops.yml":
            raise ZeroDivisionError
        return right(file)

    with patch.object(_many, "check", fail):
        done = run_main(capsys, "check", str(folder / "jobs"))
    assert "1 not yet known" in done.out.splitlines()[0]
    assert "not checked: `specgen check" in done.out.splitlines()[1]
    assert done.code == 2


def test_a_file_named_twice_is_checked_once_and_told(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    monkeypatch.chdir(folder / "jobs")
    Path("link.yaml").symlink_to("a.yaml")
    done = run_main(capsys, "check", "a.yaml", "./a.yaml", "link.yaml", "a.yaml")
    assert [line.split()[0] for line in done.out.splitlines()[:1]] == ["a.yaml"]
    assert "1 project: none stopped" in done.out
    assert done.err == "specgen: named more than once, checked once: ./a.yaml, link.yaml, a.yaml\n"


def test_a_name_cannot_forge_a_line(tmp_path: Path, capsys: Any) -> None:
    name = "a\nb  2 yes  0 stops.yaml"
    written(tmp_path, SMALL, name)
    written(tmp_path, SMALL, "c.yaml")
    lines = run_main(capsys, "check", str(tmp_path)).out.splitlines()
    assert len(lines) == 2 + 1 + 3
    assert r"a\nb  2 yes" in lines[0]


def test_a_long_name_keeps_its_end_and_its_line_short(folder: Path, capsys: Any) -> None:
    lines = run_main(capsys, "check", str(folder / "jobs" / "a.yaml"), f"{'x' * 9_000}/b.yaml").out.splitlines()
    assert lines[1].startswith("...xxx")
    assert "xxx/b.yaml  not checked: the file cannot be read: File name too long" in lines[1]
    assert max(map(len, lines)) < 1_100


def test_the_data_are_the_object_of_each_with_its_file(folder: Path, capsys: Any) -> None:
    names = [str(folder / "jobs" / name) for name in ("a.yaml", "none.yaml", "b/stops.yml")]
    alone = [json.loads(run_main(capsys, "check", name, "--format", "json").out) for name in names]
    done = run_main(capsys, "check", *names, "--format", "json")
    assert json.loads(done.out) == [{"file": name} | data for name, data in zip(names, alone, strict=True)]
    assert done.code == 2


def test_findings_of_one_rule_are_asked_of_many_as_data_only(folder: Path, capsys: Any) -> None:
    jobs = str(folder / "jobs")
    data = json.loads(run_main(capsys, "check", jobs, "--rule", "ATT-01", "--format", "json").out)
    assert [[f["rule"] for f in one["findings"]] for one in data] == [[], ["ATT-01"]]
    done = run_main(capsys, "check", jobs, "--rule", "ATT-01")
    assert (done.code, done.out) == (2, "")
    assert "--rule and --severity tell of one project (name one file, or add --format json)" in done.err


def test_standard_input_is_not_one_of_several(folder: Path, capsys: Any) -> None:
    done = run_main(capsys, "check", str(folder / "jobs"), "-")
    assert (done.code, done.out) == (2, "")
    assert "standard input is not one of several projects" in done.err


@pytest.mark.no_cover
def test_processes_of_their_own_tell_the_same(folder: Path) -> None:
    names = [str(EXAMPLES / name / "project.yaml") for name in ("clean", "stops", "first-look", "metric")]
    names[2:2] = [str(folder / "none.yaml"), str(folder / "jobs")]
    for more in ((), ("--format", "json")):
        apart = run_python(TWO_CORES + RUN, "check", *names, *more)
        alone = run_python(TWO_CORES.replace("2;", "1;") + RUN, "check", *names, *more)
        assert apart == alone
        assert apart.code == 2
        assert len(apart.out.splitlines()) > 7


@pytest.mark.no_cover
def test_where_no_process_can_be_started_it_is_done_in_this_one(folder: Path) -> None:
    none = "import concurrent.futures as c\ndef refuse(*w): raise OSError(11, 'no')\nc.ProcessPoolExecutor = refuse\n"
    done = run_python(none + TWO_CORES + RUN, "check", str(folder / "jobs"))
    assert "2 projects: 1 stopped" in done.out


@pytest.mark.no_cover
def test_a_process_that_is_ended_from_outside_is_told(folder: Path) -> None:
    dies = "import os\nright = _many.check\n_many.check = lambda f: os._exit(9) if f.name == 'a.yaml' else right(f)\n"
    done = run_python(TWO_CORES + "\n" + dies + RUN, "check", str(folder / "jobs"))
    assert done.code == 2
    assert "a.yaml       not checked: the process that checked it was ended (check it by itself)" in done.out
    assert done.err.splitlines() == [f"specgen: left out, as no project files: {folder}/jobs/firm.yaml"]


@pytest.mark.no_cover
@pytest.mark.skipif(not Path("/proc").is_dir(), reason="needs /proc")
@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL])
def test_what_ends_the_command_ends_its_processes(number: int, folder: Path) -> None:
    waits = (
        "import time, signal\nsignal.signal(signal.SIGINT, signal.SIG_DFL)\n_many.check = lambda f: time.sleep(600)\n"
    )
    running = start_process([sys.executable, "-c", TWO_CORES + "\n" + waits + RUN, "check", str(folder / "jobs")])
    began = _await(lambda: children if len(children := _children(running.pid)) == 2 else None)
    os.kill(running.pid, number)
    running.communicate()
    assert running.returncode == -number
    assert _await(lambda: not any(Path(f"/proc/{child}").exists() for child in began))


def _children(process: int) -> list[int]:
    return [int(word) for word in Path(f"/proc/{process}/task/{process}/children").read_text().split()]


def _await(ask: Any) -> Any:
    """What is asked for, as soon as it is there; an end is put by the assertion."""
    for _ in range(2_000):
        if found := ask():
            return found
        time.sleep(0.02)
    raise AssertionError("it did not come")


def test_a_check_of_one_project_loads_nothing_of_processes(tmp_path: Path) -> None:
    code = "import sys; from specgen.cli import main; main(sys.argv[1:]); print(*sys.modules, file=sys.stderr)"
    done = run_python(code, "check", str(written(tmp_path, SMALL)))
    loaded = {name.split(".")[0] for name in done.err.splitlines()[-1].split()}
    assert "yaml" in loaded
    assert not loaded & {"multiprocessing", "concurrent"}
    assert run_specgen("check", str(tmp_path)).out.splitlines()[-3] == "1 project: none stopped"
