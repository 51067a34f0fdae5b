"""`specgen ask`: the questions that a project leaves open, as sheets for those who owe the answers."""

from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Sequence
from pathlib import Path
from shlex import quote

from specgen.asking.files import (
    QUESTION_FORMATS,
    TABLE_FORMATS,
    can_write_workbooks,
    check_formats,
    make_question_files,
    make_table_files,
)
from specgen.asking.questions import Asked, PartySheet, find_role, gather_sheets
from specgen.asking.recipients import Recipient, list_apart, list_recipients
from specgen.asking.tables import list_tables
from specgen.commands import DONE, NOT_DONE, Outcome, read_file_name
from specgen.commands._stages import check_for
from specgen.documents.context import DocumentContext
from specgen.model.problem import refuse
from specgen.model.stage import STAGES
from specgen.model.value_text import count, long_date, words
from specgen.output.sheet_folder import write_sheets

HELP = "question sheets for those who owe answers"
ORDER = 22
EXAMPLES = (
    ("ask project.yaml --out sheets", "a sheet for each party that owes something, to send and to fill in"),
    ("ask project.yaml --party architect --out sheets", "that of the architect alone"),
    ("ask project.yaml --table openings --out sheets", "a table of all openings, to fill in line by line"),
)
ENDS = {DONE: "written, or nobody is asked for anything", NOT_DONE: "nothing was written; one line says why"}
READ_ON = "specgen take FILE ANSWERS.xlsx puts the answers into the project"
_NO_WORKBOOKS = "no workbooks are written: install specgen with its extra sheets to fill answers in and take them back"


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, the folder, and who is asked for what in which form."""
    parser.add_argument("file", metavar="FILE", help="the project file")
    parser.add_argument("-o", "--out", metavar="DIR", required=True, help="the folder of the sheets")
    parser.add_argument("--party", metavar="PARTY", help="only this party, such as architect or eifs_source")
    parser.add_argument("--for", dest="stage", choices=STAGES, help="up to this stage; else that of the purpose")
    parser.add_argument(
        "--table", metavar="TABLE", help=f"a table in its place: {', '.join(t.name for t in list_tables())}"
    )
    parser.add_argument("--formats", help="docx, xlsx; for a table xlsx, csv; comma between them")


def run(args: Namespace) -> Outcome:
    """Write the sheets, or the table; raises Refused where that cannot be done."""
    if args.table is not None and (args.party or args.stage):
        raise refuse("a table is asked of no party and for no stage", "leave out --party and --for")
    case, stage = check_for(read_file_name(args.file), args.stage or "")
    context = DocumentContext(case.project, case.context.standards, case.judgment, case.context.resolve)
    return _write_table(args, context) if args.table is not None else _write_questions(args, context, stage)


def _write_table(args: Namespace, context: DocumentContext) -> Outcome:
    formats = _choose_formats(args.formats, TABLE_FORMATS, ("xlsx",) if can_write_workbooks() else ("csv",))
    files = make_table_files(context, args.table, formats)
    told = _write(args.out, files, context, args.table, add=True)
    name = next(iter(files))
    of = "" if name.endswith(".xlsx") else f" --as {name.rpartition('.')[0]}"
    return Outcome(DONE, messages=(*told, f"next: specgen take {quote(args.file)} {_place(args, name)}{of}"))


def _write_questions(args: Namespace, context: DocumentContext, stage: str) -> Outcome:
    role = find_role(context, args.party) if args.party else ""
    formats = _choose_formats(args.formats, QUESTION_FORMATS, QUESTION_FORMATS if can_write_workbooks() else ("docx",))
    asked = gather_sheets(context, stage)
    sheets = [sheet for sheet in asked.sheets if role in ("", sheet.role)]
    if not sheets:
        of = f" of the {words(role)}" if role else ""
        return Outcome(DONE, messages=(f"nothing is asked{of} up to the stage {stage}; nothing was written",))
    recipients = list_apart(sheets) if role else list_recipients(context, sheets)
    files = make_question_files(context, recipients, formats)
    told = _write(args.out, files, context, stage, add=bool(role))
    return Outcome(DONE, messages=tuple(_tell(args, asked, recipients, told, stage)))


def _choose_formats(asked: str | None, known: tuple[str, ...], usual: tuple[str, ...]) -> tuple[str, ...]:
    formats = usual if asked is None else tuple(name.strip() for name in asked.split(","))
    check_formats(formats, known)
    return formats


def _write(out: str, files: dict[str, bytes], context: DocumentContext, holds: str, *, add: bool) -> list[str]:
    removed = write_sheets(Path(out), files, str(context.project.value(("project", "name"))), holds, add=add)
    return [*removed, f"wrote {count(len(files), 'file')} to {out}"]


def _tell(args: Namespace, asked: Asked, recipients: Sequence[Recipient], told: list[str], stage: str) -> Iterator[str]:
    """A line for each party, what is left to later stages, what was written, and what follows."""
    for recipient in recipients:
        yield from map(_tell_sheet, recipient.sheets)
    if asked.later and stage != STAGES[-1]:
        later = STAGES[STAGES.index(stage) + 1]
        yield f"left to later stages: {count(asked.later, 'question')}; --for {later} asks the next of them"
    yield from told
    if args.formats is None and not can_write_workbooks():
        yield _NO_WORKBOOKS
    elif args.formats is None or "xlsx" in args.formats:
        for recipient in recipients:
            if len(recipient.sheets) > 1:
                yield f"in {recipient.file}.xlsx: {', '.join(one.title for one in recipient.sheets)}"
        name = f"{recipients[0].file}.xlsx"
        yield f"next, when it comes back: specgen take {quote(args.file)} {_place(args, name)}"


def _tell_sheet(sheet: PartySheet) -> str:
    parts = [count(len(sheet.questions), "question")] if sheet.questions else []
    parts += [count(len(sheet.wanted), "item") + " to send"] if sheet.wanted else []
    parts += [f"{count(len(sheet.tables), 'table')} ({', '.join(sheet.tables)})"] if sheet.tables else []
    due = f", by {long_date(sheet.return_by)}" if sheet.return_by else ""
    return f"{sheet.title}: {', '.join(parts)}{due}"


def _place(args: Namespace, name: str) -> str:
    """A file of the folder as it is typed on the command line."""
    return quote(str(Path(args.out) / name))
