"""The messages and remedies told of each mistake in the tables of the tests, by kind of mistake."""

from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from specgen import building, pipeline
from specgen.model.field import dotted_path
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.reading.choices import find_choice, refuse_choice
from specgen.reading.marks import find_mark_fault
from specgen.reading.schema import project_schema
from tests.documents.support import written as compose
from tests.documents.test_page_overrides import BODY, FRAME, HEAD, LOOKS
from tests.documents.test_template_mistakes import MISTAKES
from tests.mistakes import told_files, told_packages, told_records
from tests.mistakes.table import mistakes
from tests.mistakes.telling import place, tell, tell_refused
from tests.quantities.test_number import DOUBTFUL
from tests.quantities.test_parse import REFUSED
from tests.reading import test_conversion, test_geometry, test_hostile, test_marks, test_project, test_ranges
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
    for text, *_ in test_ranges.UPSIDE_DOWN:
        head = test_ranges.HEAD if "\nwalls:" not in text else test_ranges.HEAD.partition("walls:")[0]
        yield tell_project(text, f"{head}{text}\n")
    for about, content, *_ in test_hostile.CASES:
        if isinstance(content, str) and "firm" not in about:
            yield tell_project(about, content)


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
