"""The documents of a site record: filled forms, nonconformances, trends."""

from dataclasses import replace
from pathlib import Path

from specgen.documents.catalogue import read_record_templates, templates, templates_folder
from specgen.documents.context import DocumentContext
from specgen.documents.document import compose_document
from specgen.documents.records.mockup_record import compose_mockup_record
from specgen.documents.records.site_record import compose_site_record
from specgen.model.block import Document
from specgen.model.record_judgment import RecordJudgment

_MOCKUP, _SITE = "D10", "D12"


def compose_records(
    context: DocumentContext, judgment: RecordJudgment, own: Path | None = None
) -> tuple[Document, ...]:
    """The documents in their order, by the firm's templates in the folder `own` where it has some.

    The nonconformances come first, as they wait for someone; the forms behind are what they were found in.
    """
    folder = templates_folder()
    told = replace(context, recorded=judgment)
    forms = {template.id: template for template in templates(folder, own)}
    reports = tuple(compose_document(one, told, draft=False) for one in read_record_templates(folder, own))
    return (
        *reports,
        *compose_mockup_record(forms[_MOCKUP], told, judgment),
        *compose_site_record(forms[_SITE], told, judgment),
    )
