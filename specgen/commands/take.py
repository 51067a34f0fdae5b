"""`specgen take`: answers of others, from workbooks or a table, into the user's own file."""

from argparse import ArgumentParser, Namespace
from collections.abc import Iterable
from pathlib import Path

from specgen.asking.tables import find_table_named, list_tables
from specgen.asking.taking import Taken, read_returned, take_answers, take_tables
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


def arguments(parser: ArgumentParser) -> None:
    """Declare the project, the workbooks that came back, and what they are."""
    parser.add_argument(
        "file", metavar="FILE", help="the project file, which is edited and kept as it was beside itself"
    )
    parser.add_argument("answers", metavar="ANSWERS.xlsx", nargs="+", help="workbooks of questions and tables")
    names = [table.name for table in list_tables()]
    told = f"ANSWERS is a table that does not say of what, XLSX or CSV: {', '.join(names)}"
    parser.add_argument("--as", dest="table", metavar="TABLE", help=told)
    parser.add_argument("--by", metavar="NAME", default="", help="who answered, where a workbook does not say")
    parser.add_argument("--on", metavar="DATE", default="", help="when, where a workbook does not say")
    parser.add_argument("--all-or-nothing", action="store_true", help="take nothing where anything cannot be taken")


def run(args: Namespace) -> Outcome:
    """Take what can be taken, and write it in one step; raises Refused where a workbook cannot be read."""
    file, schema = read_file_name(args.file), project_schema()
    if args.table and len(args.answers) > 1:
        raise refuse("--as takes one table", "name one file")
    returned = read_returned(args.answers, find_table_named(args.table) if args.table else None)
    taken: list[Taken] = []
    if returned.tables:
        taken.append(take_tables(file, schema, returned, args.by, args.on))
    if returned.sheets:
        edited = taken[0].placed.after if taken else None
        taken.append(take_answers(file, schema, returned.sheets, args.by, args.on, edited))
    problems = (*returned.refused, *(problem for one in taken for problem in one.problems))
    against = bool(problems) or any(one.conflicts for one in taken)
    if against and args.all_or_nothing:
        nothing = Problem("nothing was taken, as --all-or-nothing asks", "mend the above, or leave that away")
        return Outcome(NOT_DONE, _format(one.without() for one in taken), problems=(*problems, nothing))
    messages = tuple(_write(taken, args.file))
    return Outcome(AGAINST if against else DONE, _format(taken), messages=messages, problems=problems)


def _format(taken: Iterable[Taken]) -> str:
    return "\n\n".join(map(format_taken, taken))


def _write(taken: list[Taken], shown: str) -> list[str]:
    """Write the edited files, those beside the project first; what is told of each."""
    told, before, after = list[str](), dict[Path, bytes](), dict[Path, bytes]()
    for one in taken:
        before = one.placed.before | before
        after |= one.placed.after
    for file, content in reversed(after.items()):
        if content != before[file]:
            told.append(f"wrote {file}; as it was, it is kept as {write_edited(file, before[file], content)}")
    return [*told, f"next: specgen check {shown}"] if told else []
