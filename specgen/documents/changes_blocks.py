"""Digests of the blocks of a document, and what differs between two prints of it.

A digest is taken before anything is numbered, so that a step put in between changes none of those behind it.
"""

import dataclasses
import re
from collections import Counter
from collections.abc import Iterable, Iterator
from difflib import SequenceMatcher
from functools import cache
from itertools import groupby
from typing import Any

from specgen.documents.plain_text import plain_text
from specgen.model.block import Article, Block, Break, Contents, Document, Figure, Part, Ref, ReviewBoxes, Text, Value
from specgen.model.changes import ArticleChange, DocumentChange
from specgen.model.digest import digest
from specgen.model.state import ArticlePrint, DocumentPrint

# These print the issue itself, or nothing of their own.
_OF_EVERY_ISSUE = (Break, Contents, ReviewBoxes)
# What numbering, the arranging of columns, and records fill in.
_FILLED_IN = {"number", "run", "widths", "figures", "ticked"}
# The line of a drawing's title strip that names the issue.
_ISSUE = re.compile(">Revision [^<]*<")
_DIGITS = 16


def digest_blocks(blocks: Iterable[Block]) -> tuple[str, ...]:
    """The kind of each block and the digest of its words and structure: `item 3f2a...`."""
    return tuple(map(_digest_block, blocks))


def _digest_block(block: Block) -> str:
    kind = type(block).__name__.lower()
    told = "" if isinstance(block, _OF_EVERY_ISSUE) else _tell(block)
    return f"{kind} {digest(told.encode())[:_DIGITS]}"


def _tell(part: Any) -> str:
    """Words and structure as one text, without numbers, sources and looks."""
    if isinstance(part, (Text, Value)):
        return part.text
    if isinstance(part, tuple):
        return f"[{'|'.join(map(_tell, part))}]"
    if isinstance(part, Ref):
        return f"<{part.target}>"
    if isinstance(part, Figure):
        return f"{_tell(part.caption)}|{part.alt}|{_ISSUE.sub('><', part.svg)}"
    if dataclasses.is_dataclass(part) and not isinstance(part, type):
        return f"{type(part).__name__}({'|'.join(_tell(getattr(part, name)) for name in _list_told(type(part)))})"
    return str(part)


@cache
def _list_told(kind: type[Any]) -> tuple[str, ...]:
    return tuple(field.name for field in dataclasses.fields(kind) if field.name not in _FILLED_IN)


def print_document(document: Document) -> DocumentPrint:
    """The document as it is printed: the digests of its blocks by their article."""
    articles = []
    for (number, title), places in groupby(_list_places(document), key=lambda place: place[0]):
        articles.append(ArticlePrint(number, title, tuple(told for _, told in places)))
    return DocumentPrint(document.title, tuple(articles))


def _list_places(document: Document) -> Iterator[tuple[tuple[str, str], str]]:
    """Number and title of the article of each block, and the digest of the block."""
    under = "", ""
    for block, told in zip(document.blocks, document.digests, strict=True):
        if isinstance(block, (Part, Article)):
            under = block.number, plain_text(block.title)
        yield under, told


def compare_document(id: str, old: DocumentPrint | None, new: DocumentPrint | None) -> DocumentChange | None:
    """What differs in a document; None where nothing does. One of the two prints must be there."""
    if old is None or new is None:
        kind, there = ("added", new) if new is not None else ("dropped", old)
        return DocumentChange(id, there.title if there is not None else "", kind)
    changed, articles = frozenset[int](), list[ArticleChange]()
    before, after = _flatten(old), _flatten(new)
    found: dict[tuple[str, str], dict[str, Counter[str]]] = {}
    for tag, start, end, first, last in SequenceMatcher(
        None, [told for _, told in before], [told for _, told in after]
    ).get_opcodes():
        if tag != "equal":
            changed |= frozenset(range(first, last))
            _count(before[start:end], after[first:last], found)
    for (number, title), counts in found.items():
        told = (tuple(counts[what].items()) if what in counts else () for what in ("changed", "added", "removed"))
        articles.append(ArticleChange(number, title, *told))
    return DocumentChange(id, new.title, "changed", tuple(articles), changed) if articles else None


def _flatten(told: DocumentPrint) -> list[tuple[tuple[str, str], str]]:
    return [((article.number, article.title), block) for article in told.articles for block in article.blocks]


def _count(
    gone: list[tuple[tuple[str, str], str]],
    come: list[tuple[tuple[str, str], str]],
    found: dict[tuple[str, str], dict[str, Counter[str]]],
) -> None:
    """Count what went and came at one place: what stands for another of its kind is changed, the rest added or gone."""
    left = Counter(_kind(told) for _, told in gone)
    for under, told in come:
        kind = _kind(told)
        what = "changed" if left[kind] else "added"
        left[kind] -= left[kind] > 0
        found.setdefault(under, {}).setdefault(what, Counter())[kind] += 1
    removed = []
    for under, told in reversed(gone):
        if left[_kind(told)]:
            left[_kind(told)] -= 1
            removed.append((under, _kind(told)))
    for under, kind in reversed(removed):
        found.setdefault(under, {}).setdefault("removed", Counter())[kind] += 1


def _kind(told: str) -> str:
    return told.partition(" ")[0]
