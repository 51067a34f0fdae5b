"""Input that would break a reader: each ends in findings or in clear errors. The behavior is ours."""

import os
import resource
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from specgen import pipeline
from specgen.model.problem import Refused
from specgen.reading import given_file as source
from specgen.reading.file_text import MOST_BYTES
from specgen.reading.positions import MOST_DEPTH, MOST_PROBLEMS
from tests.running import run_python
from tests.support import EXAMPLES

BASE = (
    "format: 1\npackage: {purpose: design_draft}\nproject: {name: Trial}\n"
    "walls: {W1: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}}\n"
)
BOMB = "a0: &a0 [x, x, x, x, x, x, x, x, x]\n" + "".join(
    f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 9)
)


def with_line(line: str) -> str:
    return BASE + line + "\n"


# What the file holds, words of the message, line and column.
CASES: list[tuple[str, str | bytes, str, int, int]] = [
    ("no YAML", "this is: not: YAML: [\n", "a second colon", 1, 13),
    ("an open quote", 'format: 1\nproject: {name: "open\n', "the quote that opens here is not closed", 2, 17),
    ("a tab", "format: 1\npackage:\n\tpurpose: design_draft\n", "a tab is in the indentation", 3, 1),
    ("two documents", BASE + "---\n" + BASE, "more than one document", 5, 1),
    ("Latin letters of one byte", BASE.replace("Trial", "Café").encode("latin-1"), "not UTF-8 (byte 0xe9)", 3, 20),
    ("UTF-16", BASE.encode("utf-16"), "UTF-16", 1, 1),
    ("half a letter", b"a: \xed\xa0\x80\n", "not UTF-8 (byte 0xed)", 1, 4),
    ("a NUL", BASE.replace("Trial", "Tr\0al"), "U+0000", 3, 19),
    ("an escaped NUL", BASE.replace("Trial", '"Tr\\0al"'), "U+0000", 3, 17),
    ("an escaped private letter", BASE.replace("Trial", '"Tr\\ue001al"'), "U+E001", 3, 17),
    ("an escaped NUL in a key", with_line('"x\\0": 1'), "U+0000", 5, 1),
    ("an escaped override", BASE.replace("Trial", '"Tr\\u202eal"'), "U+202E RIGHT-TO-LEFT OVERRIDE", 3, 17),
    ("a second line in a name", BASE.replace("Trial", '"Tr\\nW1  yes"'), "more than one line", 3, 11),
    ("a line end in a mark", BASE.replace("W1:", '"W1\\n":'), "it holds U+000A", 4, 9),
    ("a bell", BASE.replace("Trial", "Tr\x07al"), "U+0007", 3, 19),
    ("a private letter", BASE.replace("Trial", "Tr\ue001al"), "U+E001", 3, 19),
    ("nothing", "", "the file is empty", 1, 1),
    ("remarks only", "# nothing\n", "the file is empty", 1, 1),
    ("a list", "\n- a\n- b\n", "does not begin with a name and a colon", 2, 1),
    ("a word", "hello\n", "does not begin with a name and a colon", 1, 1),
    ("aliases of aliases", BASE + BOMB, "aliases repeat this more often", 6, 5),
    ("a mapping inside itself", BASE.replace("walls: {", "walls: &w {W2: *w, "), "this holds itself", 4, 12),
    ("a list inside itself", with_line("contract: {demands: &d [*d]}"), "this holds itself", 5, 21),
    ("a mapping that takes in itself", with_line("site: &s {<<: *s}"), "`<<` takes in", 5, 7),
    ("a merge of a word", with_line("<<: hello"), "`<<` takes in a mapping", 5, 5),
    ("lists to the limit", f"a: {'[' * (MOST_DEPTH + 1)}{']' * (MOST_DEPTH + 1)}\n", "nested too deep", 1, 44),
    ("a hundred thousand lists", "a: " + "[" * 100_000, "nesting", 1, 1003),
    ("deep indentation", "".join("  " * n + "a:\n" for n in range(3000)), "nesting", 1000, 2000),
    ("an unknown alias", with_line("x: *y"), "refers to no anchor above", 5, 4),
    ("a tag of a program", BASE.replace("Trial", "!!python/name:os.system x"), "a tag stands before", 3, 11),
    ("a key that is a list", with_line("? [a, b]\n: c"), "a key must be plain text", 5, 3),
    ("a key of another case", BASE.replace("walls", "Walls"), "'Walls' is not known here (did you mean walls?)", 4, 1),
    ("a key twice", with_line("project: {name: x}"), "appears twice, in line 3 and in line 5", 5, 1),
    ("a mark of no letters", BASE.replace("W1:", "'':"), "cannot be a mark", 4, 9),
    ("a mark that is a star", BASE.replace("W1:", "'*':"), "cannot be a mark", 4, 9),
    ("yes for a count", with_line("building: {stories: true}"), "'true' is not a number", 5, 12),
    ("not a number", with_line("building: {stories: .nan}"), "'.nan' is not a number", 5, 12),
    ("a number without end", with_line("building: {stories: .inf}"), "'.inf' is not a number", 5, 12),
    ("four hundred digits", with_line(f"building: {{stories: 1{'0' * 400}}}"), "has more than 15 digits", 5, 12),
    (
        "a large exponent",
        with_line("building: {eifs_top: 1e999999 ft}"),
        "the power of ten of '1e999999 ft' is out of all bounds",
        5,
        12,
    ),
    ("a day that is none", BASE.replace("draft}", "draft, date: 2027-02-30}"), "'2027-02-30' is not a date", 2, 34),
    ("a firm file above", with_line("firm: ../../etc/passwd"), "leaves the project folder", 5, 1),
    ("a firm file elsewhere", with_line("firm: /etc/passwd"), "leaves the project folder", 5, 1),
    ("a firm file that is a folder", with_line("firm: folder"), "cannot be read: it is a", 5, 1),
    ("a firm file that is a pipe", with_line("firm: pipe"), "cannot be read: it is a", 5, 1),
    ("a firm file that links out", with_line("firm: link.yaml"), "points outside the project folder", 5, 1),
    ("a firm file that is not there", with_line("firm: none.yaml"), "cannot be read", 5, 1),
    ("a firm file that is the project", with_line("firm: project.yaml"), "is the project file itself", 5, 1),
]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return make_folder(tmp_path)


def make_folder(tmp_path: Path) -> Path:
    """A project folder with a few things in it that are no files of a project."""
    made = tmp_path / "job"
    (made / "folder").mkdir(parents=True)
    (tmp_path / "outside.yaml").write_text("format: 1\n", "utf-8")
    (made / "link.yaml").symlink_to(tmp_path / "outside.yaml")
    os.mkfifo(made / "pipe")
    return made


@pytest.mark.parametrize(("about", "content", "said", "line", "column"), CASES, ids=[case[0] for case in CASES])
def test_one_clear_error_at_its_place(
    about: str, content: str | bytes, said: str, line: int, column: int, folder: Path
) -> None:
    file = folder / "project.yaml"
    file.write_bytes(content if isinstance(content, bytes) else content.encode())
    with pytest.raises(Refused) as refused:
        pipeline.check(file)
    problems = [p for p in refused.value.problems if said in str(p)]
    assert [(p.line, p.column) for p in problems[:1]] == [(line, column)], str(refused.value)
    assert all(len(p.message) < 400 for p in refused.value.problems)


@pytest.mark.parametrize("mark", ["\ufeff", "\n\n", "\r\n", "%YAML 1.2\n---\n"])
def test_what_is_no_fault_is_read_over(mark: str, tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_text(mark + BASE, "utf-8", newline="")
    assert pipeline.check(tmp_path / "project.yaml").project.value(("project", "name")) == "Trial"


@pytest.mark.parametrize("name", ["folder", "pipe", "none.yaml"])
def test_a_project_that_is_no_file_is_told(name: str, folder: Path) -> None:
    with pytest.raises(Refused, match="cannot be read"):
        pipeline.check(folder / name)


def test_a_device_is_not_read() -> None:
    with pytest.raises(Refused, match="cannot be read: it is a device"):
        pipeline.check(Path("/dev/zero"))


def test_a_file_that_may_not_be_read_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def denied(path: Path, flags: int) -> int:
        raise PermissionError(13, "Permission denied")

    (tmp_path / "project.yaml").write_text(BASE, "utf-8")
    monkeypatch.setattr(source.os, "open", denied)
    with pytest.raises(Refused, match=r"cannot be read: Permission denied \(check its rights\)"):
        pipeline.check(tmp_path / "project.yaml")


@pytest.mark.no_cover
def test_the_faults_of_a_file_full_of_them_are_listed_up_to_a_bound(tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_text("".join(f"k{n}: {n}\n" for n in range(20_000)), "utf-8")
    with pytest.raises(Refused) as refused:
        pipeline.check(tmp_path / "project.yaml")
    assert len(refused.value.problems) == MOST_PROBLEMS + 1
    assert "no more are listed" in refused.value.problems[-1].message


# Files that cost a careless reader hours or all memory; the last is as long as a file may be.
COSTLY = {
    "aliases": (BASE + BOMB).encode(),
    "lists": b"a: " + b"[" * 1_000_000,
    "faults": b"format: 1\n" + b"".join(b"k%d: 1\n" % n for n in range(50_000)),
    "a long word": b"format: 1\nproject: {name: " + b"x" * 5_000_000 + b"}\n",
    "too long": b"a: " + b"x" * MOST_BYTES,
    "a long key": b"format: 1\n" + b"k" * 2_000_000 + b": 1\n",
}


@pytest.mark.parametrize("about", COSTLY)
def test_a_costly_file_ends_within_200_megabytes(about: str, tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_bytes(COSTLY[about])
    bound = "import resource; resource.setrlimit(resource.RLIMIT_DATA, (200 << 20, 200 << 20)); "
    done = run_python(
        bound + "from specgen.cli import run; run()",
        "check",
        "project.yaml",
        cwd=tmp_path,
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (20, 20)),
    )
    assert done.code == 2
    assert "Traceback" not in done.err
    assert done.err.startswith("specgen: project.yaml")


NAMES = ("first-look", "clean", "metric", "stops")
SOURCES = {name: (EXAMPLES / name / "project.yaml").read_bytes() for name in NAMES}
ODD = ["\0", "\t", "'", '"', "{", "]", ": ", "- ", "&a ", "*a", "<<: ", "!x ", "---\n", "é", "\x85", "\u2028"]


@st.composite
def mutated(draw: st.DrawFn) -> bytes:
    """An example with a few of its bytes or lines changed."""
    content = SOURCES[draw(st.sampled_from(sorted(SOURCES)))]
    for _ in range(draw(st.integers(1, 4))):
        lines = content.splitlines(keepends=True)
        at, other = (draw(st.integers(0, max(len(lines) - 1, 0))) for _ in range(2))
        place = draw(st.integers(0, len(content)))
        kind = draw(st.sampled_from(["drop", "twice", "swap", "insert", "cut", "indent", "byte"]))
        if kind == "insert":
            content = content[:place] + draw(st.sampled_from(ODD)).encode() + content[place:]
        elif kind == "cut":
            content = content[:place]
        elif kind == "byte":
            content = content[:place] + bytes([draw(st.integers(0, 255))]) + content[place + 1 :]
        elif lines:
            changed = {
                "drop": [],
                "twice": [lines[at], lines[at]],
                "swap": [lines[other]],
                "indent": [b" " + lines[at]],
            }[kind]
            content = b"".join([*lines[:at], *changed, *lines[at + 1 :]])
    return content


@settings(max_examples=150)
@given(mutated())
@example(b"")
def test_a_damaged_example_ends_in_findings_or_clear_errors(
    tmp_path_factory: pytest.TempPathFactory, content: bytes
) -> None:
    file = tmp_path_factory.mktemp("damaged") / "project.yaml"
    file.write_bytes(content)
    try:
        case = pipeline.check(file)
    except Refused as refused:
        lines = content.count(b"\n") + content.count(b"\r") + 2
        assert refused.problems
        assert all(problem.message and problem.line <= lines for problem in refused.problems)
    else:
        assert case.judgment.walls
