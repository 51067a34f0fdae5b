"""What `specgen record --out` writes, in a folder of its own."""

from collections.abc import Iterator
from pathlib import Path

from specgen.documents.context import DocumentContext
from specgen.model.value_text import count
from specgen.output.disk import refuse_unfit_folder
from specgen.output.reading_list import NAME, write_reading_list
from specgen.output.record_files import check_record_formats, default_record_formats, make_record_files
from specgen.output.record_folder import write_record
from specgen.pipeline import JudgedProject
from specgen.terminal.progress import Tell


def write_files(case: JudgedProject, out: str, formats: str | None, tell: Tell) -> Iterator[str]:
    """Write documents and the list of readings, all or none; tells what was written. Raises Refused."""
    folder, project = Path(out), case.project
    chosen = tuple(formats.split(",")) if formats else default_record_formats()
    check_record_formats(chosen)
    refuse_unfit_folder(folder)
    context = DocumentContext(project, case.context.standards, case.judgment, case.context.resolve)
    files = make_record_files(context, case.records, chosen, tell_step=tell)
    files[NAME] = write_reading_list(project, case.records)
    digests = {one.name: one.digest for one in project.records.files}
    yield from write_record(folder, files, str(project.get(("project", "name"))), digests)
    yield f"wrote {count(len(files), 'file')} to {out}"
