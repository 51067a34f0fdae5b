"""`specgen new`: a starter of a project file, or of a file beside it."""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from specgen.commands import Outcome, read_file_name
from specgen.output.disk import write_new
from specgen.reading.schema import project_schema
from specgen.reading.side_files import SIDE_FILES
from specgen.terminal.starter import PURPOSES, format_side_starter, format_starter

HELP = "a commented starter file; never overwrites"
ORDER = 10


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, what it is for, and the system of units."""
    parser.add_argument("file", metavar="FILE")
    kind = parser.add_mutually_exclusive_group()
    stages = "a project file with all that is asked for up to this stage; verdict where nothing is said"
    kind.add_argument("--for", dest="stage", choices=list(PURPOSES), default="verdict", help=stages)
    sides = "a file beside the project file: the firm's own, or that of the coating manufacturer"
    kind.add_argument("--file", dest="side", choices=list(SIDE_FILES), help=sides)
    parser.add_argument("--units", choices=["ip", "si"], default="ip")


def run(args: Namespace) -> Outcome:
    """Write the starter; raises Refused where the file exists."""
    if args.side:
        text = format_side_starter(project_schema(), args.side, args.units)
        named = f"; a project file beside it names it by the line {args.side}: {Path(args.file).name}"
    else:
        text, named = format_starter(project_schema(), args.stage, args.units), ""
    write_new(read_file_name(args.file), text)
    return Outcome(messages=(f"wrote {args.file}{named}; next: fill it in, then specgen check {args.file}",))
