"""`specgen fields`: the list of fields, or the manual of one."""

from argparse import ArgumentParser, Namespace

from specgen.commands import Outcome
from specgen.model.field import dotted_path
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.reading.schema import project_schema
from specgen.terminal.columns import align_columns
from specgen.terminal.field_page import collection_line, field_list, field_page

HELP = "the fields, or the manual of one"
ORDER = 50


def arguments(parser: ArgumentParser) -> None:
    """Declare the path of a field or section, which may be left out."""
    parser.add_argument("path", metavar="PATH", nargs="?")


def run(args: Namespace) -> Outcome:
    """List the fields, or those below a path, or tell one; raises Refused with the nearest path."""
    catalogue = project_schema()
    try:
        node = catalogue.node(tuple(args.path.split(".")) if args.path else ())
    except KeyError:
        known = [dotted_path(path) for path in catalogue.fields]
        raise refuse(f"there is no field {args.path!r}", suggest(args.path, known)) from None
    if node.field is not None:
        return Outcome(text=field_page(node.field))
    head = collection_line(node.collection) + "\n" if node.collection is not None else ""
    return Outcome(text=head + align_columns(field_list(catalogue, node.path)))
