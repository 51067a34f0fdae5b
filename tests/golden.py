"""Writes the golden texts and the stub of the typed views anew: `python -m tests.golden`.

Read the difference before you commit it.
"""

import io
from collections.abc import Callable, Iterable, Iterator
from contextlib import chdir, redirect_stderr, redirect_stdout, suppress
from itertools import chain
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import yaml

from specgen import pipeline
from specgen.cli import main
from specgen.commands import list_verbs
from specgen.computing import names
from specgen.documents.catalogue import templates
from specgen.documents.document import compose_document
from specgen.documents.plain_text import plain_text
from specgen.judging.registry import load_rules
from specgen.model.block import Figure, Table
from specgen.model.source import Basis, Source
from specgen.output import package
from specgen.reading.schema import project_schema
from specgen.standards import load_standards
from specgen.terminal.finding_text import find_clause
from specgen.terminal.starter import format_side_starter, format_starter
from tests.documents.drawn.seasons import season_texts
from tests.documents.drawn.sentences import project_texts
from tests.documents.support import context_of_example
from tests.mistakes.told import mistake_texts
from tests.output.written_files import file_texts
from tests.page_text import page_text
from tests.support import EXAMPLES, ROOT, project_of, told_by
from tests.terminal.spoken import terminal_texts
from tests.typed_views import STUB, stub

HERE = Path(__file__).parent
CASES = HERE / "judging" / "cases"
SAMPLES = HERE / "computing" / "samples"
# `metric` and `old-wall` stand in buildings whose fire tests are due, and are told in the units of metric work.
AS_DOCUMENTS = ("first-look", "stops", "clean", "metric", "old-wall")
# What stands on the record of the site, of which one example has a whole season.
OF_SITE = ("season-D00", "season-D17")
FIGURES = {
    "clean": ("D07", "D08", "D09", "D14"),
    "gable-hall": ("D07", "D08", "D09", "D14"),
    "metric": ("D08", "D09"),
    "season": ("D17",),
}


def document_texts() -> dict[str, str]:
    """Every document of the examples as plain text, by file name."""
    texts = {name: text for example in AS_DOCUMENTS for name, text in texts_of(example).items()}
    return texts | {name: text for name, text in texts_of("season").items() if name.startswith(OF_SITE)}


def texts_of(example: str) -> dict[str, str]:
    """Every document of an example as plain text, by file name: those that a draft leaves out too."""
    case = pipeline.check(EXAMPLES / example / "project.yaml")
    context = case.context
    draft = case.judgment.stopped or case.project.value(("package", "purpose")) == "design_draft"
    every = tuple(t.id for t in templates() if t.stage != "closeout") if draft else ()
    formats = ("txt", "html")
    made = package.make_package(
        context.project, context.standards, case.judgment, context.resolve, formats, every, draft
    )
    texts = {f"{example}-{name}": content.decode() for name, content in made.files.items() if name.endswith(".txt")}
    return texts | {f"{example}-review-page.txt": page_text(made.files["index.html"])}


def figure_texts() -> dict[str, str]:
    """The drawings of examples as they stand in their documents, each stroke in a line of its own."""
    drawn: dict[str, str] = {}
    for example, documents in FIGURES.items():
        context = context_of_example(example)
        for template in (t for t in templates() if t.id in documents):
            blocks = compose_document(template, context, False).blocks
            for figure in (block for block in blocks if isinstance(block, Figure)):
                name = f"{example}-{template.id}-{figure.name}"
                number = sum(made.startswith(name) for made in drawn) + 1
                drawn[f"{name}-{number}.svg"] = figure.svg.replace("><", ">\n<")
    return drawn


def table_texts() -> dict[str, str]:
    """What each document is for; the head of each table, with the share of each column and whether it holds figures."""
    lines: dict[str, None] = {}
    for example in ("clean", "old-wall", "season"):
        context = context_of_example(example)
        for template in templates():
            blocks = compose_document(template, context, context.draft).blocks
            for table in (block for block in blocks if isinstance(block, Table)):
                titles = (plain_text(cell) for cell in table.header)
                columns = zip(titles, table.widths, strict=True)
                told = (f"{title} {wide}{' figures' * (n in table.figures)}" for n, (title, wide) in enumerate(columns))
                lines[f"{template.id}: {' | '.join(told)}\n"] = None
    catalogue = (f"{t.id} {t.title}: {t.used_for}; {t.stage}, {t.numbering}\n" for t in templates())
    return {"table-columns.txt": "".join(sorted(lines)), "catalogue.txt": "".join(catalogue)}


def command_texts() -> dict[str, str]:
    """What the commands print that tell of the fields, the rules, and the sums, and the answers to the examples."""
    examples = sorted(path.name for path in EXAMPLES.iterdir())
    return {
        "fields.txt": printed(("fields", ".".join(path)) for path in project_schema().fields),
        "rules.txt": "".join(less_reasons(printed([("rules", rule.code)])) for rule in load_rules()),
        "sums.txt": printed([("calc",), *(("calc", name, "no-such-key=1") for name in names())]),
        "workings.txt": printed(chain(*map(sample_calls, sorted(SAMPLES.glob("*.yaml"))))),
        "keys.txt": printed(("calc", name, "--help") for name in names()),
        "site.txt": printed(site_calls()),
        "matrix.txt": printed([("matrix",)]),
        "data.txt": printed(data_calls()),
        "help.txt": printed([("--help",), *((command, "--help") for command in list_verbs())]),
        "starter.yaml": format_starter(project_schema(), "closeout", "ip"),
        "starter-firm.yaml": format_side_starter(project_schema(), "firm", "ip"),
        "starter-coating-system.yaml": format_side_starter(project_schema(), "coating_system", "si"),
    } | {f"check-{name}.txt": printed([("check", f"project_examples/{name}/project.yaml")]) for name in examples}


def sample_calls(file: Path) -> Iterator[tuple[str, ...]]:
    """A call of `calc` for each set of keys of a sum that prints lines of a working."""
    for keys in yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader):
        yield ("calc", file.stem, *(f"{key}={value}" for key, value in keys.items()))


def site_calls() -> Iterator[tuple[str, ...]]:
    """Calls that tell what the site sent back, and what it may do now."""
    season, clean = (f"project_examples/{name}/project.yaml" for name in ("season", "clean"))
    dry, damp = "--rh 60 --wind 6mph", "--rh 97% --wind 14mph --gust 22mph --rain yes --sun yes --forecast-low 40F"
    yield from (
        ("record", season),
        ("record", season, "--elevation", "E2"),
        ("status", season),
        ("status", season, "--at", "2027-07-02T10:00"),
        ("status", season, "--elevation", "E3"),
        ("status", season, "--panel", "E3-A1"),
        ("go", clean, "--step", "gloss", "--air", "62F", "--surface", "70F", *dry.split()),
        ("go", clean, "--air", "46F", "--surface", "45F", *damp.split()),
        ("weather", clean, "--hours", "project_examples/clean/hours.csv"),
        ("weather", clean, "--hours", "project_examples/clean/hours.csv", "--step", "boards", "--all-hours"),
        ("weather", clean, "--hours", "project_examples/clean/hours.csv", "--surface", "model"),
    )


def data_calls() -> Iterator[tuple[str, ...]]:
    """Calls whose answer is read by a machine."""
    clean, metric, season, stops = (
        f"project_examples/{name}/project.yaml" for name in ("clean", "metric", "season", "stops")
    )
    now = "--step gloss --air 62F --surface 70F --rh 60 --wind 14mph --sun yes"
    calls = (
        ("check", stops),
        ("check", metric),
        ("record", season),
        ("status", season, "--elevation", "E3"),
        ("status", season, "--panel", "E3-A1"),
        ("go", clean, *now.split()),
        ("weather", clean, "--hours", "project_examples/clean/hours.csv"),
        ("fields", "gloss"),
        ("rules", "WAT-02"),
        ("rules", "WEA-01"),
        ("matrix",),
        *(next(sample_calls(file)) for file in sorted(SAMPLES.glob("*.yaml"))),
    )
    yield from ((*call, "--format", "json") for call in calls)
    yield from (
        ("check", file, "--format", "line") for file in (stops, clean, "project_examples/first-look/project.yaml")
    )


def less_reasons(manual: str) -> str:
    """The manual page of a rule without its docstring, which stands in the file of the rule."""
    head, _, clauses = manual.partition("\nclauses\n")
    return head.split("\n\n")[0] + "\n" + clauses


def finding_texts() -> dict[str, str]:
    """What each clause says where its cases fire: a file for each group of rules."""
    folders = sorted(path for path in CASES.iterdir() if path.is_dir())
    return {f"{folder.name}.txt": "\n".join(chain(*map(said_in, sorted(folder.glob("*.yaml"))))) for folder in folders}


def said_in(file: Path) -> Iterator[str]:
    """The findings of the cases of one rule, each in a few lines."""
    for code, cases in yaml.load(file.read_text("utf-8"), Loader=yaml.CSafeLoader).items():
        for case in cases.get("fires", ()):
            with TemporaryDirectory() as folder:
                finding = told_by(project_of(Path(folder), case["project"]), code).finding
            if finding is not None:
                says = f"{code} {finding.severity}: {finding.message}"
                reason = find_clause(code).why
                why = f"  why: {reason}\n" if reason else ""
                yield f"{says}\n{why}  measure: {finding.remedy}\n  basis: {finding.basis}\n"


def row_texts() -> dict[str, str]:
    """The words of the rows of the standards, whether or not an example prints them."""
    rows = load_standards()
    kinds = {name: getattr(rows, name) for name in ("sources", "limits", "steps", "criteria", "tools", "faults")}
    return {f"{kind}.txt": "".join(f"{name}\n{shown(row)}" for name, row in of.items()) for kind, of in kinds.items()}


def shown(row: Any) -> str:
    """A row, each of its parts and each of its sentences in a line."""
    parts = {"source": row} if isinstance(row, Source) else row._asdict()
    told = {name: part for name, part in parts.items() if part not in ("", (), None)}
    sentences = [told.pop("sentences", ())]
    lines = [f"  {name}: {in_words(part)}\n" for name, part in told.items()]
    return "".join([*lines, *(f"  - {in_words(sentence)}\n" for sentence in chain(*sentences))])


def in_words(part: Any) -> str:
    """A part of a row on one line."""
    if isinstance(part, Source):
        cited = f"; cited as {part.controls}" if part.controls else ""
        return f"{Basis((part,))}{cited}"
    if isinstance(part, tuple):
        return "; ".join(map(in_words, part))
    return str(part)


def printed(commands: Iterable[tuple[str, ...]]) -> str:
    """What these commands print, each below its own line."""
    out = io.StringIO()
    with chdir(ROOT), redirect_stdout(out), redirect_stderr(out):
        for words in commands:
            print(f"$ specgen {' '.join(words)}")
            with suppress(SystemExit):  # a page of help ends the command
                main(words)
            print()
    return out.getvalue()


DOCUMENTS = HERE / "documents" / "golden"
GOLDEN: dict[Path, Callable[[], dict[str, str]]] = {
    HERE / "standards" / "golden": row_texts,
    HERE / "judging" / "golden": finding_texts,
    HERE / "commands" / "golden": command_texts,
    HERE / "mistakes" / "golden": mistake_texts,
    HERE / "terminal" / "golden": terminal_texts,
    DOCUMENTS: lambda: document_texts() | table_texts(),
    HERE / "documents" / "figures" / "golden": figure_texts,
    HERE / "output" / "golden": file_texts,
    HERE / "documents" / "drawn" / "golden": lambda: project_texts() | season_texts(),
}


def write_all(folder: Path, texts: Callable[[], dict[str, str]]) -> None:
    """Write the texts of one kind into a folder."""
    folder.mkdir(exist_ok=True)
    for name, text in texts().items():
        (folder / name).write_text(text, "utf-8")


if __name__ == "__main__":
    STUB.write_text(stub(), "utf-8")
    for place, texts in GOLDEN.items():
        write_all(place, texts)
