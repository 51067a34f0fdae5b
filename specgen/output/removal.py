"""What a new package removes from the folder it is written to, told before it is written."""

from collections.abc import Collection
from pathlib import Path

from specgen.model.value_text import count
from specgen.output.manifest import list_dropped, list_written

_MOST_NAMED = 3


def tell_removed(folder: Path, files: Collection[str]) -> list[str]:
    """A line on the files of the package there that the new one, of these `files`, lacks; one on what it drops."""
    gone = [name for name in list_written(folder) if name not in files]
    named = ", ".join(gone[:_MOST_NAMED]) + (", ..." if len(gone) > _MOST_NAMED else "")
    told = [f"removed from {folder}: {count(len(gone), 'file')} of the earlier package ({named})"] if gone else []
    dropped = list_dropped(folder)
    removed = "were removed" if len(dropped) > 1 else "was removed"
    return told + ([f"{' and '.join(dropped)}, put into {folder} by a file manager, {removed}"] if dropped else [])
