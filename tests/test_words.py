"""Words and phrases that nobody is to read: shorthand, words of another trade, and sentences that read as translated.

The lists are those of a reviewing architect's red pen, not of the product. Each area of what people read is looked
through on its own; fields, choices, codes and keys are names, and no text.
"""

import ast
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.commands import load_commands, make_parser
from specgen.judging.registry import load_rules
from tests.support import ROOT

# A word, and what is written for it. A look behind or ahead leaves what is another word: paper-faced, an O-ring, a
# sheet of masking paper.
WORDS = {
    r"(?<!on )(?<!masking )(?<!film, )\bpapers?\b(?!-faced)": "document, letter, report",
    r"\b(?:EIFS|finish|sealant|board|coating|material|WRB|barrier)(?:'s)? sources?\b|\bthe source's\b": "manufacturer",
    r"\bweather barriers?\b": "water-resistive barrier (WRB)",
    r"\bopen points?\b": "open item",
    r"(?<!O-)\brings?\b": "stage",
    r"\bclauses? fire[sd]?\b|\bfired\b": "not met; exception",
    r"\bstops? stands?\b": "stop",
    r"\bowed\b": "required",
    r"\bwaits for\b|\bcalculations wait for\b": "pending",
    r"\bvouch\w*": "confirms in writing",
    r"\bmetal[- ]look\b": "metallic",
    r"\bwater-borne\b": "waterborne",
    r"\b(?:is|are) the (?:most|least)\b": "maximum, minimum before the number",
    r"; (?:it is|they are) (?:\d|\{wanted\})": "minimum, maximum before the number",
    r": confirm\.": "; confirm.",
}
# Sentences and headings of a text once translated, each by the words it is known by.
PHRASES = (
    "metal look",
    "therefore brought to its final plane",
    "figures in this procedure hold",
    "do the work, inspect it or answer for it",
    "those who also do the work",
    "part of this package or of the job",
    "are taken off the site",
    "no work is done outside",
    "brings these besides",
    "hold of the least temperature",
    "rub nibs and ridges",
    "settle what overspray",
    "go on from there later",
    "correct every fault before",
    "drive no fastener",
    "prove the spray pattern",
    "water by the jug",
    "spray the mark out",
    "let nobody work",
    "respirator of the program",
    "lint-poor",
    "slivers of the same board",
    "along the face with the raking lamp",
    "a square without a letter",
    "what the contract demands",
    "decided by: no",
    "may take the finish",
    "fire separation not under",
    "not read here",
    "ask the building official.",
    "held closer than",
    "it is never perfectly even",
    "both heat methods are printed",
    "is decided by the architect",
    "makes a new mockup",
    "in its own words; the stricter",
    "lines of acceptance",
    "written down",
    "by the same lines",
    "with the inputs that differ",
    "what this sum leaves out",
    "looked up in the code",
    "results in short",
    "board that stays",
    "taken off by rasping",
    "heat passed to the air",
    "figure of the method",
    "cup time of the primer",
    "setup of the spray equipment",
    "depth of a sealant joint",
    "get it, mark the lines",
    "written yes",
)
FORBIDDEN = re.compile("|".join([*WORDS, *map(re.escape, PHRASES)]), re.IGNORECASE)
# Keys of a row that hold a name, a condition or an example, and no text that is read.
NAMES = frozenset(
    ("if", "when", "step", "kind", "of", "values", "ring", "owed_by", "example", "source", "source_si", "sources")
    + ("bounds", "maker_figure", "follows", "field", "one", "method_source", "basis", "document", "form", "unit")
)


def texts_of_rules(group: str) -> Iterator[str]:
    """Title, findings, remedies, documents looked for, and first line of the manual page of each rule of a group."""
    folder = ROOT / "specgen" / "judging" / "rules" / group
    titles = {file.read_text("utf-8").split('"""')[1].strip().splitlines()[0] for file in folder.glob("[a-z]*.py")}
    for rule in load_rules():
        if rule.manual.strip().splitlines()[0] in titles:
            yield from (rule.title, rule.remedy, rule.manual.strip().splitlines()[0])
            for clause in rule.clauses:
                yield from (clause.say, clause.remedy, clause.document)


def texts_of_rows(*files: str) -> Iterator[str]:
    """Each text in files of rows, but for names."""
    for file in files:
        yield from _texts(yaml.load((ROOT / "specgen" / file).read_text("utf-8"), Loader=yaml.CSafeLoader))


def _texts(rows: Any) -> Iterator[str]:
    if isinstance(rows, str):
        # What stands in braces is a name of a template: `{{ primer.cup }}`.
        yield re.sub(r"\{\{.*?\}\}|\{%.*?%\}", " ", rows)
    elif isinstance(rows, dict):
        for key, value in rows.items():
            yield from _texts(value) if key not in NAMES else ()
    elif isinstance(rows, list):
        for value in rows:
            yield from _texts(value)


def texts_of_templates() -> Iterator[str]:
    """The templates of documents, without names and conditions; what a tag writes itself stands between quotes."""
    for file in sorted((ROOT / "templates" / "documents").glob("*.j2")):
        text = file.read_text("utf-8").split("\n---\n", 1)[1]
        yield re.sub(r"\{[{%#].*?[#%}]\}", " ", text, flags=re.DOTALL)
        yield from re.findall(r"'([^'{}]* [^'{}]*)'", " ".join(re.findall(r"\{\{.*?\}\}", text, flags=re.DOTALL)))


def texts_of_help() -> Iterator[str]:
    """The help of each command and of its arguments."""
    for verb, command in load_commands().items():
        parser = make_parser({verb: command})
        yield parser.format_help()
        yield from (str(action.help) for action in parser._actions)
        (verbs,) = (action for action in parser._actions if isinstance(action.choices, dict))
        yield verbs.choices[verb].format_help()


def texts_of_code(*rooms: str) -> Iterator[str]:
    """What the code of a room may print: its texts of more than one word, but for docstrings."""
    for room in rooms:
        folder = ROOT / "specgen" / room
        for file in sorted(folder.rglob("*.py")) if folder.is_dir() else [folder]:
            yield from _printed(file)


def _printed(file: Path) -> Iterator[str]:
    tree = ast.parse(file.read_text("utf-8"))
    told = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in told:
            yield node.value if " " in node.value.strip() else ""


def texts_of_readme() -> Iterator[str]:
    """The README without what is typed and printed in its tours."""
    yield re.sub(r"```.*?```|`[^`]*`|^    .*$", " ", (ROOT / "README.md").read_text("utf-8"), flags=re.DOTALL | re.M)


def _rules(group: str) -> Callable[[], Iterator[str]]:
    return lambda: texts_of_rules(group)


def _rows(*files: str) -> Callable[[], Iterator[str]]:
    return lambda: texts_of_rows(*files)


def _code(*rooms: str) -> Callable[[], Iterator[str]]:
    return lambda: texts_of_code(*rooms)


GROUPS = sorted(folder.name for folder in (ROOT / "specgen" / "judging" / "rules").iterdir() if folder.is_dir())
TERMINAL = sorted(file.stem for file in (ROOT / "specgen" / "terminal").glob("[a-z]*.py"))
AREAS: dict[str, Callable[[], Iterator[str]]] = {
    **{f"rules of {group}": _rules(group) for group in GROUPS if not group.startswith("_")},
    **{
        name: _rows(f"standards/{name}.yaml")
        for name in ("steps", "criteria", "tools", "forms", "faults", "limits", "references")
    },
    **{
        f"fields of {file.stem}": _rows(f"reading/schema/{file.name}")
        for file in (ROOT / "specgen/reading/schema").iterdir()
    },
    "templates": texts_of_templates,
    "help": texts_of_help,
    "readme": texts_of_readme,
    "words of values": _code("model/value_text.py"),
    "report": _code("terminal/report.py"),
    "terminal": _code(
        *(f"terminal/{name}.py" for name in TERMINAL if name != "report"),
        "commands",
        "cli.py",
        "building.py",
        "pipeline.py",
    ),
    "judging": _code("judging/deviations.py", "judging/explain.py", "judging/verdict.py", "judging/open_items.py"),
    "sums": _code("computing"),
    "tables": _code("documents"),
}


def forbidden_in(texts: Iterator[str]) -> list[str]:
    """What a red pen would strike, each with the words about it."""
    return [
        text[max(found.start() - 40, 0) : found.end() + 40].replace("\n", " ")
        for text in texts
        for found in FORBIDDEN.finditer(text)
    ]


def test_the_red_pen_strikes_what_it_should() -> None:
    struck = [
        "The EIFS source agreed.",
        "Two papers",
        "18 in is the most",
        "3 coats; it is 2.",
        "on the weather barrier",
    ]
    kept = ["paper-faced gypsum", "an O-ring of the gun", "maximum 18 in", "the light source", "during application"]
    assert [bool(forbidden_in(iter([text]))) for text in (*struck, *kept)] == [True] * 5 + [False] * 5


@pytest.mark.parametrize("area", sorted(AREAS))
def test_nobody_reads_these_words(area: str) -> None:
    texts = [text for text in AREAS[area]() if text]
    assert texts
    assert forbidden_in(iter(texts)) == []
