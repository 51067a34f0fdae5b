"""`specgen new`: a commented starter file."""

from argparse import ArgumentParser, Namespace

from specgen.commands import Outcome, read_file_name
from specgen.output.disk import write_new
from specgen.reading.schema import project_schema
from specgen.terminal.starter import RINGS, format_starter

HELP = "a commented starter file; never overwrites"
ORDER = 10
EXAMPLES = (
    ("new project.yaml", "a file for the first answer: can these walls be built so"),
    ("new project.yaml --for mockup --units si", "a file for the submittal of a mockup, in metric units"),
)
READ_ON = "specgen fields PATH tells what a field takes and who gives it; specgen check FILE what is open"


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, the ring it is for and the system of units."""
    parser.add_argument("file", metavar="FILE", help="the file to write, which must not exist yet")
    parser.add_argument("--for", dest="ring", choices=RINGS, default="verdict", help="the stage that the file is for")
    parser.add_argument(
        "--units", choices=["ip", "si"], default="ip", help="units of the examples: inches and pounds, or metric"
    )


def run(args: Namespace) -> Outcome:
    """Write the starter; raises Refused where the file exists."""
    write_new(read_file_name(args.file), format_starter(project_schema(), args.ring, args.units))
    return Outcome(messages=(f"wrote {args.file}; next: specgen check {args.file}",))
