"""Project files that are bombs, in other encodings, nested deep, or examples with a few bytes changed."""

import random

from tests.attack.attempt import Attempt
from tests.attack.classes._projects import BESIDE, NAMES, SOURCES, dump, small

BASE = dump(small())
ODD = [
    "\0",
    "\t",
    "'",
    '"',
    "{",
    "]",
    ": ",
    "- ",
    "&a ",
    "*a",
    "<<: ",
    "!x ",
    "---\n",
    "é",
    "\x85",
    "\u2028",
    "? ",
    "|\n",
    ">9\n",
    "%YAML 9.9\n",
]


def draw(chance: random.Random) -> Attempt:
    """One file, checked."""
    if chance.random() < 0.75:
        name = chance.choice(NAMES)
        content, about, beside = mutate(chance, SOURCES[name]), f"{name}, mutated", BESIDE[name]
        expect = ""
    else:
        about, content = chance.choice(costly_files(chance))
        beside, expect = {}, "refused"
    shown = chance.choice([(), ("--format", "json")])
    return Attempt(about, ("check", "project.yaml", *shown), {**beside, "project.yaml": content}, expect=expect)


def mutate(chance: random.Random, content: bytes) -> bytes:
    for _ in range(chance.randint(1, 4)):
        lines = content.splitlines(keepends=True) or [b""]
        at, other, place = chance.randrange(len(lines)), chance.randrange(len(lines)), chance.randint(0, len(content))
        kind = chance.choice(["line", "line", "insert", "insert", "cut", "byte"])
        if kind == "line":
            changed = chance.choice([[], [lines[at]] * 2, [lines[other]], [b" " + lines[at]], [lines[at]] * 50])
            content = b"".join([*lines[:at], *changed, *lines[at + 1 :]])
        elif kind == "insert":
            content = content[:place] + chance.choice(ODD).encode() + content[place:]
        elif kind == "cut":
            content = content[:place]
        else:
            content = content[:place] + bytes([chance.randrange(256)]) + content[place + 1 :]
    return content


def costly_files(chance: random.Random) -> list[tuple[str, bytes]]:
    """Files that cost a careless reader hours or all memory, or are of no encoding that is read."""
    many, wide = chance.choice([1_000, 50_000, 400_000]), chance.choice([2, 9])
    head = f"a0: &a0 [{', '.join('x' * wide)}]\n"
    bomb = head + "".join(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * wide)}]\n" for n in range(1, 30))
    merge = "m0: &m0 {x: 1}\n" + "".join(f"m{n}: &m{n} {{<<: [*m{n - 1}, *m{n - 1}], k{n}: 1}}\n" for n in range(1, 40))
    opened = chance.choice(["[", "{a: ", "- ", "? ", "&a [", "!!seq ["])
    text = BASE.decode()
    return [
        ("aliases", BASE + bomb.encode()),
        ("merges", BASE + merge.encode()),
        ("opened", f"a: {opened * many}".encode()),
        ("bare dashes", BASE + b"contract:\n  demands:\n" + b"  -\n" * many),
        ("dashes in a line", BASE + b"x: " + b"- " * many),
        ("indented", "".join(" " * n + "a:\n" for n in range(3_000)).encode()),
        ("a long key", BASE + b"k" * many * 4 + b": 1\n"),
        ("a long text", BASE.replace(b"Trial", b"x" * many * 10)),
        ("unknown keys", BASE + b"".join(b"k%d: 1\n" % n for n in range(many // 4))),
        ("the same key", BASE + b"k: 1\n" * (many // 4)),
        ("documents", b"---\n" * many),
        ("anchors", BASE + b"".join(b"k%d: &a%d x\n" % (n, n) for n in range(many // 4))),
        ("tags", BASE + b"x: !!python/object/apply:os.system [id]\n"),
        ("UTF-16", text.encode("utf-16")),
        ("UTF-32", text.encode("utf-32")),
        ("UTF-16 without a mark", text.encode("utf-16-be")),
        ("one byte a letter", text.replace("Trial", "Caf\xe9").encode("latin-1")),
        ("a surrogate", BASE.replace(b"Trial", b"\xed\xa0\x80")),
        ("random bytes", chance.randbytes(2_000)),
    ]
