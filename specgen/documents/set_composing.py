"""Composes the documents of a package, those that tell of the others last, and finds what changed in them."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from specgen.documents import document
from specgen.documents.banner import mark_draft
from specgen.documents.catalogue import CHANGE_SHEET, Template
from specgen.documents.changes_finding import find_changes
from specgen.documents.changes_state import TELLS_OF_CHANGES, take_state
from specgen.documents.context import DocumentContext
from specgen.documents.draft_forms import find_forms_left_out
from specgen.documents.drafts import (
    ANSWER,
    IN_PARTS,
    OPEN_ITEMS,
    TELLS_OF_OTHERS,
    Remainder,
    count_known,
    find_left_out,
    list_asked,
    list_cited,
)
from specgen.model.block import Document
from specgen.model.changes import Changes
from specgen.model.problem import refuse
from specgen.model.state import State
from specgen.model.suggest import suggest

_APART = (ANSWER, CHANGE_SHEET)


@dataclass(frozen=True, kw_only=True)
class PackageDocuments:
    """The documents of a package, what is known of all, the state they show, and what changed since another."""

    documents: tuple[Document, ...]
    rest: Remainder
    state: State
    changes: Changes | None


def choose_templates(
    every: tuple[Template, ...], only: tuple[str, ...], stages: tuple[str, ...] | None
) -> tuple[Template, ...]:
    """The templates asked for, else those of the stages that are owed; the answer of a draft is part of no other.

    A draft, which owes no stage, has them all. Raises Refused for an unknown id.
    """
    known = {template.id: template for template in every}
    for name in only:
        if name.upper() == CHANGE_SHEET and CHANGE_SHEET not in known:
            raise refuse(f"{CHANGE_SHEET} tells what changed since a package that was issued", "add --since PACKAGE")
        if name.upper() not in known:
            near = re.sub(r"(?<=^D)(?=\d$)", "0", name.upper())
            raise refuse(f"there is no document {name!r}", suggest(near, list(known)))
    wanted = {name.upper() for name in only}
    if ANSWER in wanted and stages is not None:
        raise refuse(f"{ANSWER} is part of a draft alone", "add --draft")
    owed = [t for t in every if stages is None or (t.id != ANSWER and t.stage in stages)]
    return tuple(t for t in every if t.id in wanted) if only else tuple(owed)


def compose_set(
    chosen: tuple[Template, ...],
    issued: tuple[Template, ...],
    every: tuple[Template, ...],
    context: DocumentContext,
    since: State | None = None,
) -> PackageDocuments:
    """The chosen documents, their changed blocks marked; `issued` are those of the whole package.

    A whole draft leaves out those of which little is known; what is asked for by name is written all the same. The
    change sheet tells of the whole package, also where it is asked for by itself.
    """
    named = frozenset() if chosen is issued else frozenset(template.id for template in chosen)
    whole = not named or CHANGE_SHEET in named
    composed = (*issued, *(t for t in chosen if t not in issued)) if whole else chosen
    made, rest = _compose_all(composed, issued, every, context, context.draft and whole, named)
    state = take_state(context, made.values(), whole, context.draft)
    changes = None
    if since is not None:
        changes = replace(find_changes(since, state, context.project.schema), marked=True)
        telling = replace(context, rest=rest, changes=changes)
        for template in chosen:
            if template.id == CHANGE_SHEET or (template.id in TELLS_OF_CHANGES and template.id in made):
                made[template.id] = document.compose_document(template, telling, False)
        for one in changes.documents:
            if one.blocks:
                made[one.id] = _mark_blocks(made[one.id], one.blocks, since)
    kept = [made[template.id] for template in chosen if template.id in made]
    if context.draft:
        telling = replace(context, rest=rest)
        kept = [mark_draft(one, telling) for one in kept]
    if named:
        printed = {name: one for name, one in state.documents.items() if name in named}
        state, rest = replace(state, whole=False, documents=printed), rest._replace(left_out=())
    return PackageDocuments(documents=tuple(kept), rest=rest, state=state, changes=changes)


def _mark_blocks(made: Document, blocks: frozenset[int], since: State) -> Document:
    """The document with its changed blocks marked; its title block tells since when."""
    legend = ("Double line", f"Changed since revision {since.revision}")
    return replace(made, changed=blocks, facts=(*made.facts, legend))


def _compose_all(
    chosen: tuple[Template, ...],
    issued: tuple[Template, ...],
    every: tuple[Template, ...],
    context: DocumentContext,
    leaves_out: bool,
    named: frozenset[str],
) -> tuple[dict[str, Document], Remainder]:
    """The chosen documents by id, save those a draft leaves out and the change sheet, and what is known of all.

    Those `named` are never left out.
    What tells of the others is composed again when they are there.
    """
    last = [template for template in chosen if template.id in TELLS_OF_OTHERS]
    first = [template for template in (every if last else chosen) if template.id not in _APART]

    def compose(those: Iterable[Template], rest: Remainder) -> dict[str, Document]:
        telling = replace(context, rest=rest)
        return {template.id: document.compose_document(template, telling, False) for template in those}

    made = compose(first, Remainder())
    known = count_known(made.values())
    little_known = find_left_out(known, context.project) if leaves_out else ()
    left_out = tuple(entry for entry in little_known if entry.id not in named)
    missing = {entry.id for entry in left_out}
    held = tuple((t.id, t.title) for t in issued if t.id not in missing)
    rest = Remainder(known, left_out, list_asked(made.values()), held=held)
    if leaves_out:
        rest = rest._replace(forms_left_out=find_forms_left_out(made[name] for name in IN_PARTS if name in made))
        made |= compose((t for t in first if t.id in IN_PARTS and t.id not in named), rest)
    # The answer and the list of what is asked for tell figures of their own, which are cited as those of the others.
    made |= compose((t for t in last if t.id in (ANSWER, OPEN_ITEMS)), rest)
    rest = rest._replace(cited=list_cited(made.values()))
    made |= compose(last, rest)
    wanted = {template.id for template in chosen} - missing
    return {name: one for name, one in made.items() if name in wanted}, rest
