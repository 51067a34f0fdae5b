"""A project judged as a package of another stage would be, to tell what that stage asks for."""

from dataclasses import replace
from pathlib import Path

from specgen.judging.open_items import owed_rings
from specgen.pipeline import JudgedProject, judge_project, read

_PURPOSE = ("package", "purpose")
# The purpose of a package of each stage.
_PURPOSES = {
    "verdict": "design_draft",
    "mockup": "mockup_submittal",
    "work": "work_submittal",
    "closeout": "closeout",
}


def check_for(file: Path, stage: str) -> tuple[JudgedProject, str]:
    """The project of a file as judged for a stage, and the stage; that of its purpose where none is named.

    Raises Refused with every fault of its files.
    """
    project = read(file)
    own = owed_rings(str(project.value(_PURPOSE)))[-1]
    if stage not in ("", own):
        project = replace(project, values=project.values | {_PURPOSE: _PURPOSES[stage]})
    return judge_project(project), stage or own
