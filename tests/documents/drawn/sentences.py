"""What documents print of projects that no example has the like of: sentences and drawings of projects drawn and kept.

A sentence stands once in each document, whatever its figures and marks, as a draft prints it or a set that is issued.
"""

import re
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

from specgen import pipeline
from specgen.documents.catalogue import templates
from specgen.documents.drafts import ANSWER
from specgen.output import package

PROJECTS = Path(__file__).parent / "projects"
EVERY = tuple(template.id for template in templates() if template.stage != "closeout")
OF_A_SET = tuple(name for name in EVERY if name != ANSWER)
FIGURED = 10  # so many of the projects have the strokes of their drawings kept too
# What a sentence is told apart by: its words, in whatever project it stands.
_LETTER = re.compile(r"\[[a-z]\]")
_FIGURE = re.compile(r"\d[\d,./-]*")
_MARKS = re.compile(r"\b(?:[A-Z]{1,3}#(?:, | and | to )?)+")
_ENDS = re.compile(r" \| |(?<=[.;:]) ")
_DRAWING = re.compile(r"D\d\d-figure-\d+-(?P<kind>.+)\.svg")


def project_texts() -> dict[str, str]:
    """The sentences by document and the drawings by kind, each below the project that prints it first."""
    told: dict[str, list[str]] = defaultdict(list)
    known: dict[str, set[str]] = defaultdict(set)
    for number, file in enumerate(sorted(PROJECTS.glob("*.yaml"))):
        for name, content in _compose(file):
            drawing = _DRAWING.fullmatch(name)
            title = drawing["kind"] if drawing else name.partition("-")[0]
            fresh = list(list_fresh(content, known[title])) if name.endswith(".txt") else []
            if drawing and number < FIGURED and content not in known[title]:
                known[title].add(content)
                fresh = [content.replace("><", ">\n<")]
            told[title] += [f"\n[{file.stem}]", *fresh] if fresh else []
    return {f"{name}.txt": "\n".join((name, *lines, "")) for name, lines in told.items() if lines}


def _compose(file: Path) -> Iterator[tuple[str, str]]:
    """The files of a draft, or of the set as it would be issued if nothing stopped it."""
    case, draft = pipeline.check(file), file.name.startswith("draft")
    parts = (case.project, case.context.standards, case.judgment, case.context.resolve, ("txt", "svg"))
    for name, content in package.make_package(*parts, EVERY if draft else OF_A_SET, draft).files.items():
        yield name, content.decode()


def list_fresh(page: str, known: set[str]) -> Iterator[str]:
    """The sentences and cells of a page that are not known yet, which are known then."""
    for told in (part for line in page.splitlines() for part in _ENDS.split(line)):
        shape = _MARKS.sub("@", _FIGURE.sub("#", _LETTER.sub("", told))).strip()
        if any(map(str.isalpha, shape)) and shape not in known:
            known.add(shape)
            yield told
