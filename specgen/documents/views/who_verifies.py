"""Who verifies the figures that rest on no text that was read, and on what they rest where their rows do not say."""

from specgen.documents.context import DocumentContext
from specgen.documents.parties import name_role, tell_party
from specgen.documents.verifiers import (
    APPLICATOR,
    CONTRACT,
    ENGINEER,
    MANUFACTURERS,
    find_sealing_day,
    is_checked_by_engineer,
)
from specgen.documents.views.to_verify import REMEMBERED, list_entries, shorten_name
from specgen.model.series import join_series
from specgen.model.source import Kind
from specgen.model.value_text import long_date

_SUMS = "D06"


def tell_verifiers(context: DocumentContext) -> str:
    """Who verifies what: `The party named in a row verifies its figures; manufacturers answer in writing. ...`."""
    texts: dict[str, dict[str, None]] = {}
    entries = list_entries(context)
    for role, text, _ in sorted(entries):
        if text not in (name_role(role), CONTRACT):
            texts.setdefault(role, {})[shorten_name(text).partition(",")[0]] = None
    written = "; manufacturers answer in writing" if any(role in MANUFACTURERS for role, _, _ in entries) else ""
    told = [f"The party named verifies its figures{written}."]
    told += [_tell_reader(context, role, join_series([*texts[role]])) for role in texts if role != APPLICATOR]
    if APPLICATOR in texts:
        others = "other" if len(texts) > 1 else "published"
        told.append(f"{tell_party(context, APPLICATOR)} verifies the {others} texts.")
    if any(text == CONTRACT for _, text, _ in entries):
        told.append(f"For a figure of the contract, cite the paragraph, or ask {_tell_asked(context)} by RFI.")
    told.append(_tell_bases({entry.basis[1] for entry in entries.values()}))
    return " ".join(filter(None, told))


def _tell_bases(bases: set[str]) -> str:
    """`Basis, unless named: common practice, no source; *: from memory.`: what rows do not say one by one."""
    usual = f"unless named: {Kind.PRACTICE.value}" if Kind.PRACTICE.value in bases else ""
    remembered = f"{REMEMBERED}: {Kind.MEMORY.value}" if Kind.MEMORY.value in bases else ""
    parts = "; ".join(filter(None, (usual, remembered)))
    return f"Basis, {parts}." if parts else ""


def _tell_reader(context: DocumentContext, role: str, texts: str) -> str:
    """What an engineer who checks the calculations does before: nobody signs what is still to be verified."""
    who = tell_party(context, role)
    if role != ENGINEER or not is_checked_by_engineer(context.project):
        return f"{who} verifies {texts}."
    sealed, day = find_sealing_day(context.project), context.project.get(("package", "date"))
    if sealed:
        return f"{who} verified {texts} before signing and sealing {_SUMS}, {long_date(sealed)}."
    due = f" by {long_date(day)}" if day and not context.is_marked else ""
    return f"{who} verifies {texts}{' earlier,' if due else ''} before signing {_SUMS}{due}."


def _tell_asked(context: DocumentContext) -> str:
    """Whom a question on the contract goes to: the architect, or the owner while none is named."""
    names = {role: context.project.get(("parties", role, "name")) for role in ("architect", "general_contractor")}
    if not names["architect"]:
        return "the owner"
    through = names["general_contractor"]
    return f"the architect through {through}" if through else "the architect"
