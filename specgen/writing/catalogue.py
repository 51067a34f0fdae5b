"""Finds the document templates and reads what stands at their head."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from ..vocabulary.problem import Problem, Refused

_KEYS = {"id", "title", "order", "numbering", "submittal", "landscape"}


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
    submittal: str
    landscape: bool
    words: str
    file: str
    first_line: int


def templates(folder: Path | None = None) -> tuple[Template, ...]:
    """Every document there is, in the order of the package; raises Refused for a malformed head."""
    files = sorted(((folder or templates_folder()) / "documents").glob("*.md.j2"))
    made = sorted((_read(file) for file in files), key=lambda t: (t.order, t.id))
    ids = [t.id for t in made]
    for template in made:
        if ids.count(template.id) > 1:
            raise Refused(Problem(f"two templates have the id {template.id}", "give one another id", "", template.file))
    return tuple(made)


def _read(file: Path) -> Template:
    parts = file.read_text("utf-8").split("---\n", 2)
    try:
        head: dict[str, Any] = yaml.safe_load(parts[1]) if len(parts) == 3 and not parts[0] else {}
    except yaml.YAMLError:
        head = {}
    missing = {"id", "title", "order"} - set(head)
    unknown = set(head) - _KEYS
    if missing or unknown:
        what = (
            f"its head lacks {', '.join(sorted(missing))}" if missing else f"its head has {', '.join(sorted(unknown))}"
        )
        hint = f"between two lines --- write {', '.join(sorted(_KEYS))}"
        raise Refused(Problem(f"the template cannot be used: {what}", hint, "", file.name, 1))
    return Template(
        str(head["id"]),
        str(head["title"]),
        int(head["order"]),
        head.get("numbering", "plain"),
        head.get("submittal", ""),
        bool(head.get("landscape", False)),
        parts[2],
        file.name,
        parts[1].count("\n") + 3,
    )
