"""The allowed edges between rooms, the weight of a check, and the form of the code."""

import ast
import statistics
import subprocess
import sys
from pathlib import Path

import pytest

from tests.support import SMALL, written

PACKAGE = Path(__file__).parents[1] / "specgen"
FILES = sorted(PACKAGE.rglob("*.py"))
ROOMS = {"reading", "judging", "computing", "writing", "standards"}
# The only edges there are; each room may import itself and the vocabulary.
ALLOWED = {"vocabulary": {"vocabulary"}} | {room: {room, "vocabulary"} for room in ROOMS}
ALLOWED |= {"pipeline": ROOMS | {"vocabulary"}, "cli": {"pipeline", "vocabulary", "writing.report", ""}}
ALLOWED |= {"__main__": {"cli"}, "": set()}
HEAVY = {"jinja2", "markdown", "docx", "lxml"}


def name_of(file: Path) -> tuple[str, ...]:
    parts = file.relative_to(PACKAGE).with_suffix("").parts
    return parts[:-1] if parts[-1] == "__init__" else parts


def imports_of(file: Path) -> list[tuple[str, ...]]:
    """The modules of ours that a file imports, as paths below the package."""
    here = file.relative_to(PACKAGE).parts[:-1]
    found = []
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.level:
            base = here[: len(here) - (node.level - 1)]
            module = tuple((node.module or "").split(".")) if node.module else ()
            named = [] if module else [(alias.name,) for alias in node.names]
            found += [(*base, *module)] if module else [(*base, *name) for name in named]
            if module == ("writing",):
                found[-1:] = [(*base, *module, alias.name) for alias in node.names]
        if isinstance(node, ast.ImportFrom) and not node.level:
            assert not (node.module or "").startswith("specgen"), f"{file}: write it relative"
    return found


@pytest.mark.parametrize("file", FILES, ids=lambda f: str(f.relative_to(PACKAGE)))
def test_a_room_imports_the_vocabulary_and_no_sibling(file: Path) -> None:
    name = name_of(file)
    room = name[0] if name else ""
    for target in imports_of(file):
        words = {".".join(target), target[0] if target else ""}
        if target == ("__version__",):
            continue
        assert words & ALLOWED[room], f"{'.'.join(name)} imports {'.'.join(target)}"


def test_no_module_imports_itself_in_a_circle() -> None:
    known = {name_of(file) for file in FILES}
    edges = {name_of(f): {t if t in known else t[:-1] for t in imports_at_start(f)} for f in FILES}

    def reaches(start: tuple[str, ...], seen: set[tuple[str, ...]]) -> set[tuple[str, ...]]:
        for target in edges.get(start, set()) - seen:
            seen.add(target)
            reaches(target, seen)
        return seen

    assert [name for name in edges if name in reaches(name, set())] == []


def imports_at_start(file: Path) -> list[tuple[str, ...]]:
    """The imports that run when the module is loaded: not those in functions or for the type checker alone."""
    tree = ast.parse(file.read_text("utf-8"))
    here = file.relative_to(PACKAGE).parts[:-1]
    found = []
    for node in tree.body:
        if isinstance(node, ast.ImportFrom) and node.level:
            base = here[: len(here) - (node.level - 1)]
            module = tuple(node.module.split(".")) if node.module else ()
            found += [(*base, *module)] if module else [(*base, alias.name) for alias in node.names]
    return found


def test_a_check_loads_no_writer_of_documents(tmp_path: Path) -> None:
    file = written(tmp_path, SMALL)
    code = f"import sys; from specgen.cli import main; main(['check', {str(file)!r}]); print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = {name.split(".")[0] for name in done.stdout.splitlines()[-1].split()}
    assert "cerberus" in loaded
    assert not loaded & HEAVY


def test_a_calculation_imports_only_its_own_file() -> None:
    code = (
        "import sys; from specgen.cli import main; "
        "main(['calc', 'face-heat', 'hot_air=95F', 'solar_reflectance=0.4', 'emittance=0.3', 'irradiance=800W/m2']); "
        "print(*sys.modules, file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert "specgen.computing.face_heat" in done.stderr
    assert "specgen.computing.joint_width" not in done.stderr


def functions() -> list[tuple[int, str]]:
    return [
        (node.end_lineno - node.lineno + 1, f"{file.name}:{node.name}")
        for file in FILES
        for node in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(node, ast.FunctionDef)
    ]


def test_files_and_functions_are_short() -> None:
    lines = sorted(len(file.read_text("utf-8").splitlines()) for file in FILES)
    sizes = sorted(functions())
    assert lines[-1] <= 300
    assert statistics.median(lines) <= 120
    assert sizes[-1][0] <= 40, sizes[-1]
    assert sizes[int(len(sizes) * 0.9)][0] <= 24


@pytest.mark.parametrize("file", FILES, ids=lambda f: str(f.relative_to(PACKAGE)))
def test_everything_public_says_what_it_is(file: Path) -> None:
    tree = ast.parse(file.read_text("utf-8"))
    public = [
        node
        for node in ast.walk(tree)
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_")
    ]
    closed = [
        node
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef) or (isinstance(node, ast.ClassDef) and node.name.startswith("_"))
    ]
    inner = {child for node in closed for child in ast.walk(node) if child is not node}
    assert ast.get_docstring(tree)
    assert [node.name for node in public if node not in inner and not ast.get_docstring(node)] == []
