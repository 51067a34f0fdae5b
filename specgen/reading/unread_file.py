"""What is told of a file that cannot be read as a project: no YAML, no sections, or another text altogether."""

import re

import yaml

from specgen.model.problem import Problem
from specgen.reading.yaml_faults import find_yaml_fault

_PROSE = re.compile(r"[A-Za-z][^\s:]*(?:[ \t]+[^\s:]+){2,}[ \t]*", re.ASCII)
_SECTION = re.compile(r"^(?:format|project|package|walls|firm)[ \t]*:", re.MULTILINE)
_OTHER_TEXT = "this is a letter or another text, and no project file", "name the project file, which begins `format: 1`"


def explain_no_yaml(error: yaml.MarkedYAMLError, source: str, shown: str) -> Problem:
    """What is told of a text that the parser refuses."""
    if _is_prose(source):
        return Problem(*_OTHER_TEXT, "", shown, 1, 1)
    fault = find_yaml_fault(error, source)
    return Problem(fault.message, fault.hint, "", shown, fault.line, fault.column)


def explain_no_sections(mark: yaml.Mark, source: str, shown: str) -> Problem:
    """What is told of YAML that has no names with values; `mark` is where it begins."""
    told = ("the file does not begin with a name and a colon", "begin with `format: 1`")
    return Problem(*(_OTHER_TEXT if _is_prose(source) else told), "", shown, mark.line + 1, mark.column + 1)


def _is_prose(source: str) -> bool:
    """Whether a text is a letter or the like: lines of words at the left edge, and no section of a project."""
    return not _SECTION.search(source) and sum(bool(_PROSE.fullmatch(line)) for line in source.splitlines()[:200]) > 1
