"""Reads a workbook of questions that came back: who answered and when, and what stands in each answer."""

from collections.abc import Mapping
from typing import NamedTuple

from specgen.asking import answer_sheet as at
from specgen.asking.sent_papers import SentPaper, read_papers
from specgen.asking.tables import list_tables
from specgen.model.problem import Problem, Refused
from specgen.model.suggest import suggest
from specgen.reading.grid import Cell, Grid

_MOST_HEAD = 20  # rows in which the titles are looked for, where somebody has put lines above them


class SheetAnswer(NamedTuple):
    """What stands in the row of a question: the answer, the dotted path of its field, and the place in messages.

    The place has the number of the question and the party that was asked, so that it can be asked back.
    """

    field: str
    cell: Cell
    remark: str
    question: str  # as it was asked
    place: str
    field_place: str


class AnsweredSheet(NamedTuple):
    """A workbook of questions, or of a table, as it came back."""

    file: str  # as it was named
    project_name: str = ""
    project_number: str = ""
    party: str = ""  # as `owed_by` has it
    by: str = ""
    on: str = ""  # as the cell has it; empty where it is not filled in
    by_place: str = ""
    on_place: str = ""
    answers: tuple[SheetAnswer, ...] = ()
    table: str = ""  # the name of the table that it is of
    papers: tuple[SentPaper, ...] = ()  # the documents that were sent
    faults: tuple[Problem, ...] = ()  # rows of which it cannot be told what they are of

    @property
    def is_entered(self) -> bool:
        """Whether a question is answered or a document sent."""
        return bool(self.answers or self.papers or self.faults)


def list_parts(grids: Mapping[str, Grid]) -> dict[int, dict[str, Grid]]:
    """The sheets of each party that a workbook asks, by its number and the names that those of a single one bear."""
    parts: dict[int, dict[str, Grid]] = {}
    for page, grid in grids.items():
        sheet, part = at.find_part(page)
        parts.setdefault(part, {})[sheet] = grid
    asked = {part: parts[part] for part in sorted(parts) if {at.PROJECT, at.QUESTIONS} & parts[part].keys()}
    return asked or {1: dict(grids)}


def read_answered_sheet(grids: Mapping[str, Grid], shown: str, part: int = 1) -> AnsweredSheet:
    """The answers of a party in a workbook named `shown`; raises Refused where it is no workbook of questions."""
    questions, project = (_find_sheet(grids, name, shown, part) for name in (at.QUESTIONS, at.PROJECT))
    told, labels = _read_project(project, shown), _read_labels(project)
    party = project.words(labels[at.PARTY], 2) if at.PARTY in labels else ""
    rows = tuple(read_papers(grids[at.SENT])) if at.SENT in grids else ()
    return told._replace(
        answers=_read_answers(questions, party),
        papers=tuple(row for row in rows if isinstance(row, SentPaper)),
        faults=tuple(row for row in rows if isinstance(row, Problem)),
    )


def read_table_sheet(grids: Mapping[str, Grid], shown: str) -> AnsweredSheet | None:
    """What a workbook named `shown` says of the table that it is of; None where it names none."""
    project = grids.get(at.PROJECT)
    if project is None or at.TABLE not in _read_labels(project):
        return None
    return _read_project(project, shown)


def _read_project(project: Grid, shown: str) -> AnsweredSheet:
    """What the sheet `Project` tells, without any answers; raises Refused for a format that is not known."""
    labels = _read_labels(project)
    told = {label: project.words(row, 2) for label, row in labels.items()}
    if told.get(at.FORMAT, "") != at.FORMAT_VERSION:
        found = told.get(at.FORMAT) or "none"
        raise Refused(
            Problem(f"the format of the sheet is not known: {found}", "ask anew with `specgen ask`", file=shown)
        )

    def place(label: str) -> str:
        return project.place(labels.get(label, project.last_row + 1), 2)

    return AnsweredSheet(
        file=shown,
        project_name=told.get(at.PROJECT_NAME, ""),
        project_number=told.get(at.PROJECT_NUMBER, ""),
        party=told.get(at.PARTY_ROLE, ""),
        by=told.get(at.ANSWERED_BY, ""),
        on=told.get(at.ANSWERED_ON, ""),
        by_place=place(at.ANSWERED_BY),
        on_place=place(at.ANSWERED_ON),
        table=told.get(at.TABLE, ""),
    )


def _find_sheet(grids: Mapping[str, Grid], name: str, shown: str, part: int) -> Grid:
    if name in grids:
        return grids[name]
    if {at.PROJECT, at.QUESTIONS} & grids.keys():
        message = f"the workbook has no sheet {at.name_page(name, part)}"
        raise Refused(Problem(message, "keep every sheet, and its name, as it was sent", file=shown))
    tables = [table.name for table in list_tables()]
    table = next((one for one in grids if one.casefold() in tables), "")
    hint = f"a table is taken with --as {table.casefold()}" if table else "name a workbook that `specgen ask` wrote"
    raise Refused(Problem(f"this is not a workbook of questions: it has no sheet {name}", hint, file=shown))


def _read_labels(project: Grid) -> dict[str, int]:
    """The rows of the labels of the sheet `Project`."""
    known = {label.casefold(): label for label in at.PROJECT_LABELS}
    found: dict[str, int] = {}
    for row, column in sorted(project.cells):
        label = known.get(project.words(row, column).casefold()) if column == 1 else None
        if label:
            found.setdefault(label, row)
    return found


def _read_answers(questions: Grid, party: str) -> tuple[SheetAnswer, ...]:
    """The rows with an answer or a remark; raises Refused where the columns cannot be told."""
    head, columns = _find_head(questions)
    answers = []
    for row in range(head + 1, questions.last_row + 1):
        cell, remark = questions.cell(row, columns[at.ANSWER]), questions.words(row, columns.get(at.REMARK, 0))
        if cell.value is None and not cell.formula and not remark:
            continue
        field, of_field = (questions.words(row, columns[at.FIELD]), questions.place(row, columns[at.FIELD]))
        asked, number = (questions.words(row, columns.get(name, 0)) for name in (at.QUESTION, at.NUMBER))
        whose = f" (No. {', '.join(filter(None, (number, party)))})" if number else ""
        place = f"{questions.place(row, columns[at.ANSWER])}{whose}"
        answers.append(SheetAnswer(field, cell, remark, asked, place, of_field))
    return tuple(answers)


def _find_head(questions: Grid) -> tuple[int, dict[str, int]]:
    """The row of the titles, and the columns by title, wherever they have been moved to."""
    best: dict[str, int] = {}
    for row in range(1, _MOST_HEAD):
        titles = questions.row_titles(row)
        columns = {title: titles[title.casefold()] for title in at.QUESTION_COLUMNS if title.casefold() in titles}
        if at.ANSWER in columns and at.FIELD in columns:
            return row, columns
        best = titles if len(columns) > 1 else best
    lacking = next(title for title in (at.ANSWER, at.FIELD) if title.casefold() not in best)
    message = f"the sheet {questions.name} has no column {lacking}"
    raise Refused(Problem(message, suggest(lacking, best) or "keep the titles of the columns", file=questions.file))
