"""Arguments in, messages and exit codes out; nothing else prints.

Exit codes: 0 done; 1 done, and something stands against it; 2 not done.
Each command imports its own story, so that a sum does not load the rules.
"""

import argparse
import gc
import json
import signal
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from specgen import __version__
from specgen.model.finding import Severity
from specgen.model.problem import Refused, refuse

DONE, AGAINST, NOT_DONE = 0, 1, 2
_QUIET = "no messages, only results"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    asked = _parser().parse_args(arguments)
    try:
        code: int = asked.run(asked)
    except Refused as refused:
        return _refused(asked, refused)
    except BrokenPipeError:  # the reader of our output has left
        sys.stderr.close()
        return NOT_DONE
    except KeyboardInterrupt:
        print("specgen: stopped; nothing was written", file=sys.stderr)
        return NOT_DONE
    return code


def _refused(asked: argparse.Namespace, refused: Refused) -> int:
    if asked.command == "check" and asked.format == "json":
        from specgen.terminal import report

        _print_data(report.as_data(None, None, refused.problems))
    for problem in refused.problems:
        print(f"specgen: {problem}", file=sys.stderr)
    return NOT_DONE


def _print_data(data: Any) -> None:
    print(json.dumps(data, ensure_ascii=False, indent=1))


def _tell(asked: argparse.Namespace, message: str) -> None:
    if not asked.quiet:
        print(message, file=sys.stderr)


def _new(asked: argparse.Namespace) -> int:
    from specgen import pipeline

    pipeline.new(Path(asked.file), asked.ring, asked.units)
    _tell(asked, f"specgen: wrote {asked.file}; next: specgen check {asked.file}")
    return DONE


def _check(asked: argparse.Namespace) -> int:
    from specgen import pipeline
    from specgen.terminal import report

    case = pipeline.check(Path(asked.file))
    severity = Severity(asked.severity) if asked.severity else None
    rule = pipeline.rule_code(asked.rule) if asked.rule else ""
    if asked.format == "json":
        _print_data(report.as_data(case.project, case.judgment, (), severity, rule))
    elif rule:
        print(pipeline.explained_text(case, rule), end="")
    else:
        print(report.as_text(case.project, case.judgment, severity), end="")
    return AGAINST if case.judgment.stopped else DONE


def _build(asked: argparse.Namespace) -> int:
    from specgen import pipeline

    names = pipeline.build(
        Path(asked.file),
        Path(asked.out),
        formats=tuple(asked.formats.split(",")),
        only=tuple(asked.only),
        draft=asked.draft,
        letterhead=Path(asked.letterhead) if asked.letterhead is not None else None,
        templates=Path(asked.templates) if asked.templates is not None else None,
    )
    for note in names.notes:
        _tell(asked, f"specgen: {note}")
    _tell(asked, f"specgen: wrote {len(names.files)} files to {asked.out}")
    if names.draft:
        stands = "stops stand; " if names.stopped else ""
        _tell(asked, f"specgen: {stands}every page is marked as a draft")
    return AGAINST if names.stopped else DONE


def _rules(asked: argparse.Namespace) -> int:
    from specgen import pipeline

    print(pipeline.rules_text(asked.id), end="")
    return DONE


def _fields(asked: argparse.Namespace) -> int:
    from specgen import pipeline

    print(pipeline.fields_text(asked.path), end="")
    return DONE


def _schema(asked: argparse.Namespace) -> int:
    from specgen import pipeline

    _print_data(pipeline.schema_data(asked.file))
    return DONE


def _matrix(asked: argparse.Namespace) -> int:
    from specgen import pipeline

    print(pipeline.matrix_text(), end="")
    return DONE


def _calc(asked: argparse.Namespace) -> int:
    from specgen import calculator

    if not asked.name:
        print(calculator.calculations_text(), end="")
        return DONE
    pairs = _pairs(asked.pairs)
    if asked.file and pairs:
        raise refuse("keys and --from are both given", "give one or the other")
    if asked.file:
        text, data = calculator.calculate_all(asked.name, Path(asked.file))
    else:
        text, data = calculator.calculate(asked.name, pairs)
    _print_data(data) if asked.format == "json" else print(text, end="")
    return DONE


def _pairs(texts: Sequence[str]) -> dict[str, str]:
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


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="specgen",
        description="Judges and writes the submittal of an exterior wall with a sprayed gloss metal-look finish.",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"specgen {__version__}")
    parser.add_argument("--quiet", action="store_true", help=_QUIET)
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    _reading_commands(commands)
    _looking_commands(commands)
    for command in commands.choices.values():
        command.add_argument("--quiet", action="store_true", default=argparse.SUPPRESS, help=_QUIET)
    return parser


def _reading_commands(commands: Any) -> None:
    new = commands.add_parser("new", help="a commented starter file; never overwrites")
    new.add_argument("file", metavar="FILE")
    new.add_argument("--for", dest="ring", choices=["verdict", "mockup", "work", "closeout"], default="verdict")
    new.add_argument("--units", choices=["ip", "si"], default="ip")
    new.set_defaults(run=_new)
    check = commands.add_parser("check", help="validate and judge a project")
    check.add_argument("file", metavar="FILE")
    check.add_argument("--rule", metavar="ID", help="only this rule or clause")
    check.add_argument("--severity", choices=[str(s) for s in Severity], help="only findings of this severity")
    check.add_argument("--format", choices=["text", "json"], default="text")
    check.set_defaults(run=_check)
    build = commands.add_parser("build", help="write the package of a project")
    build.add_argument("file", metavar="FILE")
    build.add_argument("--out", metavar="DIR", required=True)
    build.add_argument("--formats", default="docx,html", help="docx, html, txt; comma between them")
    build.add_argument("--only", metavar="ID", action="append", default=[], help="only this document; may be repeated")
    build.add_argument("--letterhead", metavar="FILE.docx", help="gives page, header, footer and styles")
    build.add_argument("--templates", metavar="DIR", help="a firm's own words, each in place of ours of the same name")
    build.add_argument("--draft", action="store_true", help="write in spite of stops; marks every page")
    build.set_defaults(run=_build)


def _looking_commands(commands: Any) -> None:
    rules = commands.add_parser("rules", help="the rules, or the manual page of one")
    rules.add_argument("id", metavar="ID", nargs="?")
    rules.set_defaults(run=_rules)
    fields = commands.add_parser("fields", help="the fields, or the manual of one")
    fields.add_argument("path", metavar="PATH", nargs="?")
    fields.set_defaults(run=_fields)
    schema = commands.add_parser("schema", help="JSON Schema for editors")
    schema.add_argument("--file", choices=["project", "firm", "coating_system", "record"], default="project")
    schema.set_defaults(run=_schema)
    matrix = commands.add_parser("matrix", help="substrate by attachment: yes, measure, no")
    matrix.set_defaults(run=_matrix)
    calc = commands.add_parser("calc", help="one sum with its working, or all of that name in a project")
    calc.add_argument("name", metavar="NAME", nargs="?")
    calc.add_argument("pairs", metavar="key=value", nargs="*")
    calc.add_argument("--from", dest="file", metavar="FILE")
    calc.add_argument("--format", choices=["text", "json"], default="text")
    calc.set_defaults(run=_calc)


def run() -> None:
    """The entry point of the command."""
    # The process is short and keeps what it reads; the cyclic collector would walk it all again and again.
    gc.set_threshold(100_000, 50, 50)
    # A request to end and a closed terminal stop the work as Ctrl-C does: by way of the clearing up.
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) == signal.SIG_DFL:
            signal.signal(number, signal.default_int_handler)
    sys.exit(main())


if __name__ == "__main__":
    run()
