"""Finds the document templates and reads their heads."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from specgen.documents.template_overrides import find_template, words_of
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.problem import Problem, Refused
from specgen.model.stage import STAGES

_CHOICES = {"numbering": ("plain", "three_part"), "landscape": ("true", "false"), "stage": STAGES}
_KEYS = {"id", "title", "order", "numbering", "landscape", "stage", "used_for"}
_ENTRY = re.compile(r"(\w+):(?:\s+(.*))?\s*")
_NO_NAME = re.compile(r"""[/\\:*?"<>|]|^\.|\.$""")
MOST_TITLE = 60  # characters
# The document that tells what changed: a set has it only where it is compared with another.
CHANGE_SHEET = "D20"
_Head = dict[str, tuple[str, int]]  # the text of each entry, and its line
_Fault = tuple[str, str, int]  # what is wrong, what would be right, the line


def templates_folder() -> Path:
    """The folder of templates: beside the package in a checkout, inside it if installed."""
    inside = Path(__file__).parents[1] / "_templates"
    return inside if inside.is_dir() else Path(__file__).parents[2] / "templates"


@dataclass(frozen=True, slots=True, kw_only=True)
class Template:
    """A document template: its head and its words."""

    id: str  # such as D08; the first part of the file name
    title: str  # as it prints
    order: int  # place in the package
    numbering: str  # plain or three_part
    landscape: bool  # whether its pages lie on their side
    stage: str = STAGES[0]  # the first stage of the work whose packages hold it
    used_for: str = ""  # what a reader does by the document, as the summary for review says it
    words: str  # the text below the head
    file: str  # its name in messages
    first_line: int  # the line of the file on which `words` begins


def templates(folder: Path | None = None, own: Path | None = None) -> tuple[Template, ...]:
    """All document templates in the order of the package; a file in the folder `own` overrides the built-in one.

    Raises Refused for a malformed head.
    """
    ours = folder or templates_folder()
    catalogue = []
    for file in sorted((ours / "documents").glob("*.md.j2")):
        name = f"documents/{file.name}"
        used = find_template(name, ours, own)
        catalogue.append(_read(used, f"{own.name}/{name}" if own is not None and used != file else file.name))
    catalogue.sort(key=lambda t: (t.order, t.id))
    ids = [t.id for t in catalogue]
    for template in catalogue:
        if ids.count(template.id) > 1:
            raise Refused(Problem(f"two templates have the id {template.id}", "give one another id", "", template.file))
    return tuple(catalogue)


def read_change_sheet(folder: Path, own: Path | None = None) -> Template:
    """The template of the change sheet, which is part of no other set; raises Refused for a malformed head."""
    name = f"changes/{CHANGE_SHEET}.md.j2"
    used = find_template(name, folder, own)
    return _read(used, f"{own.name}/{name}" if own is not None and used != folder / name else used.name)


def read_record_templates(folder: Path, own: Path | None) -> tuple[Template, ...]:
    """The templates of what a site record is told by; raises Refused for a malformed head."""
    names = [f"records/{file.name}" for file in sorted((folder / "records").glob("*.md.j2"))]
    return tuple(_read(find_template(name, folder, own), name) for name in names)


def _read(file: Path, shown: str) -> Template:
    parts = words_of(file, shown).split("---\n", 2)
    lines = parts[1].split("\n")[:-1] if len(parts) == 3 and not parts[0] else []
    head = {name: (value, number) for number, line in enumerate(lines, 2) for name, value in _entries(line)}
    faults = [*_find_missing(head)] or [*_find_faults(head, lines, file.name.split(".")[0])]
    if faults:
        known = f"between two lines --- write {', '.join(sorted(_KEYS))}"
        problems = [(f"the template cannot be used: {what}", hint or known, line) for what, hint, line in faults]
        raise Refused(*(Problem(what, hint, "", shown, line) for what, hint, line in problems))
    said = {name: value for name, (value, _) in head.items()}
    return Template(
        id=said["id"],
        title=said["title"],
        order=int(said["order"]),
        numbering=said.get("numbering", "plain"),
        landscape=said.get("landscape") == "true",
        stage=said.get("stage", STAGES[0]),
        used_for=said.get("used_for", ""),
        words=parts[2],
        file=shown,
        first_line=len(lines) + 3,
    )


def _entries(line: str) -> Iterator[tuple[str, str]]:
    """The name and the text of a line of a head; nothing for an empty line or a remark."""
    match = _ENTRY.fullmatch(line)
    if match:
        name, text = match[1], (match[2] or "").strip()
        quoted = len(text) > 1 and text[0] == text[-1] and text[0] in "\"'"
        yield name, text[1:-1] if quoted else text.split(" #")[0].rstrip()


def _find_missing(head: _Head) -> Iterator[_Fault]:
    """What the head of a template lacks or has too much."""
    if missing := {"id", "title", "order"} - set(head):
        yield f"its head lacks {', '.join(sorted(missing))}", "", 1
    if unknown := set(head) - _KEYS:
        yield f"its head has {', '.join(sorted(unknown))}", "", min(head[name][1] for name in unknown)


def _find_faults(head: _Head, lines: list[str], stem: str) -> Iterator[_Fault]:
    """What is wrong with the lines of a head; each is text, whatever it looks like."""
    for number, line in enumerate(lines, 2):
        if line.strip() and not line.startswith("#") and not _ENTRY.fullmatch(line):
            yield f"{line[:30]!r} is no line of a head", "write a name, a colon and its text", number
    for name, (value, number) in head.items():
        found = find_forbidden(value)
        if found:
            yield f"its {name} has a {found[1]}", found[2], number
        elif name == "id" and value != stem:
            yield f"its head says {value}, and the file is that of {stem}", "", number
        elif name == "title" and (not value or _NO_NAME.search(value) or len(value) > MOST_TITLE):
            hint = f'leave out / \\ : * ? " < > | and write at most {MOST_TITLE} characters'
            yield "no file can be named by its title", hint, number
        elif name == "order" and not re.fullmatch("[0-9]{1,6}", value):
            yield "its order is not a whole number", "", number
        elif name in _CHOICES and value not in _CHOICES[name]:
            yield f"its {name} is none of {', '.join(_CHOICES[name])}", "", number
