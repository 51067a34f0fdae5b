"""Each material has its marked data sheet and safety data sheet, and each item of the register its document.

Why: a sheet of a whole family of goods, not marked for this job, tells the reviewer nothing about this
wall. A letter written for another job binds nobody here.

passes
    package: {purpose: mockup_submittal}
    attachments:
      A1: {kind: data_sheet, covers: [adhesive], marked: yes}
      A2: {kind: sds, covers: [adhesive]}
      A3: {kind: letter, project_named: yes}
fails SUB-02a at attachments.*.covers
    package: {purpose: mockup_submittal}
    attachments: {A2: {kind: sds, covers: [adhesive]}}
fails SUB-02b at attachments.A1.marked
    attachments: {A1: {kind: data_sheet, covers: [adhesive], marked: no}}
fails SUB-02c at attachments.*.covers
    package: {purpose: mockup_submittal}
    attachments: {A1: {kind: data_sheet, covers: [adhesive], marked: yes}}
fails SUB-02d at attachments.A3.project_named
    attachments: {A3: {kind: letter, project_named: no}}
fails SUB-02e at contract.items.I1.attachments
    package: {purpose: work_submittal, date: 2027-03-01}
    contract: {items: {I1: {due_on: 2027-03-01, attachments: []}}}
fails SUB-02f at attachments.A4.file
    package: {purpose: work_submittal}
    attachments: {A4: {kind: data_sheet, file: papers/lost.pdf}}
"""

from collections.abc import Iterable

from specgen.judging.materials import materials, mixed_materials
from specgen.judging.papers import covering, of_kind, to_list
from specgen.judging.rule import CAUTION, STOP, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_documented, members_where
from specgen.model.absence import if_given
from specgen.model.typed_views import Attachment, Description, SubmittalItem
from specgen.quantities.comparison import more

RULE = Rule(
    "SUB-02",
    "Data sheets and documents of the register",
    remedy="Provide the document.",
    steps="site_conditions",
    documents="D18 D19",
)


@RULE.test(
    "a",
    STOP,
    "No data sheet covers {found}.",
    at="attachments.*.covers",
    basis="review_memory",
    remedy="Get the data sheet from the manufacturer, and mark the lines that apply to this project.",
    why="without its data sheet nobody can hold a material against the specification",
)
def no_data_sheet(project: Description) -> Violations:
    """A material of the job has no data sheet."""
    if not is_draft(project):
        yield from _list_uncovered(project, materials(project), "data_sheet")


RULE.clause(
    "b",
    STOP,
    "The data sheet is not marked for this project.",
    when="attachment.kind = data_sheet and attachment.marked = no",
    basis="review_memory",
    remedy="Mark the product, grade, and lines that apply.",
)


@RULE.test(
    "c",
    STOP,
    "No safety data sheet covers {found}.",
    at="attachments.*.covers",
    basis="review_memory",
    remedy="Get the safety data sheet from the manufacturer.",
    why="the crew needs the hazards of each product, and how to work with it, in writing",
)
def no_safety_data_sheet(project: Description) -> Violations:
    """A liquid or powder of the job has no safety data sheet."""
    if not is_draft(project):
        yield from _list_uncovered(project, mixed_materials(project), "sds")


RULE.clause(
    "d",
    STOP,
    "The letter does not name this project.",
    when="attachment.kind = letter and attachment.project_named = no",
    basis="review_memory",
    remedy="Get a letter that names the project.",
    why="a letter written for another job binds nobody here",
)


@RULE.test(
    "e",
    STOP,
    "The register requires this item on {wanted}, and no document answers it.",
    at="submittal_item.attachments",
    basis="contract_review",
    remedy="Attach the document, or correct the date in the register.",
    why="what the contract asks for is missing from the set",
)
def item_unanswered(item: SubmittalItem, project: Description) -> Violations:
    """An item of the register has fallen due and names no paper."""
    if is_draft(project) or any(if_given(lambda: item.attachments) or ()):
        return
    if not more(item.due_on, project.package.date):
        yield violation(wanted=item.due_on)


@RULE.test(
    "f",
    CAUTION,
    "The file of the document is not in the project folder: {found}.",
    at="attachment.file",
    basis="review_memory",
    remedy="Put the file into the folder, or submit the document separately.",
    why="a document that is not in the folder does not reach the reviewer",
)
def file_lost(paper: Attachment, project: Description) -> Violations:
    """A document names a file that is not there."""
    if not is_draft(project) and (*paper.path, "file") in project.project.unfound:
        yield violation(paper.file)


def _list_uncovered(project: Description, wanted: Iterable[str], kind: str) -> Violations:
    """Those of the materials that no paper of a kind covers."""
    papers = {material: (of_kind(kind), covering(material)) for material in wanted}
    for material in members_where(papers, lambda material: not is_documented(project, papers[material])):
        yield violation(material, to_add=to_list(papers[material]))
