"""`specgen compare`: what differs between two states of a project."""

from argparse import ArgumentParser, Namespace
from dataclasses import asdict
from pathlib import Path

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome
from specgen.commands._project_file import find_two
from specgen.comparing import compare_files, write_change_sheet
from specgen.model.problem import Refused, refuse
from specgen.model.suggest import suggest
from specgen.model.value_text import count
from specgen.terminal.changes import changes_to_data, format_changes

HELP = "what differs between two project files, or since a package"
ORDER = 32
EXAMPLES = (
    ("compare old.yaml new.yaml", "what changed: data, verdicts, rules, figures, documents"),
    ("compare issued project.yaml --out changes", "the same since a package, written as a document too"),
)
ENDS = {DONE: "nothing differs", AGAINST: "something differs", NOT_DONE: "not compared; one line says why"}
READ_ON = "specgen build --since PACKAGE marks what changed in the documents themselves"
_FORMATS = ("docx", "html", "txt")
_JSON = (
    "text, or json: format, old, new, errors, changed, issue, fields, limits, verdicts, rules, results, times, "
    "open (added, closed), documents_required (added, dropped), "
    "documents; old and new of a value in ip and si, null for none"
)


def arguments(parser: ArgumentParser) -> None:
    """Declare the two states, the form of the answer, and the folder of a change sheet."""
    parser.add_argument("old", metavar="OLD", help="a project file, or the folder of a package as it was issued")
    parser.add_argument("new", metavar="NEW", help="a project file; - for one of the two reads standard input")
    parser.add_argument("--format", choices=["text", "json"], default="text", help=_JSON)
    parser.add_argument("-o", "--out", metavar="DIR", help="a folder: writes a change sheet there, as a document")
    parser.add_argument(
        "--formats", default="docx,html", metavar="LIST", help="of the change sheet: docx, html, txt; comma between"
    )


def run(args: Namespace) -> Outcome:
    """Compare the two; a program that reads the data gets its object also where that is refused."""
    try:
        return _compare(args)
    except Refused as refused:
        errors = map(asdict, refused.problems)
        data = changes_to_data(args.old, args.new, None, errors) if args.format == "json" else None
        return Outcome(NOT_DONE, data=data, problems=refused.problems)


def _read_formats(listed: str) -> tuple[str, ...]:
    """The formats of the change sheet; raises Refused for one it is not written in."""
    formats = tuple(listed.split(","))
    for name in formats:
        if name not in _FORMATS:
            hint = suggest(name, list(_FORMATS))
            raise refuse(f"a change sheet is not written as {name!r}", hint)
    return formats


def _compare(args: Namespace) -> Outcome:
    formats = _read_formats(args.formats)
    comparison = compare_files(*find_two(args.old, args.new))
    outcome = Outcome(DONE if comparison.changes.none else AGAINST)
    if args.out is not None:
        names = write_change_sheet(comparison, Path(args.out), formats)
        outcome = outcome._replace(messages=(f"wrote {count(len(names), 'file')} to {args.out}",))
    if args.format == "json":
        return outcome._replace(data=changes_to_data(args.old, args.new, comparison.changes))
    return outcome._replace(text=format_changes(comparison.changes, comparison.context.first))
