"""The open items, read back from the tables of the page as a reader does, and from the list with a row for each."""

import csv
import re
from pathlib import Path

_HEAD = re.compile(r"(?P<party>[A-Z].*?)\. Needed before: (?P<before>[^;|]+)(?:; reply (?:by )?(?P<due>[^|]+))?")
_LATER, _BEFORE = "each later step", "; before "
_BEGIN = ("No. | Document | Holds up | Received\n", "Value | Holds up | Answer, date\n")


def list_rows(page: str) -> list[list[str]]:
    """Party as its head names it, work, what is asked, what waits for it, and the answer: of documents, then values."""
    return [row for head in _BEGIN for row in _read_table(page, head)]


def _read_table(page: str, head: str) -> list[list[str]]:
    rows, party, before = [], "", ""
    for line in page.partition(head)[2].split("\n\n")[0].splitlines():
        named = _HEAD.fullmatch(line)
        if named:
            party, before = named["party"], named["before"]
            continue
        asked, holds, answer = line.split(" | ")[-3:]
        asked, _, step = asked.rpartition(_BEFORE) if before == _LATER else (asked, "", before)
        rows.append([party, step, asked, holds, answer])
    return rows


def list_heads(page: str) -> list[str]:
    """The rows that name a party and a work, in their order."""
    return [line for line in page.splitlines() if _HEAD.fullmatch(line)]


def list_lines(folder: Path) -> list[list[str]]:
    """Role, work, what is asked, what waits for it, and the answer: of each value and document by itself."""
    text = (folder / "out" / "D19-open-items.csv").read_text("utf-8-sig")
    named = ("From", "Needed before", "Value or document", "Holds up", "Answer")
    return [[row[name] for name in named] for row in csv.DictReader(text.splitlines())]
