"""`specgen schema`: the JSON Schema of a kind of file, for editors."""

from argparse import ArgumentParser, Namespace

from specgen.commands import Outcome
from specgen.reading.json_schema import FILES, json_schema
from specgen.reading.schema import project_schema

HELP = "JSON Schema for editors"
ORDER = 60
EXAMPLES = (
    ("schema > project.schema.json", "what an editor needs to complete and check a project file"),
    ("schema --file firm > firm.schema.json", "the same for the file of a firm"),
)
READ_ON = "specgen fields tells the same for people"


def arguments(parser: ArgumentParser) -> None:
    """Declare the kind of file."""
    parser.add_argument(
        "--file", metavar="KIND", choices=FILES, default="project", help=f"the kind of file: {', '.join(FILES)}"
    )


def run(args: Namespace) -> Outcome:
    """Give the schema as data."""
    return Outcome(data=json_schema(project_schema(), args.file))
