"""The files of a site record: each document by itself, and the PDF of all."""

import io
from datetime import date

import pytest
from pypdf import PdfReader

from specgen.model.problem import Refused
from specgen.model.record_judgment import RecordJudgment
from specgen.output.record_files import make_record_files
from tests.documents.records.entries import GLOSS_PASS, context_with, make_entries

ENTRIES = make_entries(("log", GLOSS_PASS), ("log", {**GLOSS_PASS, "elevation": "E2", "date": date(2027, 6, 16)}))
NAMES = ["D21-nonconformance-report", "D22-record-trends", "D12-E1-site-record", "D12-E2-site-record"]


def test_each_document_is_a_file_and_all_are_bound_as_one_pdf() -> None:
    files = make_record_files(context_with(ENTRIES), RecordJudgment(), ("docx", "html", "pdf"))
    assert list(files) == [*(f"{n}.{e}" for e in ("docx", "html") for n in NAMES), "site-record.pdf"]
    reader = PdfReader(io.BytesIO(files["site-record.pdf"]))
    assert reader.metadata is not None
    assert reader.metadata.title == "Wickerwell Branch Library: Site record"
    assert reader.get_fields() in (None, {})  # a record is filled in: nothing of it is a form any more


def test_the_same_record_gives_the_same_bytes() -> None:
    formats = ("docx", "html", "pdf", "txt")
    first, second = (make_record_files(context_with(ENTRIES), RecordJudgment(), formats) for _ in range(2))
    assert first == second


def test_an_unknown_format_is_refused_with_the_nearest() -> None:
    with pytest.raises(Refused, match=r"there is no format 'dox' here \(did you mean docx\?\)"):
        make_record_files(context_with(ENTRIES), RecordJudgment(), ("dox",))
