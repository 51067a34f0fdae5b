"""Where a package may go, and what may go wrong on the way: foreign folders, signals, full disks, other encodings."""

import random
import signal
import tempfile
from functools import cache
from pathlib import Path

from specgen.building import build
from tests.attack.attempt import Attempt
from tests.attack.classes._projects import BESIDE, SOURCES, dump, small
from tests.support import EXAMPLES

OUTS = [
    "/",
    ".",
    "..",
    "",
    "kept",
    "foreign",
    "plan.txt",
    "plan.txt/x",
    "link",
    "loop",
    "nowhere",
    "/dev/full",
    "/dev/null",
    "/proc/x",
    "/proc/self/fd",
    "x" * 300,
    "a\nb",
    "\x1b[2J",
    "out/",
    "out/.",
    "./out",
    "out//",
    "../job/out",
    "-x",
    "~",
    "pipe",
    ".specgen-mine-new",
    "new/a/b/c",
    "\udcff",
    "empty",
    "/sys/x",
    "out\u202e",
]
SIGNALS = [signal.SIGTERM, signal.SIGINT, signal.SIGHUP, signal.SIGKILL]
SETTINGS = [
    {"PYTHONIOENCODING": "ascii"},
    {"PYTHONIOENCODING": "cp1252"},
    {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"},
    {"PYTHONIOENCODING": "latin-1"},
    {"TMPDIR": "/nonexistent"},
    {"HOME": ""},
    {"COLUMNS": "1"},
    {"COLUMNS": "x"},
    {"PYTHONOPTIMIZE": "2"},
    {"TZ": "bogus"},
    {"PATH": ""},
    {"SOURCE_DATE_EPOCH": "x"},
]


def draw(chance: random.Random) -> Attempt:
    """One build, or another command where its output cannot go."""
    return chance.choice([_draw_out, _draw_kill, _draw_kill, _draw_full, _draw_setting])(chance)


def _build(out: str, *more: str) -> tuple[str, ...]:
    return ("build", "project.yaml", "--out", out, "--draft", *more)


def _draw_out(chance: random.Random) -> Attempt:
    out = chance.choice(OUTS)
    links = {"link": "kept", "loop": "loop", "nowhere": "not/here"}
    words = _build(out, "--only", "D05") if chance.random() < 0.8 else ("new", out)
    expect = (
        "refused"
        if out in ("/", ".", "..", "", "kept", "foreign", "plan.txt", "link", "loop", "/proc/x", "pipe")
        else ""
    )
    files = {"project.yaml": dump(small()), "empty/.DS_Store": b"x", "foreign/manifest.json": b"{}"}
    return Attempt(f"{words[0]} to {out!a}"[:140], words, files, links, ("pipe",), alone=True, expect=expect)


def _draw_kill(chance: random.Random) -> Attempt:
    sent, after = chance.choice(SIGNALS), chance.uniform(0, 3)
    files = {"project.yaml": SOURCES["clean"], **BESIDE["clean"], **chance.choice([{}, _package()])}
    words = chance.choice([_build("out"), _build("out", "--only", "D05"), ("check", "project.yaml"), ("new", "out")])
    return Attempt(f"{words[0]}, {sent.name} after {after:.2f} s", words, files, alone=True, kill=sent, after=after)


@cache
def _package() -> dict[str, bytes]:
    """A package written before, which is to be whole, old or new, whenever the next build is stopped."""
    with tempfile.TemporaryDirectory() as made:
        build(EXAMPLES / "clean" / "project.yaml", Path(made, "out"), only=("D05",))
        return {f"out/{file.name}": file.read_bytes() for file in Path(made, "out").iterdir()}


def _draw_full(chance: random.Random) -> Attempt:
    files = {"project.yaml": dump(small())}
    if chance.random() < 0.5:
        words = chance.choice(
            [
                ("check", "project.yaml"),
                ("rules",),
                ("fields",),
                ("calc",),
                ("schema",),
                ("--help",),
                ("check", "--format", "json", "project.yaml"),
            ]
        )
        return Attempt(f"{words[0]} to a full device", words, files, alone=True, output="/dev/full")
    size = chance.choice([1, 1_000, 5_000, 20_000])
    return Attempt(f"build, files of at most {size} bytes", _build("out"), files, alone=True, file_size=size)


def _draw_setting(chance: random.Random) -> Attempt:
    setting = chance.choice(SETTINGS)
    data = small()
    data["project"]["name"] = "Müller 北面 😀"
    words = chance.choice(
        [
            ("check", "project.yaml"),
            ("check", "--format", "json", "project.yaml"),
            _build("out", "--only", "D05"),
            ("matrix",),
            ("rules", "ATT-01"),
            ("check", "ä"),
        ]
    )
    return Attempt(
        f"{' '.join(words)[:50]} with {setting}", words, {"project.yaml": dump(data)}, alone=True, environment=setting
    )
