"""Texts that lie or act, in every text field and mark; the report of `check` is read back."""

import random
from typing import Any

from tests.attack.attempt import Attempt
from tests.attack.classes._projects import choose_field, dump, set_field, small

UNSEEN = [
    *"\n\r\x0b\x0c\x1b\x85\x9b\u2028\u2029\u202e\u2066\u200b\u2060\u00ad\u061c\u034f\u3164\ufe0f\ufeff\U000e0041\U000e0100\t\u00a0"
]
# Payloads for a terminal, a page, a Word file, a template and a spreadsheet.
PAYLOADS = [
    "Trial\nW9  yes",
    "Trial\r\nW9  yes, with measures",
    "x\n\n0 stops, 0 cautions, 0 notes, 0 open items",
    "\x1b[2J\x1b[HW9  yes",
    "\x1b]0;title\x07",
    "\x9b31m",
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "</style><svg onload=alert(1)>",
    "[x](javascript:alert(1))",
    "![x](https://example.com/x.png)",
    "<https://example.com>",
    "{{ 7 * 7 }}{% for a in range(9) %}{% endfor %}",
    "${title} $body $$",
    "# Heading\n\n| a | b |\n|---|---|\n",
    '{ DDEAUTO c:\\\\windows "x" }',
    "=HYPERLINK(1)",
    "]]><w:p/>",
    "&lt;&#x3c;&amp;",
    "\ue000\ue001",
    "../../etc/passwd",
    "%s%n{0}{x!r}",
    "a" * 5_000,
    "Z\u0300" * 100,
    "שלום עולם",
    "😀" * 50,
]
MARKS = [
    "W1\n",
    "\u04121",
    "w1",
    "W1 ",
    "W\u00a01",
    "Ｗ1",
    "W1\u200b",
    "*",
    "",
    "a" * 400,
    "__proto__",
    "W1  yes",
    "-",
    "\u05d01",
    "..",
    "/",
    "W1'\"<b>",
]


def draw(chance: random.Random) -> Attempt:
    """A payload in a text field, in a mark, or in a word of the command."""
    way = chance.random()
    if way < 0.15:
        return _draw_word(chance)
    data = small()
    about = _spoil_mark(chance, data) if way < 0.4 else _spoil_text(chance, data)
    files = {"project.yaml": dump(data)}
    if chance.random() < 0.3:
        only = chance.choice([(), *[("--only", chance.choice(["D02", "D05", "D08"]))] * 5])
        words = ("build", "project.yaml", "--out", "out", "--draft", "--formats", "docx,html,txt", *only)
        return Attempt(f"build, {about}", words, files)
    shown = chance.choice([(), (), ("--format", "json")])
    return Attempt(
        f"check, {about}", ("check", "project.yaml", *shown), files, walls=0 if shown else len(data["walls"])
    )


def _payload(chance: random.Random) -> str:
    if chance.random() < 0.6:
        return chance.choice(PAYLOADS)
    return f"Tri{chance.choice(UNSEEN)}al{chance.choice(UNSEEN)}"


def _spoil_text(chance: random.Random, data: dict[str, Any]) -> str:
    field, text = choose_field(chance, "text", "reference", "file", "choice"), _payload(chance)
    set_field(data, field, text)
    return f"{'.'.join(field.path)}: {text!a}"[:120]


def _spoil_mark(chance: random.Random, data: dict[str, Any]) -> str:
    mark = chance.choice(MARKS) if chance.random() < 0.7 else _payload(chance)
    wall = data["walls"]["W1"]
    data["walls"] = chance.choice([{mark: wall}, {"W1": wall, mark: wall}])
    return f"the mark {mark!a}"[:120]


def _draw_word(chance: random.Random) -> Attempt:
    text = _payload(chance).replace("\0", "")
    name = text.replace("/", "_")[:100]
    words = chance.choice(
        [
            ("check", name),
            ("check", "--format", "json", name),
            ("check", "project.yaml", "--rule", text),
            ("check", "project.yaml", text),
            ("calc", text),
            ("calc", "spreading-rate", f"{text}=1"),
            ("calc", "spreading-rate", f"volume_solids={text}"),
            ("fields", text),
            ("rules", text),
            ("new", f"none/{name}"),
            ("build", "project.yaml", "--out", "out", "--only", text, "--draft"),
            ("build", "project.yaml", "--out", "out", "--formats", text, "--draft"),
            ("build", "project.yaml", "--out", "out", "--letterhead", name, "--draft"),
            ("build", "project.yaml", "--out", "out", "--templates", name, "--draft"),
            (text,),
        ]
    )
    return Attempt(f"{words[0][:9]!a}, a word {text!a}"[:120], words, {"project.yaml": dump(small())})
