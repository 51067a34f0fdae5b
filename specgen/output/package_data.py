"""What the manifest of a package tells above its list of files: from what it was made, and what it says."""

from collections.abc import Iterator
from typing import Any

from specgen import __version__
from specgen.documents.context import DocumentContext
from specgen.documents.set_composing import PackageDocuments
from specgen.model.finding import Finding, Severity
from specgen.model.problem import Problem
from specgen.output.issued_data import write_state
from specgen.output.manifest import FORMAT
from specgen.terminal.report_data import finding_to_data


def describe_package(
    context: DocumentContext, composed: PackageDocuments, draft: bool, lacking: tuple[Problem, ...]
) -> dict[str, Any]:
    """The data of a package: the issue, the files and version it was made from and by, and the state it shows."""
    project, judgment, rest = context.project, context.judgment, composed.rest
    inputs = (*project.inputs, *context.attached)
    about: dict[str, Any] = {
        "format": FORMAT,
        "specgen": __version__,
        "project": project.get(("project", "name")),
        "purpose": project.get(("package", "purpose")),
        "draft": draft,
        "input": [{"use": one.use, "file": one.name, "sha256": one.digest} for one in inputs],
        "stops": [f.code for f in judgment.of(Severity.STOP)],
        "left_out": [{"document": d.id, "values": d.values, "in_brackets": d.brackets} for d in rest.left_out],
        "to_verify": list(dict.fromkeys(map(context.name_text, rest.to_check))),
        "not_bound_in": list(map(str, lacking)),
        "findings": [finding_to_data(finding) for finding in judgment.findings],
        "told_apart": [one for finding in judgment.findings for one in _list_apart(finding)],
    }
    return about | write_state(composed.state)


def _list_apart(finding: Finding) -> Iterator[dict[str, Any]]:
    """What a finding tells of some of its subjects alone; nothing where it tells the same of all."""
    for told in finding.told if len(finding.told) > 1 else ():
        yield {"code": finding.code, "subjects": list(told.subjects), "message": told.message}
