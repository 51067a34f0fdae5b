"""`specgen grow`: a project file with all that it lacks up to a stage."""

from argparse import ArgumentParser, Namespace

from specgen.commands import DONE, NOT_DONE, Outcome, read_file_name
from specgen.growing import grow
from specgen.model.problem import Problem, Refused
from specgen.model.stage import STAGES
from specgen.output.edited_file import write_edited
from specgen.terminal.grown_file import format_grown
from specgen.terminal.next_command import quote

HELP = "add the missing fields of a stage to a project file"
ORDER = 15
EXAMPLES = (
    (
        "grow project.yaml --for mockup",
        "the fields of the mockup stage, empty below their comments, in the file you have",
    ),
)
ENDS = {DONE: "grown, or nothing was missing", NOT_DONE: "not grown; what is wrong with the file is told with its line"}
READ_ON = "specgen check FILE tells what is open then; the README tells the stages"


def arguments(parser: ArgumentParser) -> None:
    """Declare the file and the stage."""
    parser.add_argument("file", metavar="FILE", help="the project file; it is kept as it was beside the grown one")
    stages = "all that is asked for up to this stage"
    parser.add_argument("--for", dest="stage", choices=STAGES, required=True, help=stages)


def run(args: Namespace) -> Outcome:
    """Add what is missing; raises Refused where the file has faults, or has changed meanwhile."""
    if args.file == "-":
        message, hint = "standard input cannot be grown: the fields are added to a file", "save it and name the file"
        raise Refused(Problem(message, hint))
    file = read_file_name(args.file)
    grown = grow(file, args.stage)
    changed = grown.edit.source != grown.before
    kept = write_edited(file, grown.before, grown.edit.source) if changed else ""
    text = format_grown(grown.edit, (grown.old_purpose, grown.purpose), grown.elsewhere, kept)
    fill = "fill in what stands empty, then " if changed else ""
    return Outcome(text=text, messages=(f"next: {fill}specgen check {quote(args.file)}",))
