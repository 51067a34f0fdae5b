"""`specgen fields`: the list of fields, the manual of one, or those that tell of a word."""

from argparse import ArgumentParser, Namespace
from collections.abc import Sequence

from specgen.commands import Outcome
from specgen.model.field import Field, Node, Path, Schema, dotted_path
from specgen.model.problem import Refused, refuse
from specgen.model.suggest import find_slip, suggest
from specgen.reading.schema import project_schema
from specgen.terminal.field_page import (
    collection_line,
    field_page,
    field_to_data,
    find_fields,
    format_fields,
    format_meanings,
    list_fields,
)

HELP = "the fields, or the manual of one"
ORDER = 50
EXAMPLES = (
    ("fields walls.*.attachment", "the fields of a section"),
    ("fields walls.*.attachment.method", "the manual of one: why it is asked, what it takes, who gives it"),
    ("fields foam", "every field that tells of foam in its name, reason or choices"),
)
READ_ON = "specgen new FILE writes them to a file of your own"
_JSON = (
    "text, or json: format, fields; of each path, label, why, kind, units, choices, refers_to, least, most, stage, "
    "owed_by, condition, default, file, example; null or an empty list for what it has not"
)


def arguments(parser: ArgumentParser) -> None:
    """Declare the path of a field or section, or words, which may be left out, and the form of the answer."""
    parser.add_argument("path", metavar="PATH", nargs="*", help="a field, a section, or words to look for")
    parser.add_argument("--format", choices=["text", "json"], default="text", help=_JSON)


def run(args: Namespace) -> Outcome:
    """List the fields, or those below a path or with all words, or tell one; raises Refused with the nearest path."""
    fields, text = _find(project_schema(), args.path)
    if args.format == "json":
        return Outcome(data={"format": 1, "fields": list(map(field_to_data, fields))})
    return Outcome(text=text)


def _find(schema: Schema, words: Sequence[str]) -> tuple[list[Field], str]:
    """The fields that are asked for, and what is told of them."""
    path = tuple(words[0].split(".")) if len(words) == 1 else ()
    if path in schema.fields:  # record files leave out the star, which the tree has
        return [schema.fields[path]], field_page(schema.fields[path])
    path = _add_stars(schema.root, path)
    try:
        node = schema.node(path) if len(words) < 2 else None
    except KeyError:
        node = None
    if node is not None and node.field is not None:
        return [node.field], field_page(node.field)
    below = list_fields(schema, node.path) if node is not None else []
    if node is not None and below:
        return below, _head(node) + format_fields(below)
    found = find_fields(schema, words)
    if not found:
        raise _refuse(schema, " ".join(words), path)
    meanings = format_meanings(schema, " ".join(words))
    return found, f"{meanings}\n{format_fields(found)}" if meanings else format_fields(found)


def _head(node: Node) -> str:
    """What a collection is, with a line below it; nothing of any other section."""
    return collection_line(node.collection) + "\n" if node.collection is not None else ""


def _add_stars(root: Node, path: Path) -> Path:
    """The path with the stars that it leaves out before the name of a field or section, misspelled or not."""
    node: Node | None = root
    whole: list[str] = []
    for name in path:
        if node and node.star and name != "*" and find_slip(name, node.star.children):
            whole.append("*")
            node = node.star
        whole.append(name)
        node = node.below(name) if node else None
    return tuple(whole)


def _refuse(schema: Schema, asked: str, path: Path) -> Refused:
    """Tell the nearest name where the path leaves the tree, and where there is none the nearest field."""
    node = schema.root
    for name in path:
        below = node.below(name)
        if below is None:
            meant = node.children.get(find_slip(name, node.children))
            if meant is not None:
                near = meant.field.path if meant.field else meant.path
                return refuse(f"there is no field {asked!r}", f"did you mean {dotted_path(near)}?")
            break
        node = below
    return refuse(f"there is no field {asked!r}", suggest(asked, map(dotted_path, schema.fields)))
