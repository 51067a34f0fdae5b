"""The documents that a party sent, as attachments that are offered to a project, and the fields that name them."""

from collections.abc import Iterable, Iterator
from pathlib import Path as FilePath
from pathlib import PurePosixPath

from specgen.asking.field_paths import FoundField, find_field
from specgen.asking.offers import Converter, Offer, Offered
from specgen.asking.sent_papers import KIND, SentPaper
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.reading.answer_text import AnswerText, read_answer
from specgen.reading.conversion import InvalidValue
from specgen.reading.grid import Cell
from specgen.reading.side_files import ATTACHMENTS

_LISTS = ("covers", "parties", "colors")
_FILE = "file"
# The folders of a project are not searched deeper, nor for more files.
_DEEPEST, _MOST_FILES = 4, 5000


def list_paper_offers(
    project: Project, folder: FilePath, papers: Iterable[SentPaper], number: int, who: str, converter: Converter
) -> Offered:
    """The attachments of a workbook; rows of one file and one kind are one attachment that does for each of them."""
    offered = Offered()
    for whole, alike in _group_by_file(papers):
        for paper in alike:
            _add_offers(project, folder, paper, whole, number, who, converter, offered)
    return offered


def _group_by_file(papers: Iterable[SentPaper]) -> Iterator[tuple[SentPaper, list[SentPaper]]]:
    """The rows of each attachment, below the one that has the lists of all of them."""
    groups: dict[tuple[str, ...], list[SentPaper]] = {}
    for paper in papers:
        single = (f"{name}: {text}" for name, text in paper.typed if name not in _LISTS)
        file = paper.words(_FILE).casefold()
        groups.setdefault((file or paper.mark, paper.words(KIND), *single), []).append(paper)
    for alike in groups.values():
        yield _join(alike), alike


def _join(alike: list[SentPaper]) -> SentPaper:
    """The attachment of these rows: the first of them, its lists with the entries of all."""
    first = alike[0]
    typed, cells = dict(first.typed), dict(first.cells)
    for name in _LISTS:
        texts = (one.words(name) or dict(one.typed).get(name, "").strip("[]") for one in alike)
        entries = dict.fromkeys(entry.strip() for text in texts for entry in text.split(","))
        joined = ", ".join(filter(None, entries))
        if joined and name in cells and len(alike) > 1:
            cells[name] = (Cell(joined), cells[name][1])
        elif joined:
            typed[name] = f"[{joined}]"
    return first._replace(typed=tuple(typed.items()), cells=cells)


def _add_offers(
    project: Project,
    folder: FilePath,
    paper: SentPaper,
    whole: SentPaper,
    number: int,
    who: str,
    converter: Converter,
    offered: Offered,
) -> None:
    """The fields of one row: those of its attachment unless another row has it, and the field that names it."""
    for where, cell, place in _list_given(paper, whole):
        try:
            found = find_field(project, where) if where == paper.field else _find_own(project, paper, where)
            read = read_answer(cell, found.field, project, "")
            if read is None:
                continue
            if found.path[-1] == _FILE:
                read = _find_file(folder, read)
            text, value = converter.convert(found.field, read)
            offered.offers.append(Offer(found.path, text, value, place, who, paper.remark, read.notes, number))
        except InvalidValue as invalid:
            offered.problems.append(Problem(invalid.message, invalid.hint, where, place))


def _list_given(paper: SentPaper, whole: SentPaper) -> Iterator[tuple[str, Cell, str]]:
    """What a row gives: names of fields of its attachment unless another row has it, and the path that names it."""
    if paper.mark == whole.mark:
        yield from ((name, Cell(text), paper.place) for name, text in whole.typed if not paper.words(name))
        yield from ((name, *cell) for name, cell in whole.cells.items())
    if paper.field:
        yield paper.field, Cell(whole.mark), paper.place


def _find_own(project: Project, paper: SentPaper, name: str) -> FoundField:
    """A field of the attachment of a row; raises InvalidValue."""
    path = (ATTACHMENTS, paper.mark, name)
    field = project.schema.field_at(path)
    if field is None:
        raise InvalidValue(f"{name!r} is the name of no field", f"leave {paper.place} as it was sent")
    return FoundField(path, field)


def _find_file(folder: FilePath, read: AnswerText) -> AnswerText:
    """The name of a file with its folder, and that it was found there."""
    found = locate(folder, read.entries[0])
    notes = (*read.notes, f"found as {found}") if found != read.entries[0] else read.notes
    return AnswerText((found,), False, notes)


def locate(folder: FilePath, name: str) -> str:
    """The path of a file within the folder of the project, where a single one there has this name; else the name."""
    if (folder / name).exists() or PurePosixPath(name).name != name:
        return name
    found = [path for path in _walk(folder, 0) if path.name.casefold() == name.casefold()]
    return found[0].relative_to(folder).as_posix() if len(found) == 1 else name


def _walk(folder: FilePath, depth: int) -> Iterator[FilePath]:
    """The files of a folder and of those in it, hidden ones left out."""
    try:
        entries = sorted(folder.iterdir())[:_MOST_FILES]
    except OSError:
        return
    for entry in entries:
        if entry.name.startswith("."):
            continue
        if entry.is_dir() and not entry.is_symlink() and depth < _DEEPEST:
            yield from _walk(entry, depth + 1)
        elif entry.is_file():
            yield entry
