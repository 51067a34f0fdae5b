"""Finds the document templates and reads what stands at their head."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from specgen.documents.template_overrides import found, words_of
from specgen.model.problem import Problem, Refused

_NUMBERINGS = ("plain", "three_part")
_KEYS = {"id", "title", "order", "numbering", "landscape"}


def templates_folder() -> Path:
    """The folder of templates: beside the package in a checkout, inside it where installed."""
    inside = Path(__file__).parents[1] / "_templates"
    return inside if inside.is_dir() else Path(__file__).parents[2] / "templates"


@dataclass(frozen=True, slots=True)
class Template:
    """A document template: its head and its words."""

    id: str
    title: str
    order: int
    numbering: str
    landscape: bool
    words: str
    file: str
    first_line: int


def templates(folder: Path | None = None, own: Path | None = None) -> tuple[Template, ...]:
    """Every document there is, in the order of the package; a file of the folder `own` takes the place of ours.

    Raises Refused for a malformed head.
    """
    ours = folder or templates_folder()
    made = []
    for file in sorted((ours / "documents").glob("*.md.j2")):
        name = f"documents/{file.name}"
        used = found(name, ours, own)
        made.append(_read(used, f"{own.name}/{name}" if own is not None and used != file else file.name))
    made.sort(key=lambda t: (t.order, t.id))
    ids = [t.id for t in made]
    for template in made:
        if ids.count(template.id) > 1:
            raise Refused(Problem(f"two templates have the id {template.id}", "give one another id", "", template.file))
    return tuple(made)


def _read(file: Path, shown: str) -> Template:
    parts = words_of(file, shown).split("---\n", 2)
    try:
        head: Any = yaml.safe_load(parts[1]) if len(parts) == 3 and not parts[0] else {}
    except yaml.YAMLError:
        head = {}
    faults = _faults(head if isinstance(head, dict) else {}, file)
    if faults:
        hint = f"between two lines --- write {', '.join(sorted(_KEYS))}"
        raise Refused(*(Problem(f"the template cannot be used: {fault}", hint, "", shown, 1) for fault in faults))
    return Template(
        str(head["id"]),
        str(head["title"]),
        int(head["order"]),
        head.get("numbering", "plain"),
        bool(head.get("landscape", False)),
        parts[2],
        shown,
        parts[1].count("\n") + 3,
    )


def _faults(head: dict[str, Any], file: Path) -> list[str]:
    """What is wrong with the head of a template."""
    made = []
    if missing := {"id", "title", "order"} - set(head):
        made.append(f"its head lacks {', '.join(sorted(missing))}")
    if unknown := set(map(str, head)) - _KEYS:
        made.append(f"its head has {', '.join(sorted(unknown))}")
    if "id" in head and str(head["id"]) != file.name.split(".")[0]:
        made.append(f"its head says {head['id']}, and the file is that of {file.name.split('.')[0]}")
    if not isinstance(head.get("order", 0), int):
        made.append("its order is no whole number")
    if head.get("numbering", "plain") not in _NUMBERINGS:
        made.append(f"its numbering is none of {', '.join(_NUMBERINGS)}")
    return made
