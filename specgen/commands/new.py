"""`specgen new`: a commented starter file."""

from argparse import ArgumentParser, Namespace

from specgen.commands import Outcome, read_file_name
from specgen.output.disk import write_new
from specgen.reading.schema import project_schema
from specgen.terminal.starter import RINGS, format_starter

HELP = "a commented starter file; never overwrites"
ORDER = 10


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, the ring it is for and the system of units."""
    parser.add_argument("file", metavar="FILE")
    parser.add_argument("--for", dest="ring", choices=RINGS, default="verdict")
    parser.add_argument("--units", choices=["ip", "si"], default="ip")


def run(args: Namespace) -> Outcome:
    """Write the starter; raises Refused where the file exists."""
    write_new(read_file_name(args.file), format_starter(project_schema(), args.ring, args.units))
    return Outcome(messages=(f"wrote {args.file}; next: specgen check {args.file}",))
