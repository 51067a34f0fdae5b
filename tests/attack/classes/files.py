"""Every file or folder that a command takes, given as a pipe, a device, a loop, a sparse file or one not there."""

import random

from tests.attack.attempt import Attempt
from tests.attack.classes._projects import dump, small

SIZE = 8 << 30
NAMES = [
    "pipe",
    "sparse",
    "loop",
    "kept",
    "none",
    "/dev/zero",
    "/dev/random",
    "/dev/stdin",
    "/dev/tty",
    "/proc/self/mem",
    "/proc/self/environ",
    "link",
    "project.yaml/",
    "empty",
    ".",
    "..",
    "/",
    "",
    "x" * 300,
    "a\nb",
    "\x1b[2J",
    "\udcff",
    "~",
    "-",
    "--",
    "kept/letter.txt",
    "out/../pipe",
    "plan.txt/x",
]
WAYS = [
    ("check", "{}"),
    ("check", "--format", "json", "{}"),
    ("calc", "spreading-rate", "--from", "{}"),
    ("build", "{}", "--out", "out", "--draft"),
    ("build", "project.yaml", "--out", "out", "--draft", "--only", "D05", "--letterhead", "{}"),
    ("build", "project.yaml", "--out", "out", "--draft", "--only", "D05", "--templates", "{}"),
    ("build", "project.yaml", "--out", "out", "--draft", "--only", "D05", "--templates", "words"),
    ("new", "{}"),
]
# What is refused by its kind before it is read, or never ends.
ENDLESS = ["pipe", "sparse", "loop", "link", "/dev/zero", "kept", "none"]
KINDS = ["documents/D05.md.j2", "page.html", "style.css", "documents", "documents/D08.md.j2"]


def draw(chance: random.Random) -> Attempt:
    """One name in one place."""
    name, words = chance.choice(chance.choice([ENDLESS, NAMES])), chance.choice(WAYS)
    files = {"project.yaml": dump(small()), "empty": b""}
    links, pipes, sparse = {"loop": "loop", "link": "/dev/zero"}, ["pipe"], {"sparse": SIZE}
    if words[-1] == "words":
        kind, how = chance.choice(KINDS), chance.choice(["pipe", "zero", "loop", "sparse", "out"])
        files["words/documents/D09.md.j2"], place = b"", f"words/{kind}"
        if kind == "documents":
            del files["words/documents/D09.md.j2"]
            files["words/x"] = b""
        if how == "pipe":
            pipes.append(place)
        elif how == "sparse":
            sparse[place] = SIZE
        else:
            links[place] = {"zero": "/dev/zero", "loop": place.rpartition("/")[2], "out": "/etc"}[how]
        name = f"{kind} as {how}"
    made = tuple(name if word == "{}" else word for word in words)
    # `new` writes to a device if it is asked to; nothing of the user's is there.
    expect = "refused" if name in ENDLESS and words[0] != "new" else ""
    return Attempt(
        f"{' '.join(words)[:60]} {name!a}"[:140], made, files, links, tuple(pipes), sparse, alone=True, expect=expect
    )
