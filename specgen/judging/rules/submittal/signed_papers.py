"""A document that counts only when signed is signed.

Why: an unsigned report or letter is a draft that nobody answers for. A reviewer sends it back.

passes
    attachments:
      A1: {kind: test_report, signed: yes}
      A2: {kind: data_sheet}
fails SUB-04a at attachments.A1.signed
    attachments: {A1: {kind: calculation, signed: no}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "SUB-04",
    "Documents signed",
    remedy="Have the document signed.",
    steps="site_conditions",
    documents="D18",
)

RULE.clause(
    "a",
    STOP,
    "The document is not signed.",
    when="attachment.kind in signed_documents and attachment.signed = no",
    basis="review_memory",
    remedy="Get signature, printed name, and date.",
)
