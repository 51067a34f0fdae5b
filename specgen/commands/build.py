"""`specgen build`: the package of a project, written to a folder."""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from specgen.building import build
from specgen.commands import AGAINST, DONE, Outcome, read_file_name
from specgen.model.value_text import count
from specgen.output.writers import default_formats

HELP = "write the package of a project"
ORDER = 30


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, the folder, and what is written there in which form."""
    parser.add_argument("file", metavar="FILE")
    parser.add_argument("--out", metavar="DIR", required=True)
    formats = (
        "docx, html, pdf, xlsx, csv, svg, txt; comma between them; without it all that are installed but svg and txt"
    )
    parser.add_argument("--formats", help=formats)
    parser.add_argument("--only", metavar="ID", action="append", default=[], help="only this document; may be repeated")
    parser.add_argument("--letterhead", metavar="FILE.docx", help="gives page, header, footer and styles")
    parser.add_argument("--templates", metavar="DIR", help="a firm's own words, each in place of ours of the same name")
    parser.add_argument("--since", metavar="PACKAGE", help="marks what differs from this package, as it was issued")
    parser.add_argument("--draft", action="store_true", help="write in spite of stops; marks every page")


def run(args: Namespace) -> Outcome:
    """Write the package; raises Refused where anything stands against it, save in a draft."""
    package = build(
        read_file_name(args.file),
        Path(args.out),
        formats=default_formats() if args.formats is None else tuple(args.formats.split(",")),
        only=tuple(args.only),
        draft=args.draft,
        letterhead=read_file_name(args.letterhead) if args.letterhead is not None else None,
        templates=Path(args.templates) if args.templates is not None else None,
        since=Path(args.since) if args.since is not None else None,
    )
    messages = [*package.notes, f"wrote {count(len(package.files), 'file')} to {args.out}"]
    if package.draft:
        standing = f"{package.standing}; " if package.standing else ""
        messages.append(f"{standing}every page is marked as a draft")
    against = package.judgment.stopped or package.problems
    return Outcome(AGAINST if against else DONE, messages=tuple(messages), problems=package.problems)
