"""The manifest of a package, and the check of a folder by it: which files we wrote, and which were changed."""

import hashlib
import json
import os
import unicodedata
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from specgen.model.problem import Problem, Refused, refuse
from specgen.reading.given_file import FileUse, read_given_file

MANIFEST = "manifest.json"
_SEAL = "manifest"
# No file of ours is larger: a letterhead may hold a tenth of it, and a manifest has a line for each file.
_NOUN, _MOVE = "nothing was written: the file", "move it out of the folder"
_WRITTEN, _LISTED = FileUse(_NOUN, _MOVE, 500_000_000, _MOVE), FileUse(_NOUN, _MOVE, 10_000_000, _MOVE)
# Files that file managers put into every folder they show; they hold no work of the user.
_DROPPED = {".DS_Store", "Thumbs.db", "desktop.ini"}


def digest(content: bytes) -> str:
    """The SHA-256 of a file, as the manifest lists it."""
    return hashlib.sha256(content).hexdigest()


def index_files(files: Iterable[tuple[str, bytes]]) -> dict[str, bytes]:
    """The files by name; raises Refused for two names that differ in case only."""
    by_name: dict[str, bytes] = {}
    taken = {_fold(MANIFEST): MANIFEST}
    for name, content in files:
        if name.startswith(".") or set(name) & set('/\\:*?"<>|\0'):
            raise refuse(f"{name!r} cannot be the name of a file", "give the document another title")
        if _fold(name) in taken:
            message = f"two files of the package would have one name: {taken[_fold(name)]} and {name}"
            raise refuse(message, "give one of the documents another title")
        taken[_fold(name)] = name
        by_name[name] = content
    return by_name


def _fold(name: str) -> str:
    return unicodedata.normalize("NFC", name).casefold()


def make_manifest(files: dict[str, bytes], about: dict[str, Any]) -> bytes:
    """The manifest: the data `about` the package, every file with its digest, and a digest of the whole."""
    return _seal(about | {"files": {name: digest(content) for name, content in sorted(files.items())}})


def _seal(data: dict[str, Any]) -> bytes:
    return _encode(data | {_SEAL: digest(_encode(data))})


def _encode(data: dict[str, Any]) -> bytes:
    return (json.dumps(data, indent=1, ensure_ascii=False) + "\n").encode()


def refuse_changed(folder: Path, shown: Path) -> None:
    """Raise Refused if the folder holds anything but an unchanged package; `shown` is its name in messages."""
    foreign, edited, opened = _find_changes(folder)
    if opened:
        message = f"open in another program: {_list_first(opened)}"
        raise Refused(Problem(message, "close it, then build again", file=str(shown)))
    if foreign:
        message = f"the folder holds files that specgen did not write: {_list_first(foreign)}"
        raise Refused(Problem(message, "give an empty folder, or move them", file=str(shown)))
    if edited:
        message = f"edited by hand since it was written: {_list_first(edited)}"
        raise Refused(Problem(message, "move it to keep it, or give another folder", file=str(shown)))


def list_dropped(folder: Path) -> list[str]:
    """The names of files in a folder that a file manager put there and that a new package does not keep."""
    return sorted(name for name in _DROPPED if os.path.isfile(folder / name))  # noqa: PTH113 (no error without rights)


def is_spent(folder: Path) -> bool:
    """Whether a temporary folder holds no work of the user: it is unfinished or an unchanged package."""
    return not (folder / MANIFEST).is_file() or not any(_find_changes(folder))


def _list_first(names: list[str]) -> str:
    return ", ".join(names[:3]) + (", ..." if len(names) > 3 else "")


def _find_changes(folder: Path) -> tuple[list[str], list[str], list[str]]:
    """The names of files that we did not write, that were edited, and that another program has open."""
    digests = _read_digests(folder)
    foreign, edited, opened = [], [], []
    for entry in sorted(folder.iterdir()):
        document = _find_open_document(entry.name, digests)
        if document:
            opened.append(document)
        elif entry.name not in digests:
            foreign += [] if entry.name in _DROPPED and entry.is_file() else [entry.name]
        elif not _is_unchanged(entry, digests[entry.name]):
            edited.append(entry.name)
    return foreign, edited, opened


def _find_open_document(name: str, documents: Iterable[str]) -> str:
    """The document that a word processor has open while a file of this name lies beside it; "" for any other name."""
    if name.startswith(".~lock.") and name.endswith("#"):
        return next((d for d in documents if d == name[7:-1]), "")
    # Here the mark replaces the first two letters of the name.
    return next((d for d in documents if name.startswith("~$") and d[2:] == name[2:]), "")


def _is_unchanged(entry: Path, was: Any) -> bool:
    """Whether the entry is the file as written; a folder or link of that name is not."""
    return not entry.is_symlink() and entry.is_file() and digest(read_given_file(entry, _WRITTEN)) == was


def _read_digests(folder: Path) -> dict[str, Any]:
    """The digests listed in the manifest of a folder, and its own; empty if there is none that we wrote."""
    if not (folder / MANIFEST).is_file():
        return {}
    content = read_given_file(folder / MANIFEST, _LISTED)
    try:
        data = json.loads(content)
        files = data["files"]
        seal = _seal({key: value for key, value in data.items() if key != _SEAL})
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return {}
    return files | {MANIFEST: digest(seal)} if isinstance(files, dict) and files else {}
