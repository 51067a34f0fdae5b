"""Commands run as a user runs them; where an assertion fails, what they came to shows all they said."""

import os
import subprocess
import sys
from collections.abc import Mapping
from typing import Any, NamedTuple

from specgen.cli import main
from tests.support import ROOT


class Ended(NamedTuple):
    """How a command ended: its exit code, and what it wrote to standard output and to standard error."""

    code: int
    out: str
    err: str

    def __repr__(self) -> str:
        return f"exit code {self.code}\nstandard output:\n{self.out}\nstandard error:\n{self.err}"


def words_of_build(file: object, out: object, formats: str = "txt") -> tuple[str, ...]:
    """The words that build one short document of a project."""
    return ("build", str(file), "--out", str(out), "--formats", formats, "--only", "D10")


def run_main(capsys: Any, *words: str) -> Ended:
    """Run a command of specgen in this process."""
    code = main(words)
    return Ended(code, *capsys.readouterr())


def run_specgen(*words: str, **how: Any) -> Ended:
    """Run a command of specgen in a process of its own."""
    return run_process([sys.executable, "-m", "specgen", *words], **how)


def run_python(code: str, *words: str, **how: Any) -> Ended:
    """Run a piece of Python in a process of its own."""
    return run_process([sys.executable, "-c", code, *words], **how)


def run_process(command: list[str], **how: Any) -> Ended:
    """Run a program to its end, whatever that is."""
    done = subprocess.run(command, capture_output=True, text=True, check=False, **(in_checkout() | how))
    return Ended(done.returncode, done.stdout, done.stderr)


def start_process(command: list[str], **how: Any) -> subprocess.Popen[str]:
    """Start a program and go on while it runs."""
    return subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, **(in_checkout() | how))


def in_checkout(more: Mapping[str, str] | None = None) -> dict[str, Any]:
    """Where a process runs: in this folder, with its package before any installed, in this environment and `more`."""
    return {"cwd": ROOT, "env": os.environ | {"PYTHONPATH": str(ROOT)} | dict(more or {})}


def wait_for(running: subprocess.Popen[str]) -> Ended:
    """Wait until a started program has ended."""
    out, err = running.communicate()
    return Ended(running.returncode, out, err)
