"""The layers of the rooms, the weight of a check, and the form of the code. All of them are rules of ours."""

import ast
import statistics
from pathlib import Path

import pytest

from specgen.resolving.provider import GROUPS
from tests.running import run_python, words_of_build
from tests.support import ROOT, SMALL, merged, written

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover

PACKAGE = ROOT / "specgen"
FILES = sorted(PACKAGE.rglob("*.py"))
# From the bottom up; a room imports itself and what stands below it.
LAYERS = (
    "quantities",
    "model",
    "standards",
    "resolving",
    "reading",
    "computing",
    "laying_out",
    "weather",
    "scheduling",
    "recording",
    "judging",
    "editing",
    "terminal",
    "documents",
    "formats",
    "asking",
    "output",
    "pipeline",
    "growing",
    "building",
    "comparing",
    "commands",
    "cli",
    "__main__",
)
# What only the writing of documents, sheets and drawings needs.
HEAVY = {"jinja2", "markdown", "docx", "lxml", "PIL", "openpyxl", "ezdxf", "matplotlib", "numpy", "typst", "pypdf"}
HEAVY |= {"resvg_py", "shtab", "fontTools", "pikepdf", "xlsxwriter", "multiprocessing", "concurrent"}

Name = tuple[str, ...]


def name_of(file: Path) -> Name:
    parts = file.relative_to(PACKAGE).with_suffix("").parts
    return parts[:-1] if parts[-1] == "__init__" else parts


def targets(node: ast.stmt, here: Name) -> list[Name]:
    """The modules of ours that an import statement in the folder `here` names, as paths below the package."""
    if isinstance(node, ast.Import):
        ours = [alias.name.split(".") for alias in node.names if alias.name.split(".")[0] == "specgen"]
        return [tuple(name[1:]) for name in ours]
    if not isinstance(node, ast.ImportFrom):
        return []
    module = tuple((node.module or "").split(".")) if node.module else ()
    if not node.level:
        if module[0] != "specgen":
            return []
        base = module[1:]
    else:
        base = (*here[: len(here) - (node.level - 1)], *module)
    # A name taken from a folder may be a module of it.
    whole = not base or (PACKAGE.joinpath(*base) / "__init__.py").exists()
    return [(*base, alias.name) for alias in node.names] if whole else [base]


def imports_in(source: str, here: Name, at_start: bool = False) -> list[Name]:
    """Every module of ours that a text imports; `at_start` only those that loading it imports."""
    tree = ast.parse(source)
    nodes = tree.body if at_start else [node for node in ast.walk(tree) if isinstance(node, ast.stmt)]
    return [target for node in nodes for target in targets(node, here)]


def imports_of(file: Path, at_start: bool = False) -> list[Name]:
    return imports_in(file.read_text("utf-8"), file.relative_to(PACKAGE).parts[:-1], at_start)


def forbidden(name: Name, imported: list[Name]) -> list[str]:
    """Those imports of a module that stand above it, or that are private to another folder."""
    found = [target for target in imported if target and (above(name, target) or private(name, target))]
    return [".".join(target) for target in dict.fromkeys(found)]


def above(name: Name, target: Name) -> bool:
    """Whether a target stands in a higher room; the version stands in none."""
    return target != ("__version__",) and LAYERS.index(target[0]) > LAYERS.index(name[0])


def private(name: Name, target: Name) -> bool:
    """Whether a target is a module or a name with an underscore that belongs to another folder."""
    hidden = [depth for depth, part in enumerate(target) if part.startswith("_") and not part.startswith("__")]
    return any(name[:depth] != target[:depth] for depth in hidden)


@pytest.mark.parametrize("file", [f for f in FILES if name_of(f)], ids=lambda f: str(f.relative_to(PACKAGE)))
def test_a_room_imports_only_what_stands_below_it(file: Path) -> None:
    assert forbidden(name_of(file), imports_of(file)) == []


# Module, a line of it, and what is found against it.
EDGES = [
    (("judging", "engine"), "from specgen.model.field import Path", []),
    (("judging", "engine"), "from .applies import subjects", []),
    (("judging", "engine"), "from specgen.standards import load_standards", []),
    (("judging", "engine"), "from specgen.pipeline import check", ["pipeline"]),
    (("judging", "engine"), "def f():\n    from specgen.terminal import report", ["terminal.report"]),
    (("judging", "engine"), "if TYPE_CHECKING:\n    from specgen.terminal import report", ["terminal.report"]),
    (("judging", "rules", "attachment", "adhesive_only"), "from specgen.judging.choice_groups import WOOD", []),
    (("model", "field"), "from specgen.reading.schema import load_schema", ["reading.schema"]),
    (("model", "field"), "from ..reading.schema import load_schema", ["reading.schema"]),
    (("model", "field"), "import specgen.pipeline", ["pipeline"]),
    (("quantities", "units"), "from specgen.model.field import Path", ["model.field"]),
    (("standards", "rows"), "from specgen.reading.schema import load_schema", ["reading.schema"]),
    (("computing", "joints", "joint_width"), "from ... import pipeline", ["pipeline"]),
    (("computing", "joints", "joint_width"), "from specgen.computing.joints._beads import bead", []),
    (
        ("computing", "joints", "joint_width"),
        "from specgen.computing.heat import _face",
        ["computing.heat._face"],
    ),
    (("computing", "joints", "joint_width"), "from specgen.computing.heat._face import x", ["computing.heat._face"]),
    (("formats", "html"), "from specgen.output import disk", ["output.disk"]),
    (("documents", "steps"), "from specgen.formats.docx.body import body", ["formats.docx.body"]),
    (("pipeline",), "from .cli import main", ["cli"]),
    (("pipeline",), "from specgen.building import build", ["building"]),
    (("terminal", "report"), "from specgen.pipeline import check", ["pipeline"]),
    (("building",), "from specgen.commands.build import run", ["commands.build"]),
    (("commands", "check"), "from specgen.cli import main", ["cli"]),
    (("commands", "check"), "from specgen.commands._rule_code import find_rule_code", []),
    (("cli",), "from specgen.commands._rule_code import find_rule_code", ["commands._rule_code"]),
    (("pipeline",), "import json\nfrom pathlib import Path\nfrom .judging.judge import judge", []),
    (("cli",), "from specgen import __version__", []),
]


@pytest.mark.parametrize(("name", "source", "found"), EDGES)
def test_an_import_that_is_not_allowed_would_be_found(name: Name, source: str, found: list[str]) -> None:
    assert forbidden(name, imports_in(source, name[:-1])) == found


def test_every_room_has_its_layer() -> None:
    rooms = {f.stem for f in PACKAGE.iterdir() if f.suffix == ".py" or (f / "__init__.py").exists()} - {"__init__"}
    assert rooms == set(LAYERS)


def test_every_folder_of_calculations_is_a_group() -> None:
    folders = {f.name for f in (PACKAGE / "computing").iterdir() if (f / "__init__.py").exists()}
    assert folders == set(GROUPS)


def test_the_command_line_knows_no_command_and_no_story() -> None:
    imported = imports_of(PACKAGE / "cli.py")
    assert {target[0] for target in imported} == {"model", "commands", "terminal"}
    verbs = {f.stem for f in (PACKAGE / "commands").glob("*.py")}
    assert not {target[1] for target in imported if target[0] == "commands"} & verbs
    assert len((PACKAGE / "cli.py").read_text("utf-8").splitlines()) < 120


def test_the_story_of_a_project_prints_and_writes_nothing() -> None:
    rooms = {target[0] for target in imports_of(PACKAGE / "pipeline.py")}
    assert not rooms & {"terminal", "documents", "formats", "output"}


# A sum from keys loads no reader, and a starter no rules; the same command reads a project, or asks for one. A record
# that is only told loads no documents, and a project without one no reader of records.
WAITS = {
    ("commands", "calc"): [("commands", "_calc_answers"), ("commands", "_project_file"), ("pipeline",)],
    ("commands", "check"): [("building",)],
    ("commands", "new"): [("commands", "_new_by_asking")],
    ("commands", "record"): [("commands", "_record_files")],
    ("commands", "weather"): [("output", "weather_files")],
    ("pipeline",): [("reading", "records", "reading")],
}


@pytest.mark.parametrize(
    "name", [name_of(f) for f in FILES if name_of(f)[:1] in {("cli",), ("commands",), ("pipeline",), ("building",)}]
)
def test_a_command_imports_at_its_top_what_it_needs(name: Name) -> None:
    path = PACKAGE.joinpath(*name)
    file = path / "__init__.py" if path.is_dir() else path.with_suffix(".py")
    at_top = imports_of(file, at_start=True)
    assert [target for target in imports_of(file) if target not in at_top] == WAITS.get(name, [])


def circles(edges: dict[Name, set[Name]]) -> list[Name]:
    """The modules that a walk along the imports leads back to."""

    def reaches(start: Name, seen: set[Name]) -> set[Name]:
        for target in edges.get(start, set()) - seen:
            seen.add(target)
            reaches(target, seen)
        return seen

    return [name for name in edges if name in reaches(name, set())]


def test_no_module_imports_itself_in_a_circle() -> None:
    known = {name_of(file) for file in FILES}
    edges = {name_of(f): {t if t in known else t[:-1] for t in imports_of(f)} for f in FILES}
    assert sum(map(len, edges.values())) > len(FILES)
    assert circles(edges) == []


def test_a_circle_would_be_found() -> None:
    assert circles({("a",): {("b",)}, ("b",): {("c",)}, ("c",): {("b",)}}) == [("b",), ("c",)]


def loaded_by(*words: str) -> set[str]:
    """The modules that stand loaded once a command has run."""
    code = f"import sys; from specgen.cli import main; main({list(words)!r}); print(*sys.modules, file=sys.stderr)"
    done = run_python(code)
    assert done.code == 0
    return set(done.err.splitlines()[-1].split())


STOPPED = merged(
    SMALL, {"walls": {"W1": {"attachment": {"method": "mechanical"}}}, "joints": {"J1": {"width": "1 in"}}}
)


@pytest.mark.parametrize("more", [(), ("--format", "json"), ("--rule", "ATT-01"), ("--severity", "stop")], ids=" ".join)
def test_a_check_loads_no_writer_of_documents(more: tuple[str, ...], tmp_path: Path) -> None:
    loaded = loaded_by("check", str(written(tmp_path, STOPPED)), *more)
    assert {"cerberus", "yaml", "specgen.pipeline"} <= loaded
    assert not {name.split(".")[0] for name in loaded} & HEAVY
    assert not [name for name in loaded if name.startswith("specgen.asking")]


def test_a_build_of_plain_text_loads_the_templates_and_no_word_file_writer(tmp_path: Path) -> None:
    loaded = loaded_by(*words_of_build(written(tmp_path, SMALL), tmp_path / "out"))
    assert "jinja2" in loaded
    assert "docx" not in loaded


def test_a_calculation_imports_only_its_own_file() -> None:
    keys = ("hot_air=95F", "solar_reflectance=0.4", "emittance=0.3", "irradiance=800W/m2")
    loaded = loaded_by("calc", "face-heat", *keys)
    assert "specgen.computing.heat.face_heat" in loaded
    assert "specgen.computing.joints.joint_width" not in loaded


def test_only_the_command_asked_for_is_imported() -> None:
    for words in (("calc", "dew-point", "air=70F", "rh=50%"), ("--quiet", "calc", "dew-point", "air=70F", "rh=50%")):
        assert {name for name in loaded_by(*words) if name.startswith("specgen.commands.")} == {"specgen.commands.calc"}


def test_a_sum_from_keys_loads_no_rules_and_no_schema() -> None:
    loaded = loaded_by("calc", "dew-point", "air=70F", "rh=50%")
    rooms = {name.split(".")[1] for name in loaded if name.startswith("specgen.")}
    assert rooms == {"cli", "commands", "computing", "model", "quantities", "reading", "resolving", "terminal"}
    assert {name for name in loaded if name.startswith("specgen.reading.")} == {
        f"specgen.reading.{name}" for name in ("conversion", "choices", "plain_words")
    }
    assert not {name.split(".")[0] for name in loaded} & (HEAVY | {"yaml", "cerberus", "shutil"})


def test_the_version_is_told_without_any_command() -> None:
    code = "import sys; from specgen.cli import main\ntry: main(['--version'])\nfinally: print(*sys.modules)"
    loaded = run_python(code).out.split()
    assert {"specgen.cli", "specgen.commands"} <= set(loaded)
    assert not [name for name in loaded if name.startswith("specgen.commands.")]


def test_a_dew_point_imports_no_other_calculation() -> None:
    loaded = loaded_by("calc", "dew-point", "air=70F", "rh=50%")
    shared = {"arguments", "declaration", "dew", "guards", "inputs", "working_builder", "moisture", "moisture._dew"}
    rooms = {name.removeprefix("specgen.computing.") for name in loaded if name.startswith("specgen.computing.")}
    assert rooms == shared | {"moisture.dew_point"}
    # It rests on no limit, so it reads no rows of the trade and needs no reader of YAML.
    assert not {"yaml", "specgen.standards"} & loaded


def functions() -> list[tuple[int, str]]:
    """The lines of each function, its name with its file."""
    return [
        (node.end_lineno - node.lineno + 1, f"{file.relative_to(PACKAGE)}:{node.name}")
        for file in FILES
        for node in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef)) and node.end_lineno
    ]


def test_no_file_is_long_and_half_of_them_are_short() -> None:
    lines = sorted((len(file.read_text("utf-8").splitlines()), str(file.relative_to(PACKAGE))) for file in FILES)
    assert lines[-1][0] <= 300, lines[-1]
    assert statistics.median(size for size, _ in lines) <= 120


def test_no_function_is_long_and_nine_in_ten_are_short() -> None:
    sizes = sorted(functions())
    assert sizes[-1][0] <= 40, sizes[-1]
    assert sizes[int(len(sizes) * 0.9)][0] <= 24, sizes[int(len(sizes) * 0.9) :]


def undescribed(source: str) -> list[str]:
    """What is public in a text and lacks a docstring; what stands in a function or a private class is not public."""
    tree = ast.parse(source)
    private = [
        node
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef) or (isinstance(node, ast.ClassDef) and node.name.startswith("_"))
    ]
    inner = {child for node in private for child in ast.walk(node) if child is not node}
    public = [
        node
        for node in ast.walk(tree)
        if isinstance(node, (ast.FunctionDef, ast.ClassDef))
        and not node.name.startswith("_")
        and node not in inner
        and not any(isinstance(mark, ast.Name) and mark.id == "overload" for mark in node.decorator_list)
    ]
    missing = [] if ast.get_docstring(tree) else ["the module"]
    return missing + [node.name for node in public if not ast.get_docstring(node)]


@pytest.mark.parametrize("file", FILES, ids=lambda f: str(f.relative_to(PACKAGE)))
def test_everything_public_says_what_it_is(file: Path) -> None:
    assert undescribed(file.read_text("utf-8")) == []


def test_what_says_nothing_would_be_found() -> None:
    assert undescribed("def f():\n    def g(): ...\nclass A:\n    def h(self): ...\n    def _i(self): ...\n") == [
        "the module",
        "f",
        "A",
        "h",
    ]
    assert undescribed('"""A module."""\ndef _f(): ...\nclass _A:\n    def h(self): ...\n') == []
