"""Empty records of the site, written to a file that does not exist yet, or shown."""

from argparse import Namespace
from collections.abc import Iterator, Sequence

from specgen.asking.blank_record import KINDS, BlankTable, list_blank_tables
from specgen.asking.blank_record_files import find_blank_writer, write_blank_csv
from specgen.commands import DONE, Outcome, read_file_name
from specgen.commands._project_file import find_project_file
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.output.disk import write_new
from specgen.pipeline import read
from specgen.reading.schema import project_schema

BLANK_HELP = f"an empty record in place of a judgment: {', '.join(KINDS)}; --out names the file, .csv, .yaml, or .xlsx"
_MARK = "\ufeff"  # by which a spreadsheet knows a file


def show_blank(kind: str, file: str | None, out: str | None) -> Outcome:
    """An empty record of a kind, with the marks of the project where one is named; raises Refused."""
    if kind not in KINDS:
        raise refuse(f"there is no record {kind!r}", suggest(kind, KINDS))
    project = read(find_project_file(file)) if file is not None else None
    tables = list_blank_tables(kind, project_schema(), project)
    choices = tuple(_list_choices(tables))
    if out is None:
        text = write_blank_csv(tables, kind, project).decode().removeprefix(_MARK)
        return Outcome(DONE, text=text, messages=choices)
    place, write = read_file_name(out), find_blank_writer(out)
    write_new(place, write(tables, kind, project))
    left = [table.noun for table in tables[1:] if place.suffix.lower() == ".csv"]
    told = (f"left out: the {left[0]}, which a .yaml or .xlsx file holds",) if left else ()
    return Outcome(DONE, messages=(f"wrote {out}; next: fill it in, then specgen record FILE {out}", *told, *choices))


def _list_choices(tables: Sequence[BlankTable]) -> Iterator[str]:
    """What the columns take that take no other word: `rain, forecast_rain: yes, no`."""
    names: dict[tuple[str, ...], list[str]] = {}
    for column in (one for table in tables if table.has_entries for one in table.columns if one.choices):
        names.setdefault(column.choices, []).append(column.name)
    yield from (f"{', '.join(named)}: {', '.join(choices)}" for choices, named in names.items())


def run_blank(args: Namespace) -> Outcome:
    """An empty record as the arguments `blank`, `file`, and `out` ask for it."""
    return show_blank(args.blank, args.file, args.out)
