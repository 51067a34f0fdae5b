"""`specgen record`: site records and mockup readings, judged; or empty ones to fill in."""

from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Sequence
from pathlib import Path

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome, read_file_name
from specgen.commands._project_file import FILE_HELP, find_project_file
from specgen.commands._record_blank import BLANK_HELP, run_blank
from specgen.model.problem import Refused, refuse
from specgen.model.record import COLLECTIONS
from specgen.pipeline import JudgedProject, judge_project, read_with_records
from specgen.terminal.next_command import quote
from specgen.terminal.progress import Tell, show_progress
from specgen.terminal.record_data import record_to_data
from specgen.terminal.record_report import format_record
from specgen.terminal.screen import find_screen

HELP = "judge site records and mockup readings"
ORDER = 42
EXAMPLES = (
    ("record project.yaml", "the records that the project names: each nonconformance, and what is missing"),
    ("record project.yaml june.csv july.csv", "these files as well"),
    ("record project.yaml --out site-record", "a report of nonconformances, filled forms, trends, a list of readings"),
    ("record --blank weather --out june.csv", "an empty record of the weather, to fill in line by line"),
)
ENDS = {
    DONE: "judged, and no nonconformance is open",
    AGAINST: "judged, and a nonconformance is open: no disposition settles it",
    NOT_DONE: "not judged; what is wrong with a file is told with its row",
}
READ_ON = "specgen fields log lists what an entry holds, specgen rules ID tells the reason of a clause"
_JSON = (
    "text, or json: format, project, errors, days (first, last, number), files, entries, counts by state, "
    "open (how many nonconformances), nonconformances (each with disposition and settled), "
    "mockup (criteria, recorded, missing), unsettled (missing and not evaluated, by step and field), "
    "remarks"
)
# A record in one of these forms is no project, so that it may stand alone.
_NO_PROJECT = (".csv", ".xlsx", ".pdf")


def arguments(parser: ArgumentParser) -> None:
    """Declare the project, the record files, the form of the answer, and the folder of the documents."""
    parser.add_argument("file", metavar="FILE", nargs="?", help=FILE_HELP)
    logs = "record files beside those that the project names: YAML, CSV, XLSX, or filled PDF forms"
    parser.add_argument("logs", metavar="LOG", nargs="*", help=logs)
    parser.add_argument("--blank", metavar="KIND", help=BLANK_HELP)
    parser.add_argument("--format", choices=["text", "json"], default="text", help=_JSON)
    parser.add_argument("-o", "--out", metavar="DIR", help="a folder: writes report, filled forms, trends and readings")
    parser.add_argument("--formats", metavar="LIST", help="of what is written: docx, html, pdf, txt; comma between")
    parser.add_argument("--color", choices=["auto", "always", "never"], default="auto", help="auto is on a terminal")


def run(args: Namespace) -> Outcome:
    """Judge the record, or give an empty one; a program that reads data gets its object also where that is refused."""
    try:
        if args.blank is not None:
            return run_blank(args)
        with show_progress(args.quiet) as tell:
            return _judge(args, tell)
    except Refused as refused:
        data = record_to_data(None, None, refused.problems) if args.format == "json" else None
        return Outcome(NOT_DONE, data=data, problems=refused.problems)


def _judge(args: Namespace, tell: Tell) -> Outcome:
    if args.file is not None and args.file.lower().endswith(_NO_PROJECT):
        args.file, args.logs = None, [args.file, *args.logs]
    file = find_project_file(args.file)
    tell("reading the record")
    project = read_with_records(file, _list_further(file, list(map(read_file_name, args.logs))))
    if not any(map(project.records.of, COLLECTIONS)):
        hint = "name a file of it behind the project, or list it there under records"
        raise refuse("there is no site record to judge", hint)
    tell("judging the record")
    case = judge_project(project)
    messages = tuple(_write(args, case, tell)) if args.out is not None else ()
    code = AGAINST if case.records.open else DONE
    if args.format == "json":
        return Outcome(code, data=record_to_data(project, case.records), messages=messages)
    screen = find_screen(args.color)
    text = format_record(project, case.records, _name_command(file, args.logs), screen, args.out or "")
    return Outcome(code, text, messages=messages, painted=screen.painted)


def _list_further(file: Path, logs: Sequence[Path]) -> list[Path]:
    """The record files given, each once."""
    return list({log.resolve(): log for log in logs}.values())


def _name_command(file: Path, logs: Sequence[str]) -> str:
    return " ".join(("specgen record", *map(quote, (str(file), *logs))))


def _write(args: Namespace, case: JudgedProject, tell: Tell) -> Iterator[str]:
    """Write the documents of the record, and tell what was written."""
    from specgen.commands._record_files import write_files  # imported here: it loads more than judging needs

    return write_files(case, args.out, args.formats, tell)
