"""`specgen take`: answers of others, from workbooks or a table, into the user's own file."""

from argparse import ArgumentParser, Namespace

from specgen.asking.answer_sheet import TABLES
from specgen.asking.taking import Taken, take_answers, take_table
from specgen.asking.telling import format_taken
from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome, read_file_name
from specgen.model.problem import Problem, refuse
from specgen.output.edited_file import write_edited
from specgen.reading.schema import project_schema

HELP = "take answers of others into a project; never overwrites"
ORDER = 24
EXAMPLES = (
    ("take project.yaml sheets/architect.xlsx", "the answers of a workbook that came back"),
    ("take project.yaml openings.csv --as openings", "a table of members, in place of typing them"),
    (
        "take project.yaml mail.xlsx --by 'L. Ferrow' --on 2027-02-01",
        "who answered and when, where the workbook does not say",
    ),
)
ENDS = {
    DONE: "taken",
    AGAINST: "taken, save what is listed: an answer that cannot be read, or a value that stands already",
    NOT_DONE: "nothing was taken; one line says why",
}
READ_ON = "specgen ask FILE writes the workbooks; the file as it was is kept beside it"
_TABLES = {table.name: table for table in TABLES}


def arguments(parser: ArgumentParser) -> None:
    """Declare the project, the workbooks that came back, and what they are."""
    parser.add_argument(
        "file", metavar="FILE", help="the project file, which is edited and kept as it was beside itself"
    )
    parser.add_argument("answers", metavar="ANSWERS.xlsx", nargs="+", help="workbooks of questions, or one table")
    parser.add_argument("--as", dest="table", choices=list(_TABLES), help="ANSWERS is a table of these, XLSX or CSV")
    parser.add_argument("--by", metavar="NAME", default="", help="who answered, where a workbook does not say")
    parser.add_argument("--on", metavar="DATE", default="", help="when, where a workbook does not say")
    parser.add_argument("--all-or-nothing", action="store_true", help="take nothing where anything cannot be taken")


def run(args: Namespace) -> Outcome:
    """Take what can be taken, and write it in one step; raises Refused where a workbook cannot be read."""
    file, schema = read_file_name(args.file), project_schema()
    if args.table and len(args.answers) > 1:
        raise refuse("--as takes one table", "name one file")
    if args.table:
        table = _TABLES[args.table]
        taken, depth = take_table(file, schema, args.answers[0], table), len(table.collection)
    else:
        taken, depth = take_answers(file, schema, args.answers, args.by, args.on), 0
    against = bool(taken.problems or taken.conflicts)
    if against and args.all_or_nothing:
        nothing = Problem("nothing was taken, as --all-or-nothing asks", "mend the above, or leave that away")
        return Outcome(NOT_DONE, format_taken(taken.without(), depth), problems=(*taken.problems, nothing))
    return Outcome(
        AGAINST if against else DONE,
        format_taken(taken, depth),
        messages=tuple(_write(taken, args.file)),
        problems=taken.problems,
    )


def _write(taken: Taken, shown: str) -> list[str]:
    """Write the edited files, those beside the project first; what is told of each."""
    told = []
    for file, after in reversed(taken.placed.after.items()):
        before = taken.placed.before[file]
        if after != before:
            told.append(f"wrote {file}; as it was, it is kept as {write_edited(file, before, after)}")
    return [*told, f"next: specgen check {shown}"] if told else []
