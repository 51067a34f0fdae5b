"""`specgen calc`: one sum from keys, or all of a name in a project."""

from argparse import ArgumentParser, Namespace
from collections.abc import Sequence

from specgen import computing
from specgen.commands import Outcome
from specgen.computing.arguments import direct, find_span
from specgen.model.absence import Absent
from specgen.model.problem import Refused, refuse
from specgen.model.suggest import suggest
from specgen.resolving.provider import Provider
from specgen.terminal.calculation_page import format_calculation
from specgen.terminal.columns import align_columns
from specgen.terminal.working import MemberResult, format_members, format_working, members_to_data, working_to_data

HELP = "one sum with its working, or all of that name in a project"
ORDER = 80
EXAMPLES = (
    ("calc", "the calculations with their keys; one in brackets may be left out"),
    ("calc dew-point --help", "the keys of one, with units, ranges and defaults, and a call to copy"),
    ("calc dew-point air=70F rh=50%", "one sum, with its working"),
    ("calc joint-width --from project.yaml", "the same for every joint of a project"),
)
READ_ON = "D06 prints the calculations of a project; specgen fields PATH tells of a field that one reads"


def arguments(parser: ArgumentParser) -> None:
    """Declare the name, the keys or the project that give its figures, and the form of the answer."""
    parser.add_argument("-h", "--help", action="store_true", help="this page, or that of NAME with its keys")
    parser.set_defaults(tell=parser.format_help)
    parser.add_argument("name", metavar="NAME", nargs="?", help="a calculation; without it, they are listed")
    parser.add_argument(
        "pairs",
        metavar="key=value",
        nargs="*",
        help="its figures; specgen calc NAME --help tells which, with units and ranges",
    )
    parser.add_argument(
        "--from", dest="file", metavar="FILE", help="a project that gives the figures; - reads standard input"
    )
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
    if not args.name and args.file:
        raise refuse("NAME must be given", "specgen calc lists what there is")
    if not args.name:
        return Outcome(text=align_columns([name, _list_keys(computing.find(name))] for name in computing.names()))
    pairs = _split_pairs(args.pairs)
    if args.file and pairs:
        raise refuse("keys and --from are both given", "give one or the other")
    provider = _find_provider(args.name)
    as_data = args.format == "json"
    if args.file:
        results = _compute_members(args.name, provider, args.file)
        return Outcome(text=format_members(results), data=members_to_data(args.name, results) if as_data else None)
    working = direct(provider, pairs)
    return Outcome(text=format_working(working), data=working_to_data(working) if as_data else None)


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
            raise refuse(f"{text!r} is no key with a value", hint)
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


def _compute_members(name: str, provider: Provider, file: str) -> dict[str, MemberResult]:
    """All of one name in a project by mark; a member that lacks a field, or has an unfit one, says so."""
    # Imports that wait: a sum from keys answers at once, without rules, schema and their libraries.
    from specgen.commands._project_file import find_project_file
    from specgen.pipeline import make_resolver, read, told_from_here

    provider.of_project()  # a sum that takes keys alone is refused before the file is read
    named = find_project_file(file)
    with told_from_here(named):
        project = read(named)
    resolver = make_resolver(project)
    results: dict[str, MemberResult] = {}
    for path in provider.members(project):
        mark = path[-1] if path else "project"
        try:
            results[mark] = resolver(path, name)
        except Refused as refused:
            results[mark] = refused
        except Absent as absent:
            # A sum may wait for a value that it reads only where another way is barred.
            results[mark] = list(dict.fromkeys([*resolver.missing(path, name), absent.path]))
    return results
