"""Takes answers of others into a project: workbooks of questions and tables of members; nothing is written here."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from pathlib import Path as FilePath
from typing import NamedTuple

from specgen.asking.answered_sheet import AnsweredSheet, list_parts, read_answered_sheet, read_table_sheet
from specgen.asking.offers import Conflict, Converter, Offer, Offered, sort_offers
from specgen.asking.paper_offers import list_paper_offers
from specgen.asking.placing import Placed, Placer
from specgen.asking.question_offers import (
    Signer,
    check_project,
    find_signer,
    list_offers,
    read_call_day,
    tell_signing,
)
from specgen.asking.table_offers import find_filled, list_table_offers, pick_grid
from specgen.asking.tables import Table, find_table_named, list_tables
from specgen.model.field import Path, Schema
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.reading.csv_reading import read_csv
from specgen.reading.grid import Grid
from specgen.reading.workbook_reading import read_workbook

_CSV = (".csv", ".txt", ".tsv")


@dataclass(frozen=True)
class Taken:
    """What was taken: the files as they are to be, and all that is to be told."""

    placed: Placed
    signers: tuple[tuple[Signer | None, str], ...]  # who answered, if anybody says so, with the name of each workbook
    same: tuple[Offer, ...]  # what the project has already
    conflicts: tuple[Conflict, ...]
    problems: tuple[Problem, ...]
    notes: tuple[str, ...]
    tables: tuple[Table, ...] = ()  # those that the workbooks are of; empty for questions

    def without(self) -> "Taken":
        """The same with nothing taken."""
        return replace(self, placed=Placed())


class Returned(NamedTuple):
    """What came back: workbooks of questions, and tables with what is told of how they were read."""

    sheets: tuple[AnsweredSheet, ...]
    tables: tuple[tuple[Table, Grid, AnsweredSheet, tuple[str, ...]], ...]
    refused: tuple[Problem, ...]  # of files that cannot be read


def read_returned(names: Sequence[str], table: Table | None = None) -> Returned:
    """The files of these names; `table` is what the one is of that does not say so.

    Raises Refused where none can be read.
    """
    sheets, tables, refused = [], [], list[Problem]()
    for name in names:
        try:
            if name.lower().endswith(_CSV):
                if table is None:
                    raise _refuse_unsaid(name)
                read = read_csv(FilePath(name), name)
                tables.append((table, read.grid, AnsweredSheet(name), read.notes))
                continue
            grids = read_workbook(FilePath(name), name)
            told = read_table_sheet(grids, name)
            if table is None and told is None:
                for told, found in _read_parties(grids, name):
                    sheets += [told] if told.is_entered or not found else []
                    tables += [(of, grid, told, ()) for of, grid in found]
                continue
            of = table or find_table_named(told.table if told else "")
            tables.append((of, pick_grid(grids, of, name), told or AnsweredSheet(name), ()))
        except Refused as fault:
            refused += fault.problems
    if not sheets and not tables:
        raise Refused(*refused)
    return Returned(tuple(sheets), tuple(tables), tuple(refused))


def _read_parties(grids: Mapping[str, Grid], name: str) -> list[tuple[AnsweredSheet, list[tuple[Table, Grid]]]]:
    """What each party entered in a workbook; one that entered nothing is left out where others did."""
    parts = list_parts(grids).items()
    read = [(read_answered_sheet(sheets, name, part), list(find_filled(sheets))) for part, sheets in parts]
    return [(told, tables) for told, tables in read if told.is_entered or tables] or read[:1]


def _refuse_unsaid(name: str) -> Refused:
    """The refusal of a table that does not say what it lists, with the table that its name tells."""
    told = next((one.name for one in list_tables() if one.name in FilePath(name).stem.lower()), "")
    hint = f"add --as {told}" if told else "add --as TABLE; specgen take --help names them"
    return Refused(Problem("this is a table, not a workbook of questions", hint, file=name))


def take_answers(
    file: FilePath,
    schema: Schema,
    sheets: Sequence[AnsweredSheet],
    by: str = "",
    on: str = "",
    edited: Mapping[FilePath, bytes] | None = None,
) -> Taken:
    """The answers of workbooks in a project; a workbook that is not its own is left out, and told.

    `by` and `on` are who answered and when, where a workbook does not say; `edited` are contents of the files of the
    project that are to be written first. Raises Refused where no workbook is left.
    """
    placer, converter = Placer(file, schema, edited), Converter()
    day = read_call_day(placer.project, on)
    signed, refused = _sign(placer.project, sheets, by, day)
    if not signed:
        raise Refused(*refused)
    read = [
        one
        for number, (sheet, signer) in enumerate(signed)
        for one in (
            list_offers(placer.project, sheet, number, signer.name, converter),
            list_paper_offers(placer.project, file.resolve().parent, sheet.papers, number, signer.name, converter),
        )
    ]
    done = sort_offers(placer.project, (offer for one in read for offer in one.offers))
    signers = tuple((signer, FilePath(sheet.file).name) for sheet, signer in signed)
    placed = placer.place(done.fresh, signers)
    signing = (told for sheet, signer in signed for told in tell_signing(placer.project, sheet, signer, by, day))
    return Taken(
        placed,
        signers,
        tuple(done.same),
        (*done.conflicts, *placed.conflicts),
        (*refused, *_list_faults(signed, read), *placed.problems),
        (*signing, *(note for one in read for note in one.notes), *placed.remarks),
    )


def _list_faults(signed: Sequence[tuple[AnsweredSheet, Signer]], read: Sequence[Offered]) -> Iterator[Problem]:
    """What cannot be read in the workbooks: rows that say not what they are of, and answers."""
    yield from (problem for sheet, _ in signed for problem in sheet.faults)
    yield from (problem for one in read for problem in one.problems)


def _sign(
    project: Project, sheets: Sequence[AnsweredSheet], by: str, day: str
) -> tuple[list[tuple[AnsweredSheet, Signer]], list[Problem]]:
    """The workbooks with who answered them, and what is wrong with those that cannot be taken."""
    signed, refused = list[tuple[AnsweredSheet, Signer]](), list[Problem]()
    for sheet in sheets:
        try:
            check_project(project, sheet)
            signed.append((sheet, find_signer(project, sheet, by, day)))
        except Refused as fault:
            refused += fault.problems
    return signed, refused


def take_tables(file: FilePath, schema: Schema, returned: Returned, by: str = "", on: str = "") -> Taken:
    """The members of tables in a project, each whole or not at all; raises Refused where any cell is at fault."""
    placer = Placer(file, schema)
    signers = tuple(_list_signers(placer, returned, by, on))
    read = _read_tables(placer, returned, signers)
    problems = [problem for one in read for problem in one.problems]
    if problems:
        raise Refused(*problems)
    done = sort_offers(placer.project, (offer for one in read for offer in one.offers))
    tables = tuple(table for table, *_ in returned.tables)
    at_odds = {
        conflict.path[: len(tables[offer.sheet].collection)] for conflict in done.conflicts for offer in conflict.offers
    }
    fresh = [offer for offer in done.fresh if offer.path[: len(tables[offer.sheet].collection)] not in at_odds]
    placed = placer.place(fresh, signers, whole=True)
    if placed.problems or placed.conflicts:
        raise Refused(*placed.problems, *map(_refuse_unread, placed.conflicts))
    notes = tuple(note for *_, told in returned.tables for note in told)
    return Taken(placed, signers, tuple(done.same), tuple(done.conflicts), (), (*notes, *placed.remarks), tables)


def _list_signers(placer: Placer, returned: Returned, by: str, on: str) -> Iterator[tuple[Signer | None, str]]:
    """Who filled in each table for a party, where it says so; raises Refused for one of another project."""
    day = read_call_day(placer.project, on)
    for _, _, told, _ in returned.tables:
        check_project(placer.project, told)
        signed = bool(told.party and (told.by or by))
        yield find_signer(placer.project, told, by, day) if signed else None, FilePath(told.file).name


def _read_tables(placer: Placer, returned: Returned, signers: Sequence[tuple[Signer | None, str]]) -> list[Offered]:
    """The offers of each table; members of one may belong to those of another."""
    converter, read = Converter(), list[Offered]()
    brought: dict[Path, list[str]] = {}
    order = sorted(range(len(returned.tables)), key=lambda number: bool(returned.tables[number][0].owner))
    for number in order:
        table, grid, *_ = returned.tables[number]
        owners = brought.get(table.collection[:1], []) if table.owner else []
        one = list_table_offers(placer.project, grid, table, converter, owners, number)
        signer = signers[number][0]
        one.offers = [offer._replace(who=signer.name if signer else "") for offer in one.offers]
        read.append(one)
        brought.setdefault(table.collection[:1], []).extend(offer.path[1] for offer in one.offers if offer.path[1:])
    return read


def _refuse_unread(conflict: Conflict) -> Problem:
    message = f"the project has {conflict.given!r} there, in {conflict.place}"
    return Problem(message, "correct that first", ".".join(conflict.path), conflict.offers[0].place)


def list_members(offers: Iterable[Offer], depth: int) -> list[tuple[Path, tuple[str, ...]]]:
    """The members that offers are about, each with the fields offered, in the order of the table."""
    grouped = groupby(offers, key=lambda offer: offer.path[:depth])
    return [(member, tuple(".".join(offer.path[depth:]) or offer.text for offer in each)) for member, each in grouped]
