"""The messages and remedies told of each mistake in the tables of the tests, by kind of mistake."""

from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

import yaml

from specgen import building, pipeline
from specgen.model.field import dotted_path
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.reading.choices import find_choice, refuse_choice
from specgen.reading.marks import find_mark_fault
from specgen.reading.schema import project_schema
from tests.documents.support import written as compose
from tests.documents.test_page_overrides import BODY, FRAME, HEAD, LOOKS
from tests.documents.test_template_mistakes import MISTAKES
from tests.mistakes import told_answers, told_files, told_libraries, told_packages, told_records
from tests.mistakes.table import mistakes
from tests.mistakes.telling import place, tell, tell_refused
from tests.quantities.test_number import DOUBTFUL
from tests.quantities.test_parse import REFUSED
from tests.reading import (
    test_bounds,
    test_conversion,
    test_geometry,
    test_hostile,
    test_marks,
    test_project,
    test_ranges,
)
from tests.reading.test_structure import SHAPES, UNKNOWN, problems, read
from tests.support import SMALL, written


def mistake_texts() -> dict[str, str]:
    """What is told of each mistake, a text for each kind."""
    kinds: dict[str, Callable[[], Iterable[str]]] = {
        "templates.txt": tell_templates,
        "pages.txt": tell_pages,
        "values.txt": tell_values,
        "marks.txt": tell_marks,
        "files.txt": tell_files,
        "project.txt": tell_table,
        "choices.txt": tell_choices,
        "yaml.txt": told_files.tell_yaml,
        "workbooks.txt": told_files.tell_workbooks,
        "tables.txt": told_files.tell_tables,
        "letterheads.txt": told_files.tell_letterheads,
        "papers.txt": told_files.tell_papers,
        "weather.txt": told_files.tell_hours,
        "records.txt": told_records.tell_records,
        "forms.txt": told_records.tell_forms,
        "packages.txt": told_packages.tell_packages,
        "manifests.txt": told_packages.tell_manifests,
        "twins.txt": told_packages.tell_twins,
        "taking.txt": told_answers.tell_taking,
        "editing.txt": told_answers.tell_editing,
        "libraries.txt": told_libraries.tell_libraries,
    }
    return {name: "\n".join(tell()) for name, tell in kinds.items()}


def tell_choices() -> Iterator[str]:
    """The words of the trade beside the choices of a field: what each is taken for, or what is asked back."""
    for field in project_schema().fields.values():
        for word in field.means:
            meant = find_choice(field, word.word)
            said = f"  {meant}" if meant in field.values else "  {}\n    -> {}".format(*refuse_choice(field, word.word))
            yield f"{dotted_path(field.path)}: {word.word}\n{said}"


def tell_templates() -> Iterator[str]:
    """Mistakes in the words of a template."""
    for words, *_ in MISTAKES:
        yield tell_refused(words, lambda folder, words=words: compose(folder, words))


def tell_pages() -> Iterator[str]:
    """Frames and styles of a firm that reach out of the page."""
    texts = [(piece, "page.html", FRAME.replace("$body", f"{piece}\n$body")) for piece in BODY]
    texts += [(piece, "page.html", FRAME.replace("<title>", f"{piece}<title>")) for piece in HEAD]
    texts += [(looks, "style.css", f"a {{ color: red }}\n{looks}\n") for looks in LOOKS]
    for shown, name, text in texts:
        yield tell_refused(shown, lambda folder, name=name, text=text: build_with(folder, name, text))


def build_with(folder: Path, name: str, text: str) -> None:
    """Build one document with a firm's own frame or style."""
    (folder / "words").mkdir()
    (folder / "words" / name).write_text(text, "utf-8")
    file = written(folder, SMALL)
    building.build(file, folder / "out", ("html",), ("D10",), templates=folder / "words")


def tell_values() -> Iterator[str]:
    """Texts that do not fit their field, and quantities that are none."""
    for _, path, text, *_ in test_conversion.BAD:
        fault = test_conversion.refused(test_conversion.field(path), text)
        yield tell(f"{path}: {text}", (fault.message, fault.hint))
    for text, dimension in [*((text, "length") for text, _ in DOUBTFUL), *((row[0], row[1]) for row in REFUSED)]:
        try:
            parse_quantity(text, dimension, ("ft", "m"))
        except QuantityError as error:
            yield tell(f"{dimension}: {text}", (error.message, error.hint))


def tell_marks() -> Iterator[str]:
    """Marks that cannot be told apart on paper."""
    for mark, *_ in test_marks.FAULTS:
        fault = find_mark_fault(mark)
        yield tell(mark, *([fault] if fault else []))
    with TemporaryDirectory() as name:
        for one, other, *_ in test_marks.PAIRS:
            yield tell(f"{one} {other}", *map(place, test_marks.problems_of(Path(name), one, other)))


def tell_files() -> Iterator[str]:
    """Project files with unknown keys, wrong shapes, loose references, sizes and ranges that cannot be."""
    with TemporaryDirectory() as name:
        for text, *_ in UNKNOWN:
            yield tell(text, *map(place, problems(Path(name), text)))
        for text, *_ in SHAPES:
            yield tell(text, *map(place, read(Path(name), f"format: 1\n{text}\n")[0].problems))
    for text, *_ in test_project.DANGLING:
        yield tell_project(text, test_project.HEAD + text)
    for text, *_ in (*test_geometry.FAULTS, *test_geometry.OUTLINES):
        yield tell_project(text, f"{test_geometry.HEAD}    {text}\n")
    for text in tell_off_walls():
        yield tell_project(text, test_geometry.HEAD + text)
    for text, *_ in test_ranges.UPSIDE_DOWN:
        head = test_ranges.HEAD if "\nwalls:" not in text else test_ranges.HEAD.partition("walls:")[0]
        yield tell_project(text, f"{head}{text}\n")
    for about, content, *_ in test_hostile.CASES:
        yield tell_refused(about, lambda folder, content=content: read_beside(folder, content))
    for name, make, *_ in test_bounds.LINKS:
        yield tell_refused(name, lambda folder, name=name, make=make: read_linked(folder, name, make))
    yield tell_project("a name of a folder", written_out({"firm": "firm.yaml/"}))


def tell_off_walls() -> Iterator[str]:
    """What lies beyond its wall."""
    yield test_geometry.GABLE + test_geometry.BEYOND
    for runs, *_ in test_geometry.RUNS:
        yield f"joints:\n  J1: {{elevation: E1, runs: {runs}, at: 25 ft}}\n"
    for ties, *_ in test_geometry.TIES:
        yield f"access: {{X1: {{elevation: E1, ties: {ties}}}}}\n"
    for sides, *_ in test_geometry.DETAILS:
        yield f"details: {{RB1: {{elevation: E1, {sides}}}}}\n"


def read_beside(folder: Path, content: str | bytes) -> None:
    """Check a project that stands beside things that are no files of a project."""
    file = test_hostile.make_folder(folder) / "project.yaml"
    file.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8", "surrogatepass"))
    pipeline.check(file)


def read_linked(folder: Path, name: str, make: Callable[[Path], object]) -> None:
    """Check a project whose firm file is named by a link."""
    make(folder)
    (folder / "project.yaml").write_text(f"{test_bounds.HEAD}firm: {name}\n", "utf-8")
    pipeline.check(folder / "project.yaml")


def written_out(change: dict[str, str]) -> str:
    """The small project with a change, as text."""
    return yaml.safe_dump(SMALL | change, sort_keys=False)


def tell_table() -> Iterator[str]:
    """The table of mistakes in a project file."""
    for one in mistakes():
        if one.told:
            shown = f"{one.number} {one.about}"
            yield tell_refused(shown, lambda folder, content=one.content: read_content(folder, content))


def read_content(folder: Path, content: bytes) -> None:
    """Read a project file with this content."""
    (folder / "project.yaml").write_bytes(content)
    pipeline.read(folder / "project.yaml")


def tell_project(shown: str, content: str) -> str:
    """A project file, and what is told of it."""

    def run(folder: Path) -> None:
        file = folder / "project.yaml"
        file.write_bytes(content.encode("utf-8", "surrogatepass"))
        pipeline.check(file)

    return tell_refused(shown, run)
