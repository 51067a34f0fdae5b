"""Commands run one after another in a folder of small projects, and what each printed where."""

import io
import os
from contextlib import chdir, redirect_stderr, redirect_stdout
from pathlib import Path
from unittest.mock import patch

from specgen.cli import main
from tests.support import SMALL, merged, written

METHOD = {"walls": {"W1": {"attachment": {"method": "mechanical"}}}}
SUBMITTAL = {"package": {"purpose": "mockup_submittal"}}
FILES = {
    "project.yaml": SMALL,
    "stops.yaml": merged(SMALL, METHOD),
    "owed.yaml": merged(SMALL, SUBMITTAL),
    "both.yaml": merged(SMALL, SUBMITTAL | METHOD),
    "joints.yaml": merged(SMALL, {"joints": {"J1": {"width": "1 in"}}}),
}


def transcript(commands: list[str], folder: Path) -> str:
    """Each command after a dollar sign, what it prints, messages after an exclamation mark, and how it ends."""
    for name, data in FILES.items():
        written(folder, data, name)
    with chdir(folder), patch.dict(os.environ, {"COLUMNS": "80"}):
        return "\n".join(map(told, commands))


def told(command: str) -> str:
    """One command with all that it prints."""
    out, err = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(err):
        try:
            code: object = main(command.split()[1:])
        except SystemExit as ended:
            code = ended.code
    printed = [*out.getvalue().splitlines(), *(f"! {line}" for line in err.getvalue().splitlines())]
    return "\n".join([f"$ {command}", *printed, f"exit {code}\n"])
