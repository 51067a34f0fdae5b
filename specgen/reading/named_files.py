"""The files that a project is read from, found before it can be read as a whole."""

from pathlib import Path

from specgen.model.problem import Refused
from specgen.reading.positions import read_text
from specgen.reading.side_files import SIDE_FILES


def list_named_files(file: Path) -> tuple[Path, ...]:
    """A project file and the files beside it that it names, whether they are there or not; itself alone if unread."""
    try:
        data = read_text(file, str(file)).data
    except Refused:
        return (file,)
    records = data.get("records")
    named = [*(data.get(home) for home in SIDE_FILES), *(records if isinstance(records, list) else ())]
    return (file, *(file.parent / name for name in named if isinstance(name, str) and name))
