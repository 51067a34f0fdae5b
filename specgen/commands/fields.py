"""`specgen fields`: the list of fields, or the manual of one."""

from argparse import ArgumentParser, Namespace

from specgen.commands import Outcome
from specgen.model.field import Schema, dotted_path
from specgen.model.problem import Refused, refuse
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
    catalogue, path = project_schema(), tuple(args.path.split(".")) if args.path else ()
    if path in catalogue.fields:  # record files leave out the star, which the tree has
        return Outcome(text=field_page(catalogue.fields[path]))
    try:
        node = catalogue.node(path)
    except KeyError:
        raise _refuse(catalogue, args.path) from None
    if node.field is not None:
        return Outcome(text=field_page(node.field))
    listed = field_list(catalogue, node.path)
    if not listed:
        raise _refuse(catalogue, args.path)
    head = collection_line(node.collection) + "\n" if node.collection is not None else ""
    return Outcome(text=head + align_columns(listed))


def _refuse(catalogue: Schema, path: str) -> Refused:
    known = [dotted_path(field) for field in catalogue.fields]
    return refuse(f"there is no field {path!r}", suggest(path, known))
