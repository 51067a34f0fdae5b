"""`specgen calc`: one sum from keys, or all of a name in a project."""

from argparse import ArgumentParser, Namespace
from collections.abc import Sequence

from specgen import computing
from specgen.commands import Outcome
from specgen.computing.arguments import direct, find_span
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.resolving.provider import Provider
from specgen.terminal.answers import format_overview, format_table
from specgen.terminal.calculation_page import format_calculation
from specgen.terminal.columns import align_columns
from specgen.terminal.streams import find_table_width
from specgen.terminal.working import answers_to_data, format_members, format_working, working_to_data

HELP = "one sum with its working, or all of that name in a project"
ORDER = 80
EXAMPLES = (
    ("calc", "the calculations with their keys; one in brackets may be left out"),
    ("calc dew-point --help", "the keys of one, with units, ranges and defaults, and a call to copy"),
    ("calc dew-point air=70F rh=50%", "one sum, with its working"),
    ("calc joint-width --from project.yaml", "what every joint of a project needs, has, and whether it does"),
    ("calc --from project.yaml", "all that a project gives the figures for, a line each"),
)
READ_ON = "D06 prints the calculations of a project; specgen fields PATH tells of a field that one reads"


def arguments(parser: ArgumentParser) -> None:
    """Declare the name, the keys or the project that give its figures, and the form of the answer."""
    parser.add_argument("-h", "--help", action="store_true", help="this page, or that of NAME with its keys")
    parser.set_defaults(tell=parser.format_help)
    parser.add_argument(
        "name", metavar="NAME", nargs="?", help="a calculation; without it, they are listed, or with --from told of all"
    )
    parser.add_argument(
        "pairs",
        metavar="key=value",
        nargs="*",
        help="its figures; specgen calc NAME --help tells which, with units and ranges",
    )
    parser.add_argument(
        "--from", dest="file", metavar="FILE", help="a project that gives the figures; - reads standard input"
    )
    parser.add_argument("--working", action="store_true", help="with --from: the sums too, below what they answer")
    parser.add_argument(
        "--format",
        choices=["text", "json"],
        default="text",
        help="text, or json: the steps with their figures and sources",
    )


def run(args: Namespace) -> Outcome:
    """List the calculations or run what is asked for; raises Refused for unknown, missing and unfit keys."""
    if args.help:
        page = format_calculation(_find_provider(args.name), find_span) if args.name else args.tell()
        return Outcome(text=page)
    if not args.name and not args.file:
        return Outcome(text=align_columns([name, _list_keys(computing.find(name))] for name in computing.names()))
    pairs = _split_pairs(args.pairs)
    if args.file and pairs:
        raise refuse("keys and --from are both given", "give one or the other")
    if args.file:
        return _tell_project(args)
    working = direct(_find_provider(args.name), pairs)
    return Outcome(text=format_working(working), data=working_to_data(working) if args.format == "json" else None)


def _list_keys(provider: Provider) -> str:
    keys = [key.name if key.default is None else f"[{key.name}]" for key in provider.keys]
    return f"{provider.title}{': ' if keys else ''}{' '.join(keys)}"


def _split_pairs(texts: Sequence[str]) -> dict[str, str]:
    """The keys and values of `key=value`; raises Refused where one has no sign or stands twice."""
    pairs: dict[str, str] = {}
    for text in texts:
        key, sign, value = text.partition("=")
        if not sign:
            hint = "write key=value, such as length=20ft; one with a space stands in quotes: 'rate=300 sq ft/h'"
            raise refuse(f"{text!r} is not a key with a value", hint)
        if key in pairs:
            raise refuse(f"{key} is given twice", f"{key}={pairs[key]} or {key}={value}")
        pairs[key] = value
    return pairs


def _find_provider(name: str) -> Provider:
    """A calculation by name; raises Refused with the nearest one."""
    try:
        return computing.find(name)
    except computing.UnknownCalculation as unknown:
        raise refuse(f"there is no calculation {name!r}", suggest(name, unknown.known)) from None


def _tell_project(args: Namespace) -> Outcome:
    """The answers of one calculation of a project, or of all; raises Refused."""
    # Imports that wait: a sum from keys answers at once, without rules, schema and their libraries.
    from specgen.commands._calc_answers import compute_members
    from specgen.commands._project_file import find_project_file
    from specgen.pipeline import make_resolver, read, told_from_here

    wanted = [_find_provider(args.name)] if args.name else [*map(computing.find, computing.names())]
    if args.name:
        wanted[0].of_project()  # a sum that takes keys alone is refused before the file is read
    named = find_project_file(args.file)
    with told_from_here(named):
        resolver = make_resolver(read(named))
    every = [compute_members(resolver, provider) for provider in wanted if provider.compute is not None]
    data = [answers_to_data(one.values, one.table) for one in every] if args.format == "json" else None
    if not args.name:
        return Outcome(text=format_overview((one.table for one in every), find_table_width()), data=data)
    (one,) = every
    working = f"\n{format_members(one.values)}" if args.working else ""
    return Outcome(text=format_table(one.table, find_table_width()) + working, data=data and data[0])
