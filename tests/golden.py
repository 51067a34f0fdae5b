"""Writes the golden texts and the stub of the typed views anew: `python -m tests.golden`.

Read the difference before you commit it.
"""

from pathlib import Path

from specgen import pipeline
from specgen.output import package
from tests.support import ROOT
from tests.typed_views import STUB, stub

FOLDER = Path(__file__).parent / "documents" / "golden"
EXAMPLES = ("first-look", "stops", "clean")


def texts(example: str) -> dict[str, str]:
    """Every document of an example as plain text, by file name."""
    case = pipeline.check(ROOT / "project_examples" / example / "project.yaml")
    context = case.context
    made = package.make_package(
        context.project, context.standards, case.judgment, context.resolve, ("txt",), (), case.judgment.stopped
    )
    return {f"{example}-{name}": content.decode() for name, content in made.files.items()}


def write_all(folder: Path) -> None:
    """Write all of them into a folder."""
    folder.mkdir(exist_ok=True)
    for example in EXAMPLES:
        for name, text in texts(example).items():
            (folder / name).write_text(text, "utf-8")


if __name__ == "__main__":
    STUB.write_text(stub(), "utf-8")
    write_all(FOLDER)
