"""The manifest of a package, and what it tells of a folder: which files are ours, and which were changed since."""

import hashlib
import json
import unicodedata
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from specgen.model.problem import Problem, Refused, refuse

MANIFEST = "manifest.json"
_SEAL = "manifest"
# What file managers put into every folder they show; it holds no work of the user's.
_DROPPED = {".DS_Store", "Thumbs.db", "desktop.ini"}


def digest(content: bytes) -> str:
    """The SHA-256 of a file, as the manifest lists it."""
    return hashlib.sha256(content).hexdigest()


def named(files: Iterable[tuple[str, bytes]]) -> dict[str, bytes]:
    """The files by name; raises Refused where two names are one to a disk that does not tell A from a."""
    made: dict[str, bytes] = {}
    taken = {_folded(MANIFEST): MANIFEST}
    for name, content in files:
        if name.startswith(".") or set(name) & set('/\\:*?"<>|\0'):
            raise refuse(f"{name!r} cannot be the name of a file", "give the document another title")
        if _folded(name) in taken:
            message = f"two files of the package would have one name: {taken[_folded(name)]} and {name}"
            raise refuse(message, "give one of the documents another title")
        taken[_folded(name)] = name
        made[name] = content
    return made


def _folded(name: str) -> str:
    return unicodedata.normalize("NFC", name).casefold()


def manifest(files: dict[str, bytes], about: dict[str, Any]) -> bytes:
    """The manifest: what it is about, every file with its digest, and the digest of all that."""
    return _sealed(about | {"files": {name: digest(content) for name, content in sorted(files.items())}})


def _sealed(data: dict[str, Any]) -> bytes:
    return _text(data | {_SEAL: digest(_text(data))})


def _text(data: dict[str, Any]) -> bytes:
    return (json.dumps(data, indent=1, ensure_ascii=False) + "\n").encode()


def refuse_changed(folder: Path, told: Path) -> None:
    """Raise Refused where the folder holds anything but an unchanged package; `told` is its name to the user."""
    foreign, edited, opened = _changes(folder)
    if opened:
        message = f"open in another program: {_first(opened)}"
        raise Refused(Problem(message, "close it, then build again", file=str(told)))
    if foreign:
        message = f"the folder holds files that specgen did not write: {_first(foreign)}"
        raise Refused(Problem(message, "give an empty folder, or move them", file=str(told)))
    if edited:
        message = f"edited by hand since it was written: {_first(edited)}"
        raise Refused(Problem(message, "move it to keep it, or give another folder", file=str(told)))


def spent(folder: Path) -> bool:
    """Whether a folder of our own making holds nothing of the user's: it is unfinished, or a package as it was."""
    return not (folder / MANIFEST).is_file() or not any(_changes(folder))


def _first(names: list[str]) -> str:
    return ", ".join(names[:3]) + (", ..." if len(names) > 3 else "")


def _changes(folder: Path) -> tuple[list[str], list[str], list[str]]:
    """The names of files that are not ours, that were edited, and that another program has open."""
    listed = _listed(folder)
    foreign, edited, opened = [], [], []
    for entry in sorted(folder.iterdir()):
        document = _opened(entry.name, listed)
        if document:
            opened.append(document)
        elif entry.name not in listed:
            foreign += [] if entry.name in _DROPPED and entry.is_file() else [entry.name]
        elif not _is(entry, listed[entry.name]):
            edited.append(entry.name)
    return foreign, edited, opened


def _opened(name: str, listed: Iterable[str]) -> str:
    """The document that a word processor has open while a file of this name lies beside it; "" for any other name."""
    if name.startswith(".~lock.") and name.endswith("#"):
        return next((d for d in listed if d == name[7:-1]), "")
    # Here the first two letters of the document have given way to the mark.
    return next((d for d in listed if name.startswith("~$") and d[2:] == name[2:]), "")


def _is(entry: Path, was: Any) -> bool:
    """Whether the entry is the file that was written. A folder or link of that name is not."""
    return not entry.is_symlink() and entry.is_file() and digest(entry.read_bytes()) == was


def _listed(folder: Path) -> dict[str, Any]:
    """The digests that a manifest in the folder lists, its own among them; none where there is no manifest of ours."""
    try:
        content = (folder / MANIFEST).read_bytes()
        data = json.loads(content)
        files = data["files"]
        sealed = _sealed({key: value for key, value in data.items() if key != _SEAL})
    except (FileNotFoundError, IsADirectoryError, ValueError, KeyError, TypeError, AttributeError):
        return {}
    return files | {MANIFEST: digest(sealed)} if isinstance(files, dict) and files else {}
