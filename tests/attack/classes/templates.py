"""A firm's own templates and pages: bombs, ways out of the sandbox, active pages, mistakes of their author."""

import random

from tests.attack.attempt import Attempt
from tests.attack.classes._page_pieces import PAGES, STYLES
from tests.attack.classes._projects import dump, small
from tests.attack.classes._template_words import BOMBS, ESCAPES, HEADS, MISTAKES
from tests.running import words_of_build
from tests.support import ROOT

HEAD = "---\nid: D05\ntitle: Warnings\norder: 50\n---\n"
FOLDER = ROOT / "templates"
FRAME, STYLE = (FOLDER / "page.html").read_text("utf-8"), (FOLDER / "style.css").read_text("utf-8")
OURS = {file.name: file.read_text("utf-8") for file in (FOLDER / "documents").glob("*.j2")}


def draw(chance: random.Random) -> Attempt:
    """A folder of templates, built with."""
    name, content, about = chance.choice([_draw_words, _draw_words, _draw_head, _draw_page, _draw_style, _draw_ours])(
        chance
    )
    files = {"project.yaml": dump(small()), f"words/{name}": content.encode("utf-8", "surrogatepass")}
    words = (*words_of_build("project.yaml", "out", "docx,html,txt"), "--draft", "--templates", "words")
    return Attempt(f"{name}: {about!a}"[:140], words, files)


def _draw_words(chance: random.Random) -> tuple[str, str, str]:
    words = chance.choice(chance.choice([BOMBS, ESCAPES, MISTAKES]))
    around = chance.choice(
        ["{}", "{}", "# Head\n\n1. {}\n", "| a |\n|---|\n| {} |\n", "{{% if true %}}{}{{% endif %}}"]
    )
    return (
        "documents/D05.md.j2",
        HEAD + around.replace("{{%", "{%").replace("%}}", "%}").replace("{}", words, 1) + "\n",
        words,
    )


def _draw_head(chance: random.Random) -> tuple[str, str, str]:
    line = chance.choice(HEADS)
    key = line.partition(":")[0]
    lines = [old for old in HEAD.splitlines() if not old.startswith(f"{key}:")]
    return (
        "documents/D05.md.j2",
        "\n".join([*lines[:-1], line, "---", chance.choice(["x", "# A\n\n## B\n\nx"]), ""]),
        line,
    )


def _draw_page(chance: random.Random) -> tuple[str, str, str]:
    piece = chance.choice(PAGES)
    part = chance.choice(["$body", "$title", "$head", "</head>", "<body", "<!DOCTYPE html>"])
    return "page.html", FRAME.replace(part, piece + part), piece


def _draw_style(chance: random.Random) -> tuple[str, str, str]:
    piece = chance.choice(STYLES)
    return "style.css", chance.choice([STYLE + piece, piece + STYLE, piece]), piece[:100]


def _draw_ours(chance: random.Random) -> tuple[str, str, str]:
    """One of our templates with a few of its characters changed."""
    name = chance.choice(sorted(OURS))
    text = OURS[name]
    for _ in range(chance.randint(1, 3)):
        at = chance.randrange(len(text))
        text = (
            text[:at]
            + chance.choice(["", "{{", "}}", "{%", "%}", "|", "(", "'", ".x", "\n", "- ", "#", text[at - 9 : at + 9]])
            + text[at + chance.randint(0, 3) :]
        )
    return f"documents/{name}", text, "ours, mutated"
