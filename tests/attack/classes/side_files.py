"""Firm files, coating system files and site records that lie, loop, or are not what they should be."""

import random

from tests.attack.attempt import Attempt
from tests.attack.classes._projects import BESIDE, SOURCES, dump, small
from tests.attack.classes.texts import PAYLOADS
from tests.attack.classes.yaml_files import costly_files, mutate

KEYS = ("firm", "coating_system", "records")
# Names that lead out of the folder, round in a circle, or nowhere.
WAYS = [
    "../above.txt",
    "/etc/passwd",
    "..",
    ".",
    "",
    "project.yaml",
    "loop",
    "out.yaml",
    "pipe",
    "/dev/zero",
    "kept",
    "none.yaml",
    "~/x",
    "c:x",
    "\\\\x",
    "file:///x",
    "a\0b",
    "x\ny.yaml",
    "\x1b[2J",
    "large",
    "side.yaml/",
]
SIZE = 8 << 30


def draw(chance: random.Random) -> Attempt:
    """A project and the side file it names."""
    return chance.choice([_draw_way, _draw_content, _draw_mutated])(chance)


def _draw_way(chance: random.Random) -> Attempt:
    key, name = chance.choice(KEYS), chance.choice(WAYS)
    files = {"project.yaml": dump(small() | {key: [name] if key == "records" else name}), "side.yaml": b"format: 1\n"}
    links = {"loop": "loop", "out.yaml": "../above.txt"}
    about, words = f"{key}: {name!a}", ("check", "project.yaml")
    expect = "" if name in ("", "side.yaml/") else "refused"
    return Attempt(about, words, files, links, ("pipe",), {"large": SIZE}, expect=expect)


def _draw_content(chance: random.Random) -> Attempt:
    key = chance.choice(KEYS)
    if chance.random() < 0.5:
        about, content = chance.choice(costly_files(chance))
    else:
        about, content = (
            "a payload",
            dump(
                {
                    "format": "1",
                    "parties": {"applicator": {"name": chance.choice(PAYLOADS)}},
                    "attachments": {chance.choice(PAYLOADS): {"title": chance.choice(PAYLOADS)}},
                }
            ),
        )
    project = small() | {key: ["side.yaml"] if key == "records" else "side.yaml"}
    files = {"project.yaml": dump(project), "side.yaml": content}
    return Attempt(f"{key} with {about}", ("check", "project.yaml"), files)


def _draw_mutated(chance: random.Random) -> Attempt:
    name = chance.choice(sorted(BESIDE["clean"]))
    files = {**BESIDE["clean"], "project.yaml": SOURCES["clean"], name: mutate(chance, BESIDE["clean"][name])}
    words = chance.choice([("check", "project.yaml"), ("build", "project.yaml", "--out", "out", "--only", "D02")])
    return Attempt(f"{name}, mutated", words, files)
