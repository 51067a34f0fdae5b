"""What the tests of commands share: one command with all that it prints, and a folder of small projects."""

import io
import json
import os
import shlex
from contextlib import chdir, redirect_stderr, redirect_stdout
from pathlib import Path
from typing import Any
from unittest.mock import patch

from specgen.cli import main
from tests.running import run_main
from tests.support import SMALL, merged, written

SUBMITTAL = {"package": {"purpose": "mockup_submittal"}}
STOPPED = merged(SMALL, {"walls": {"W1": {"attachment": {"method": "mechanical"}}}})


def checked(capsys: Any, folder: Path, data: Any) -> dict[str, Any]:
    return json.loads(run_main(capsys, "check", str(written(folder, data)), "--format", "json").out)


def transcript(commands: list[str], folder: Path) -> str:
    """Each command as it is typed in the folder, what it prints, messages behind an exclamation mark, how it ends."""
    written(folder, SMALL, "project.yaml")
    written(folder, STOPPED, "stops.yaml")
    with chdir(folder), patch.dict(os.environ, {"COLUMNS": "80"}):
        return "\n".join(map(_told, commands))


def _told(command: str) -> str:
    out, err = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(err):
        try:
            code: object = main(shlex.split(command)[1:])
        except SystemExit as ended:
            code = ended.code
    printed = [*out.getvalue().splitlines(), *(f"! {line}" for line in err.getvalue().splitlines())]
    return "\n".join([f"$ {command}", *printed, f"exit {code}\n"])
