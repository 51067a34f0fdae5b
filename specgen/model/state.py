"""What a package was issued with, in words: what two states of a project are compared by."""

from dataclasses import dataclass, field
from typing import NamedTuple

from specgen.model.finding import Severity


class Said(NamedTuple):
    """A value in words: in inch-pound and in metric units; twice the same where it has none."""

    ip: str
    si: str


class Figure(NamedTuple):
    """A figure in words, and what it is or where it comes from."""

    said: Said
    about: str


class OwedDocument(NamedTuple):
    """A document still required: its name, who owes it by the name of the role, and the marks of what it is for."""

    name: str
    owed_by: str
    subjects: tuple[str, ...]


class ArticlePrint(NamedTuple):
    """An article as it was printed: number and title, empty above the first heading, and a digest of each block."""

    number: str
    title: str
    blocks: tuple[str, ...]


class DocumentPrint(NamedTuple):
    """A document as it was printed: its title, and its articles in order."""

    title: str
    articles: tuple[ArticlePrint, ...]


class OpenField(NamedTuple):
    """A field that is owed and absent: its label, and the role that gives it."""

    label: str
    owed_by: str


Told = tuple[str, str]  # the code of a clause and a subject; or the name of a calculation and the path of a member


@dataclass(frozen=True, kw_only=True)
class State:
    """A project as it stands or was issued."""

    project: str  # its name
    revision: str = "0"
    date: str = ""  # of the package, in words; empty if not given
    whole: bool = True  # whether all documents that are owed are printed, and not some of them
    draft: bool = False  # whether they are printed as a draft
    fields: dict[str, Said] = field(default_factory=dict)  # what is given, by dotted path
    limits: dict[str, Figure] = field(default_factory=dict)  # those used, by row, each with its source
    findings: dict[Told, tuple[Severity, str]] = field(default_factory=dict)  # severity and message
    verdicts: dict[str, str] = field(default_factory=dict)  # by the mark of the wall
    results: dict[Told, Figure] = field(default_factory=dict)  # of calculations, each with its title
    times: dict[Told, Figure] = field(default_factory=dict)  # fit days and dates, by what and member, with titles
    open: dict[str, OpenField] = field(default_factory=dict)  # by dotted path
    owed: tuple[OwedDocument, ...] = ()
    documents: dict[str, DocumentPrint] = field(default_factory=dict)  # by id
    attached: dict[str, str] = field(default_factory=dict)  # the digest of each attachment, by the path of its file
