"""Finds the document templates and reads their heads."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from specgen.documents.template_overrides import find_template, words_of
from specgen.model.problem import Problem, Refused

_NUMBERINGS = ("plain", "three_part")
_KEYS = {"id", "title", "order", "numbering", "landscape"}


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
        id=str(head["id"]),
        title=str(head["title"]),
        order=int(head["order"]),
        numbering=head.get("numbering", "plain"),
        landscape=bool(head.get("landscape", False)),
        words=parts[2],
        file=shown,
        first_line=parts[1].count("\n") + 3,
    )


def _faults(head: dict[str, Any], file: Path) -> list[str]:
    """What is wrong with the head of a template."""
    faults = []
    if missing := {"id", "title", "order"} - set(head):
        faults.append(f"its head lacks {', '.join(sorted(missing))}")
    if unknown := set(map(str, head)) - _KEYS:
        faults.append(f"its head has {', '.join(sorted(unknown))}")
    if "id" in head and str(head["id"]) != file.name.split(".")[0]:
        faults.append(f"its head says {head['id']}, and the file is that of {file.name.split('.')[0]}")
    if not isinstance(head.get("order", 0), int):
        faults.append("its order is no whole number")
    if head.get("numbering", "plain") not in _NUMBERINGS:
        faults.append(f"its numbering is none of {', '.join(_NUMBERINGS)}")
    return faults
