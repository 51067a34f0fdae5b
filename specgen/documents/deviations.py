"""The deviations of a project, and the values they stand behind."""

import re

from specgen.model.field import Path
from specgen.model.project import Project
from specgen.model.source import Kind, Source
from specgen.model.value_text import long_date


def find_deviations(project: Project, demand: Path) -> list[str]:
    """The marks of the deviations that answer the paragraph of a demand, named with or without its section."""
    paragraph, section = (project.get((*demand, name)) for name in ("paragraph", "section"))
    names = {str(paragraph), f"{section} {paragraph}"}
    return [
        mark
        for mark in project.members.get(("deviations",), ())
        if names & set(project.get(("deviations", mark, "answers")) or ())
    ]


def deviation_sources(project: Project) -> dict[Path, tuple[frozenset[str], Source]]:
    """What is told wherever a deviating value prints: by its pattern, the members it is demanded of, and the source."""
    sources: dict[Path, tuple[frozenset[str], Source]] = {}
    for number in project.members.get(("contract", "demands"), ()):
        demand = ("contract", "demands", number)
        marks = find_deviations(project, demand)
        if marks:
            pattern = tuple(str(project.get((*demand, "field")) or "").split("."))
            told = Source(Kind.DEVIATION, "; ".join(_describe(project, mark, demand) for mark in marks))
            sources[pattern] = (frozenset(project.get((*demand, "for")) or ()), told)
    return sources


def name_paragraphs(project: Project, mark: str) -> str:
    """`09 96 00 2.4.A`: the paragraphs a deviation answers, each with its section where the contract lists it."""
    listed = {}
    for number in project.members.get(("contract", "demands"), ()):
        paragraph, section = (project.get(("contract", "demands", number, name)) for name in ("paragraph", "section"))
        if section:
            listed[str(paragraph)] = f"{section} {paragraph}"
    return ", ".join(listed.get(str(name), str(name)) for name in project.get(("deviations", mark, "answers")) or ())


def say_approval(project: Project, mark: str) -> str:
    """`approved February 24, 2027`, or `not approved`."""
    day = project.get(("deviations", mark, "approved_on"))
    return f"approved {long_date(day)}" if day else "not approved"


def tell_approval(project: Project, mark: str) -> str:
    """`approved February 24, 2027, by Lintel and Quoin Architects, RFI 027`: with approver and document where given."""
    by, document = (project.get(("deviations", mark, name)) for name in ("approved_by", "approval_document"))
    return ", ".join(filter(None, (say_approval(project, mark), f"by {by}" if by else "", document)))


def find_approval(project: Project, papers: set[str]) -> str:
    """The mark of the approved deviation whose approval stands in one of these attachments; empty where none does."""
    for mark in project.members.get(("deviations",), ()):
        day, document = (project.get(("deviations", mark, name)) for name in ("approved_on", "approval_document"))
        if day and papers & set(re.findall(r"\w+", document or "")):
            return mark
    return ""


def tell_longer_review(project: Project) -> str:
    """` with deviations`, behind the days of the longer review; of approved ones that it is planned all the same."""
    marks = project.members.get(("deviations",), ())
    if not marks or any(project.get(("deviations", mark, "approved_on")) is None for mark in marks):
        return " with deviations" if marks else ""
    noun = f"deviation{'s' if len(marks) > 1 else ''}"
    return f" with {noun} {', '.join(marks)}; approval of the {noun} does not shorten the review"


def _describe(project: Project, mark: str, demand: Path) -> str:
    section, paragraph = (project.get((*demand, name)) for name in ("section", "paragraph"))
    paragraphs = " ".join(str(part) for part in (section, paragraph) if part)
    return f"{mark} from {paragraphs}, {say_approval(project, mark)}"
