"""Takes answers of others into a project: workbooks of questions, or one table of members; nothing is written here."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from pathlib import Path as FilePath

from specgen.asking import answer_sheet as at
from specgen.asking.answered_sheet import AnsweredSheet, read_answered_sheet
from specgen.asking.csv_reading import read_csv
from specgen.asking.offers import Conflict, Converter, Offer, sort_offers
from specgen.asking.placing import Placed, Placer
from specgen.asking.question_offers import (
    Signer,
    check_project,
    find_signer,
    list_offers,
    read_call_day,
    tell_signing,
)
from specgen.asking.table_offers import list_table_offers, pick_grid
from specgen.asking.workbook_reading import read_workbook
from specgen.model.field import Path, Schema
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project

_TABLE_ENDS = (".csv", ".txt", ".tsv")


@dataclass(frozen=True)
class Taken:
    """What was taken: the files as they are to be, and all that is to be told."""

    placed: Placed
    signers: tuple[tuple[Signer, str], ...]  # who answered, with the name of the workbook; none for a table
    same: tuple[Offer, ...]  # what the project has already
    conflicts: tuple[Conflict, ...]
    problems: tuple[Problem, ...]
    notes: tuple[str, ...]

    def without(self) -> "Taken":
        """The same with nothing taken."""
        return replace(self, placed=Placed())


def take_answers(file: FilePath, schema: Schema, names: Sequence[str], by: str = "", on: str = "") -> Taken:
    """The answers of workbooks in a project; a workbook that is not its own is left out, and told.

    `by` and `on` are who answered and when, where a workbook does not say. Raises Refused where no workbook is left.
    """
    placer, converter = Placer(file, schema), Converter()
    day = read_call_day(placer.project, on)
    sheets, refused = _read_sheets(placer.project, names, by, day)
    if not sheets:
        raise Refused(*refused)
    read = [
        list_offers(placer.project, sheet, number, signer.name, converter)
        for number, (sheet, signer) in enumerate(sheets)
    ]
    done = sort_offers(placer.project, (offer for one in read for offer in one.offers))
    signers = tuple((signer, FilePath(sheet.file).name) for sheet, signer in sheets)
    placed = placer.place(done.fresh, signers)
    signing = (told for sheet, signer in sheets for told in tell_signing(placer.project, sheet, signer, by, day))
    return Taken(
        placed,
        signers,
        tuple(done.same),
        (*done.conflicts, *placed.conflicts),
        (*refused, *(problem for one in read for problem in one.problems), *placed.problems),
        (*signing, *(note for one in read for note in one.notes), *placed.remarks),
    )


def _read_sheets(
    project: Project, names: Sequence[str], by: str, day: str
) -> tuple[list[tuple[AnsweredSheet, Signer]], list[Problem]]:
    """The workbooks with who answered them, and what is wrong with those that cannot be taken."""
    sheets, refused = list[tuple[AnsweredSheet, Signer]](), list[Problem]()
    for name in names:
        try:
            _refuse_table(name)
            sheet = read_answered_sheet(read_workbook(FilePath(name), name), name)
            check_project(project, sheet)
            sheets.append((sheet, find_signer(project, sheet, by, day)))
        except Refused as fault:
            refused += fault.problems
    return sheets, refused


def _refuse_table(name: str) -> None:
    """Raise Refused for a table that is not said to be one, with the table that its name tells."""
    if name.lower().endswith(_TABLE_ENDS):
        tables = [table.name for table in at.TABLES]
        told = next((one for one in tables if one in FilePath(name).stem.lower()), "")
        hint = f"add --as {told}" if told else f"add --as and what it lists: {', '.join(tables)}"
        raise Refused(Problem("this is a table, not a workbook of questions", hint, file=name))


def take_table(file: FilePath, schema: Schema, name: str, table: at.Table) -> Taken:
    """The members of a table in a project, each whole or not at all; raises Refused where any cell is at fault."""
    placer = Placer(file, schema)
    notes: tuple[str, ...] = ()
    if name.lower().endswith(_TABLE_ENDS):
        grid, notes = read_csv(FilePath(name), name)
    else:
        grid = pick_grid(read_workbook(FilePath(name), name), table, name)
    read = list_table_offers(placer.project, grid, table, Converter())
    if read.problems:
        raise Refused(*read.problems)
    done = sort_offers(placer.project, read.offers)
    depth = len(table.collection)
    at_odds = {conflict.path[:depth] for conflict in done.conflicts}
    placed = placer.place((offer for offer in done.fresh if offer.path[:depth] not in at_odds), whole=True)
    if placed.problems or placed.conflicts:
        raise Refused(*placed.problems, *map(_refuse_unread, placed.conflicts))
    return Taken(placed, (), tuple(done.same), tuple(done.conflicts), (), (*notes, *placed.remarks))


def _refuse_unread(conflict: Conflict) -> Problem:
    message = f"the project has {conflict.given!r} there, in {conflict.place}"
    return Problem(message, "correct that first", ".".join(conflict.path), conflict.offers[0].place)


def list_members(offers: Iterable[Offer], depth: int) -> list[tuple[Path, tuple[str, ...]]]:
    """The members that offers are about, each with the fields offered, in the order of the table."""
    grouped = groupby(offers, key=lambda offer: offer.path[:depth])
    return [(member, tuple(".".join(offer.path[depth:]) for offer in each)) for member, each in grouped]
