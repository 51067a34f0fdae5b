"""What a new package removes from the folder it is written to, told before it is written."""

from collections.abc import Collection
from pathlib import Path

from specgen.model.value_text import count
from specgen.output.manifest import count_documents, list_dropped, list_written

_MOST_NAMED = 3


def tell_removed(folder: Path, files: Collection[str], kept: Collection[str] = ()) -> list[str]:
    """A line on the package there, one on its files that the new one, of these `files`, lacks; one on what it drops.

    Nothing is told of those that are `kept` as they are.
    """
    written = [name for name in list_written(folder) if name not in kept]
    replaced = [f"replaced {_name_package(folder, len(written))}"] if written else []
    gone = [name for name in written if name not in files]
    named = ", ".join(gone[:_MOST_NAMED]) + (", ..." if len(gone) > _MOST_NAMED else "")
    told = [f"removed from {folder}: {count(len(gone), 'file')} of the earlier package ({named})"] if gone else []
    dropped = list_dropped(folder)
    removed = "were removed" if len(dropped) > 1 else "was removed"
    return (
        replaced
        + told
        + ([f"{' and '.join(dropped)}, put into {folder} by a file manager, {removed}"] if dropped else [])
    )


def _name_package(folder: Path, files: int) -> str:
    """What a folder of ours holds: a package of documents, or files of drawings and lists."""
    documents = count_documents(folder)
    return f"a package of {count(documents, 'document')}" if documents else count(files, "earlier file")
