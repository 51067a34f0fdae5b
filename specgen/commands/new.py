"""`specgen new`: a starter of a project file, or of a file beside it."""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from specgen.commands import Outcome, read_file_name
from specgen.model.problem import refuse
from specgen.model.stage import STAGES
from specgen.output.disk import write_new
from specgen.reading.schema import project_schema
from specgen.reading.side_files import SIDE_FILES
from specgen.terminal.next_command import quote
from specgen.terminal.starter import format_side_starter, format_starter

HELP = "a commented starter file; never overwrites"
ORDER = 10
EXAMPLES = (
    ("new project.yaml", "a file for the first answer: can these walls be built so"),
    ("new project.yaml --for mockup --units si", "a file for the submittal of a mockup, in metric units"),
    ("new project.yaml --ask", "about twenty questions on one wall, and the verdict as it forms"),
)
READ_ON = "specgen fields PATH tells what a field takes and who gives it; specgen check FILE what is open"


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, what it is for, the system of units, and whether it is asked for."""
    parser.add_argument("file", metavar="FILE", help="the file to write, which must not exist yet")
    kind = parser.add_mutually_exclusive_group()
    stages = f"a project file with all that is asked for up to a stage: {', '.join(STAGES)}; else the first"
    kind.add_argument("--for", dest="stage", metavar="STAGE", choices=STAGES, default="verdict", help=stages)
    sides = "a file beside the project file: firm, the firm's own, or coating_system, the manufacturer's figures"
    kind.add_argument("--file", dest="side", metavar="KIND", choices=list(SIDE_FILES), help=sides)
    units = "units of the examples: inches and pounds, or metric"
    parser.add_argument("--units", choices=["ip", "si"], default="ip", help=units)
    asks = "ask, question by question, for what decides whether a wall can take the finish"
    parser.add_argument("--ask", action="store_true", help=asks)


def run(args: Namespace) -> Outcome:
    """Write the starter; raises Refused where the file exists."""
    if args.ask:
        return _ask(args)
    if args.side:
        text = format_side_starter(project_schema(), args.side, args.units)
        named = f"; a project file beside it names it by the line {args.side}: {Path(args.file).name}"
    else:
        text, named = format_starter(project_schema(), args.stage, args.units), ""
    write_new(read_file_name(args.file), text)
    return Outcome(messages=(f"wrote {args.file}{named}; next: fill it in, then specgen check {quote(args.file)}",))


def _ask(args: Namespace) -> Outcome:
    from specgen.commands._new_by_asking import new_by_asking  # imported here: it loads the rules

    if args.side:
        raise refuse("--ask is for a project file", f"leave out --ask or --file {args.side}")
    return new_by_asking(args)
