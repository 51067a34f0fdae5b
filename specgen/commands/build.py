"""`specgen build`: the package of a project, written to a folder."""

from argparse import ArgumentParser, Namespace
from collections.abc import Iterable
from pathlib import Path

from specgen.building import BuiltPackage, build
from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome, read_file_name
from specgen.commands._project_file import FILE_HELP, find_project_file
from specgen.model.value_text import count
from specgen.output.writers import default_formats
from specgen.terminal.progress import Tell, show_progress

HELP = "write the package of a project"
ORDER = 30
EXAMPLES = (
    ("build project.yaml --out package", "the whole package, once nothing stops it"),
    ("build project.yaml --out draft --draft", "all that can be written now, every page marked as a draft"),
    ("build project.yaml --out plan --only D09,D10 --formats docx", "two documents, for Word alone"),
    ("build project.yaml --out next --since issued", "the next issue, with what changed since the last one marked"),
)
ENDS = {
    DONE: "written",
    AGAINST: "written, and something stands against it: stops in a draft, an attachment that is not bound in",
    NOT_DONE: "nothing was written; one line says why",
}
READ_ON = "specgen check FILE lists what stops a package; the README tells of letterhead and templates"


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, the folder, and what is written there in which form."""
    parser.add_argument("file", metavar="FILE", nargs="?", help=FILE_HELP)
    parser.add_argument("-o", "--out", metavar="DIR", required=True, help="the folder of the package")
    formats = (
        "docx, html, pdf, xlsx, csv, svg, txt; comma between them; without it all that are installed but svg and txt"
    )
    parser.add_argument("--formats", metavar="LIST", help=formats)
    only = "only these documents, such as D09,D10; may be repeated"
    parser.add_argument("--only", metavar="IDS", action="append", default=[], help=only)
    parser.add_argument("--letterhead", metavar="FILE.docx", help="gives page, header, footer and styles")
    parser.add_argument("--templates", metavar="DIR", help="a firm's own words, each in place of ours of the same name")
    parser.add_argument("--since", metavar="PACKAGE", help="marks what differs from this package, as it was issued")
    parser.add_argument("--draft", action="store_true", help="write in spite of stops; marks every page")


def run(args: Namespace) -> Outcome:
    """Write the package; raises Refused where anything stands against it, save in a draft."""
    with show_progress(args.quiet) as tell:
        package = _build(args, tell)
    messages = [*package.notes, f"wrote {count(len(package.files), 'file')} to {args.out}"]
    if package.draft:
        standing = f"{package.standing}; " if package.standing else ""
        messages.append(f"{standing}every page is marked as a draft")
    against = package.judgment.stopped or package.problems
    return Outcome(AGAINST if against else DONE, messages=tuple(messages), problems=package.problems)


def _build(args: Namespace, tell: Tell) -> BuiltPackage:
    return build(
        find_project_file(args.file),
        Path(args.out),
        formats=default_formats() if args.formats is None else tuple(args.formats.split(",")),
        only=_split(args.only),
        draft=args.draft,
        letterhead=read_file_name(args.letterhead) if args.letterhead is not None else None,
        templates=Path(args.templates) if args.templates is not None else None,
        since=Path(args.since) if args.since is not None else None,
        tell_step=tell,
    )


def _split(listed: Iterable[str]) -> tuple[str, ...]:
    """The ids of documents, each once, whether a comma stands between them or each has its own option."""
    return tuple(dict.fromkeys(one.strip() for ids in listed for one in ids.split(",")))
