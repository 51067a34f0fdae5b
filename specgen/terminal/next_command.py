"""The command to type next, from how a project stands."""

import re

from specgen.model.finding import Judgment, Severity
from specgen.model.project import Project
from specgen.terminal.screen import Line

_OURS = "applicator"
# The stage whose fields the next purpose owes.
_STAGES = {"design_draft": "mockup", "mockup_submittal": "work"}
_PLAIN = re.compile(r"[\w./\\:~+-]+")


def name_next(project: Project, judgment: Judgment, file: str, shown: object = None) -> str:
    """The command that brings a project on; `shown` is what of the findings is already on the screen, if a part."""
    file = quote(file)
    purpose = project.value(("package", "purpose"))
    if judgment.of(Severity.STOP) and shown != Severity.STOP:
        return f"specgen check {file} --severity stop"
    if judgment.open_items:
        return _name_asking(judgment, file) if shown == "open" else f"specgen check {file} --open"
    if judgment.of(Severity.STOP):
        return f"specgen check {file}"
    if purpose == "design_draft":
        return f"specgen grow {file} --for {_STAGES[purpose]}"
    return f"specgen build {file} --out package"


def _name_asking(judgment: Judgment, file: str) -> str:
    """To ask others for what they owe; what is ours alone is filled in, and checked again."""
    others = any(item.owed_by != _OURS for item in judgment.open_items)
    return f"specgen ask {file} --out questions" if others else f"specgen check {file}"


def tell_next(command: str) -> tuple[Line, ...]:
    """The last line, kept whole, so that the command can be copied."""
    return Line(), Line(f"next: {command}", whole=True)


def quote(file: str) -> str:
    """The name of a file as it is typed in a shell."""
    return file if _PLAIN.fullmatch(file) else "'" + file.replace("'", "'\\''") + "'"
