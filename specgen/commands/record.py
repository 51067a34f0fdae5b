"""`specgen record`: site records and mockup readings, judged; or empty ones to fill in."""

from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome, read_file_name
from specgen.commands._elevation import find_elevation, list_panels_of
from specgen.commands._project_file import FILE_HELP, USUAL, find_project_file
from specgen.commands._record_blank import BLANK_HELP, run_blank
from specgen.model.problem import Refused, refuse
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS
from specgen.pipeline import JudgedProject, judge_project, read_with_records
from specgen.reading.conversion import InvalidValue
from specgen.reading.days import read_day
from specgen.recording.narrowing import Part, ToldRecord, narrow, refuse_other_day
from specgen.recording.together import list_unknown_panels
from specgen.terminal.next_command import quote
from specgen.terminal.progress import Tell, show_progress
from specgen.terminal.record_data import record_to_data
from specgen.terminal.record_report import RecordReport, format_record
from specgen.terminal.screen import find_screen

HELP = "judge site records and mockup readings"
ORDER = 42
EXAMPLES = (
    ("record project.yaml", "the records that the project names: each nonconformance, and what is missing"),
    ("record project.yaml june.csv july.csv", "these files as well"),
    ("record project.yaml --elevation E1 --on 2027-07-14", "what was read and found on one elevation, on one day"),
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
    "text, or json: format, project, errors, part (elevation, on, of: numbers of the whole), "
    "days (first, last, number), files, entries, counts by state, "
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
    parser.add_argument("--elevation", metavar="E", help="only what was recorded on this elevation")
    parser.add_argument("--on", metavar="DAY", help="only what was recorded on this day, such as 2027-07-14")
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
        data = record_to_data(None, refused.problems) if args.format == "json" else None
        return Outcome(NOT_DONE, data=data, problems=refused.problems)


def _judge(args: Namespace, tell: Tell) -> Outcome:
    if args.file is not None and args.file.lower().endswith(_NO_PROJECT):
        args.file, args.logs = None, [args.file, *args.logs]
    file = _find_project(args)
    tell("reading the record")
    project = read_with_records(file, _list_further(file, list(map(read_file_name, args.logs))))
    if not any(map(project.records.of, COLLECTIONS)):
        hint = "name a file of it behind the project, or list it there under records"
        raise refuse("there is no site record to judge", hint)
    part = _find_part(project, args)
    tell("judging the record")
    case = judge_project(project)
    report = _make_report(case, part)
    messages = tuple(_write(args, case, tell)) if args.out is not None else ()
    code = AGAINST if report.told.judgment.open else DONE
    if args.format == "json":
        return Outcome(code, data=record_to_data(report), messages=messages)
    screen = find_screen(args.color)
    text = format_record(report, _name_command(file, args.logs), screen, args.out or "")
    return Outcome(code, text, messages=messages, painted=screen.painted)


def _find_project(args: Namespace) -> Path:
    """The project of the records; raises Refused where records are named alone and the folder has none."""
    try:
        return find_project_file(args.file)
    except Refused:
        if args.file is None and args.logs:
            hint = f"write specgen record PROJECT {' '.join(map(quote, args.logs))}"
            raise refuse(f"{args.logs[0]} is a record, and the folder has no {USUAL}", hint) from None
        raise


def _find_part(project: Project, args: Namespace) -> Part:
    """The part of the record that is asked about; raises Refused for an elevation or a day that it does not have."""
    on = None
    try:
        if args.on is not None:
            on = date.fromisoformat(read_day(args.on, project.system))
    except InvalidValue as wrong:
        raise refuse(f"--on: {wrong}", wrong.hint) from None
    part = Part(find_elevation(project, args.elevation), on)
    if on is not None:
        refuse_other_day(project.records, on)
    if args.out is not None and not part.is_whole:
        raise refuse("--out writes the whole record", "leave out --elevation and --on")
    return part


def _make_report(case: JudgedProject, part: Part) -> RecordReport:
    """What is told of a record, with the panels that no layout has."""
    whole = ToldRecord(case.project.records, case.records)
    told = narrow(whole, part)
    marks = case.project.members.get(("elevations",), ())
    remarks = list_unknown_panels(told.records.of("log"), marks, list_panels_of(case.project))
    records = replace(told.records, remarks=(*told.records.remarks, *remarks))
    return RecordReport(case.project, whole, part, told._replace(records=records))


def _list_further(file: Path, logs: Sequence[Path]) -> list[Path]:
    """The record files given, each once."""
    return list({log.resolve(): log for log in logs}.values())


def _name_command(file: Path, logs: Sequence[str]) -> str:
    return " ".join(("specgen record", *map(quote, (str(file), *logs))))


def _write(args: Namespace, case: JudgedProject, tell: Tell) -> Iterator[str]:
    """Write the documents of the record, and tell what was written."""
    from specgen.commands._record_files import write_files  # imported here: it loads more than judging needs

    return write_files(case, args.out, args.formats, tell)
