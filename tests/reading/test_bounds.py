"""What costs a reader hours, memory or a traceback: bounded or refused, each in one message. The bounds are ours."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest
import yaml

from specgen import pipeline
from specgen.model.problem import Problem, Refused
from specgen.reading import positions
from specgen.reading.positions import MOST_DEPTH, MOST_PROBLEMS, MOST_VALUES

HEAD = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial}
walls:
  W1: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}
"""
WIDE = f"a: &a {{{', '.join(f'k{n}: 1' for n in range(9_000))}}}\n"


def problems(folder: Path, more: str, head: str = HEAD) -> tuple[Problem, ...]:
    """What is told of the small project with lines added, from line 6 on; `tests.bench` measures how long it takes."""
    (folder / "project.yaml").write_text(head + more, "utf-8", newline="")
    with pytest.raises(Refused) as raised:
        pipeline.check(folder / "project.yaml")
    return raised.value.problems


@pytest.mark.no_cover
@pytest.mark.parametrize(
    ("more", "said", "line"),
    [
        (WIDE + "".join(f"b{n}: {{<<: *a}}\n" for n in range(5_000)), "aliases repeat", 6),
        (WIDE + "b: {<<: [" + "*a," * 50_000 + "]}\n", "aliases repeat", 6),
        ("a: &a {}\nb: {<<: [" + "*a," * 900_000 + "]}\n", "aliases repeat", 6),
        (
            "a0: &a0 {k: 1}\n" + "".join(f"a{n}: &a{n} {{<<: [*a{n - 1}, *a{n - 1}]}}\n" for n in range(1, 39)),
            "aliases repeat",
            None,
        ),
        ("contract: [" + "1," * MOST_VALUES + "]\n", f"more than {MOST_VALUES:,} values", 6),
        ("".join(f"  V{n}: {{}}\n" for n in range(MOST_VALUES)), f"more than {MOST_VALUES:,} values", None),
        ("contract: {<<: {number: 1}, <<: {number: 2}}\n", "`<<` appears twice", 6),
        ("contract: {<<: {[a]: 1}}\n", "a key must be plain text", 6),
        ("contract: {number: a\ufeff}\n", "U+FEFF", 6),
        ("contract: {number: a\u2028}\n", "U+2028", 6),
        ("contract: {number: a\x85}\n", "U+0085", 6),
        ("contract: {number: a\ufdd0}\n", "U+FDD0", 6),
        ("contract: {number: a\U0001ffff}\n", "U+1FFFF", 6),
        ("contract: {number: a\U000f0000}\n", "U+F0000", 6),
        ("contract: {number: a\U0010fffd}\n", "U+10FFFD", 6),
        ('contract: {number: "a\\L"}\n', "U+2028", 6),
    ],
)
def test_what_has_no_bound_of_its_own_gets_one(more: str, said: str, line: int | None, tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, more)
    assert said in problem.message
    assert line is None or problem.line == line


@pytest.mark.parametrize("start", ["contract:\n  demands:\n", "mockup:\n  includes:\n"])
def test_an_empty_entry_of_a_list_is_told_once_where_it_stands(start: str, tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, f"{start}  -\n")
    assert (problem.line, problem.message) == (8, "this entry of the list is empty")


def test_a_list_of_empty_entries_is_read_no_further_than_its_first_hundred(tmp_path: Path) -> None:
    told = problems(tmp_path, "contract:\n  demands:\n" + "  -\n" * 400_000)
    assert len(told) == MOST_PROBLEMS + 1
    assert [problem.line for problem in told[:2]] == [8, 9]


@pytest.mark.parametrize(
    "more",
    [
        "contract:\n  demands:\n" + "  - tbd\n" * 20_001,
        "contract:\n  demands:\n" + "  - {}\n" * 20_001,
        "\njoints:\n" + "".join(f"  J{n}:\n" for n in range(20_001)),
    ],
    ids=["tbd", "empty mappings", "marks alone"],
)
def test_more_members_than_a_project_has_are_refused_before_they_are_judged(more: str, tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, more)
    assert problem.message == "these are 20,001 entries, more than any project has"
    assert problem.line in (7, 8)


def test_a_second_byte_order_mark_is_refused(tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, "", "\ufeff\ufeff" + HEAD)
    assert (problem.line, problem.column, "U+FEFF" in problem.message) == (1, 1, True)


def test_the_place_of_a_bad_byte_counts_from_the_byte_order_mark(tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_bytes(b"\xef\xbb\xbf" + HEAD.encode() + b"contract: caf\xe9\n")
    with pytest.raises(Refused) as raised:
        pipeline.check(tmp_path / "project.yaml")
    assert [(p.line, p.column) for p in raised.value.problems] == [(6, 14)]
    assert "0xe9" in raised.value.problems[0].message


def test_lines_are_counted_by_any_line_end(tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, "", "format: 1\rpackage: \x00\r")
    assert (problem.line, problem.column) == (2, 10)


def test_a_mapping_may_take_in_one_that_takes_in_another(tmp_path: Path) -> None:
    more = "joints:\n  J1: &a {width: 1 in, depth: 1/2 in}\n  J2: &b {<<: *a, width: 2 in}\n  J3: {<<: *b}\n"
    (tmp_path / "project.yaml").write_text(HEAD + more)
    project = pipeline.check(tmp_path / "project.yaml").project
    theirs = yaml.safe_load(more)["joints"]["J3"]
    assert {leaf: project.value(("joints", "J3", leaf)).text for leaf in ("width", "depth")} == theirs


def test_mappings_take_in_one_another_as_deep_as_they_are_nested(tmp_path: Path) -> None:
    def chain(length: int) -> str:
        links = "".join(f"  J{n}: &j{n} {{<<: *j{n - 1}}}\n" for n in range(1, length))
        return "joints:\n  J0: &j0 {width: 1 in}\n" + links

    (tmp_path / "project.yaml").write_text(HEAD + chain(MOST_DEPTH // 2))
    assert len(pipeline.check(tmp_path / "project.yaml").project.members[("joints",)]) == MOST_DEPTH // 2
    assert {p.message for p in problems(tmp_path, chain(2_000))} <= {
        "this takes in others too deep",
        f"there are {MOST_PROBLEMS} faults or more; no more are listed",
    }


LINKS = [
    ("x", lambda folder: (folder / "x").symlink_to("x"), "links lead in a circle"),
    ("x", lambda folder: (folder / "x").symlink_to("/dev/zero"), "points outside the project folder"),
    ("x/hostname", lambda folder: (folder / "x").symlink_to("/etc"), "points outside the project folder"),
    ("'x" + "x" * 290 + "'", lambda folder: None, "cannot be read: File name too long"),
]


@pytest.mark.skipif(os.name != "posix", reason="links of a POSIX system")
@pytest.mark.parametrize(
    ("name", "make", "said"),
    LINKS,
)
def test_a_side_file_behind_links_is_told_where_it_is_named(
    name: str, make: Callable[[Path], object], said: str, tmp_path: Path
) -> None:
    make(tmp_path)
    (problem,) = problems(tmp_path, f"firm: {name}\n")
    assert said in problem.message
    assert (problem.file, problem.line, problem.column) == ("project.yaml", 6, 1)


def test_a_name_with_a_zero_in_it_is_told_and_looked_up_nowhere(tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, 'firm: "a\\0b"\n')
    assert "U+0000" in problem.message
    (problem,) = problems(tmp_path, '"a\\eb": 1\n')
    assert "U+001B" in problem.message


def test_a_side_file_that_is_named_twice_is_told(tmp_path: Path) -> None:
    (tmp_path / "r.yaml").write_text("format: 1\n")
    (problem,) = problems(tmp_path, "records: [r.yaml, ./r.yaml]\n")
    assert ("is already named" in problem.message, problem.line, problem.column) == (True, 6, 19)


def test_many_side_files_that_are_missing_are_told_up_to_a_bound(tmp_path: Path) -> None:
    names = ", ".join(f"r{n}.yaml" for n in range(20_000))
    assert len(problems(tmp_path, f"records: [{names}]\n")) == MOST_PROBLEMS + 1


@pytest.mark.skipif(not Path("/proc/kmsg").exists(), reason="a file of the system that gives nothing, or never ends")
@pytest.mark.parametrize("name", ["/proc/kmsg", "/dev/zero", "/dev/null"])
def test_a_file_of_the_system_that_never_ends_is_not_waited_for(name: str, tmp_path: Path) -> None:
    (tmp_path / "project.yaml").symlink_to(name)
    # The log of a kernel may hold any lines or none: why it is no project goes by what stands there.
    with pytest.raises(Refused):
        pipeline.check(tmp_path / "project.yaml")


@pytest.mark.parametrize("code", ["\\uD800", "\\UFFFFFFFF", "\\U00110000"])
def test_an_escape_that_names_no_character_is_told_by_either_loader(
    code: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert len(problems(tmp_path, f'contract: {{number: "{code}"}}\n')) == 1
    monkeypatch.setattr(positions, "Loader", yaml.SafeLoader)
    assert len(problems(tmp_path, f'contract: {{number: "{code}"}}\n')) == 1
