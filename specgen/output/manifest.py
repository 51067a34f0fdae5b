"""The manifest of a package, and the check of a folder by it: which files we wrote, and which were changed."""

import json
import os
import unicodedata
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import Any, NamedTuple

from specgen.model.digest import digest
from specgen.model.problem import Problem, Refused, refuse
from specgen.reading.given_file import FileUse, read_given_file

MANIFEST = "manifest.json"
_SEAL = "manifest"
_END = b"\n}\n"  # of every manifest, as none is empty
# No file of ours is larger: a letterhead may hold a tenth of it, and a manifest has a line for each value given.
_NOUN, _MOVE = "nothing was written: the file", "move it out of the folder"
_WRITTEN, _LISTED = FileUse(_NOUN, _MOVE, 500_000_000, _MOVE), FileUse(_NOUN, _MOVE, 50_000_000, _MOVE)
_LOOKED_AT = FileUse("the file", _MOVE, _WRITTEN.most, _MOVE)
_GIVEN = FileUse("the manifest", "give the folder of a package", _LISTED.most, "give a package as it was written")
FORMAT = 1
# Files that file managers put into every folder they show; they hold no work of the user.
_DROPPED = {".DS_Store", "Thumbs.db", "desktop.ini"}


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
    """The data with the digest of all of it as the last entry, which the bytes are not made again for."""
    plain = _encode(data)
    return plain.removesuffix(_END) + f',\n "{_SEAL}": "{digest(plain)}"'.encode() + _END


def _encode(data: dict[str, Any]) -> bytes:
    return json.dumps(data, indent=1, ensure_ascii=False).encode() + b"\n"


class PackageChanges(NamedTuple):
    """Names of files of a package: added and edited since it was written, open in another program, and missing."""

    added: tuple[str, ...]
    edited: tuple[str, ...]
    opened: tuple[str, ...]
    missing: tuple[str, ...]

    @property
    def hold_work(self) -> bool:
        """Whether something stands in the folder that a new package would destroy."""
        return bool(self.added or self.edited or self.opened)


class Manifest(NamedTuple):
    """The data of a package's manifest, and whether it was edited since it was written."""

    data: dict[str, Any]
    edited: bool


def read_manifest(folder: Path) -> Manifest:
    """The manifest of a package; raises Refused for a folder that is none of ours."""
    if not os.path.isfile(folder / MANIFEST):  # noqa: PTH113 (no error for a name too long)
        there = os.path.isdir(folder)  # noqa: PTH112
        message = (
            f"the folder holds no package: it has no {MANIFEST}" if there else "this is not the folder of a package"
        )
        raise Refused(Problem(message, "give the folder that specgen build wrote", file=str(folder)))
    content = read_given_file(folder / MANIFEST, _GIVEN)
    data = _parse(content)
    if data is None:
        hint = "give the folder of a package as it was written"
        raise Refused(Problem("this is no manifest that specgen wrote", hint, file=str(folder / MANIFEST)))
    if data.get("format") != FORMAT:
        found = data.get("format")
        named = f"format {found}" if isinstance(found, int) else "another format"
        message = f"the package is in {named}, and this version reads format {FORMAT}"
        raise Refused(Problem(message, "read it with the version that wrote it", file=str(folder / MANIFEST)))
    return Manifest(data, _reseal(data) != content)


def list_changes(folder: Path) -> PackageChanges:
    """What of a package is not as it was written; raises Refused where a file cannot be read."""
    return _find_changes(folder, _LOOKED_AT)


def refuse_changed(folder: Path, shown: Path) -> None:
    """Raise Refused if the folder holds anything but an unchanged package; `shown` is its name in messages."""
    found = _find_changes(folder)
    if found.opened:
        message = f"open in another program: {_list_first(found.opened)}"
        raise Refused(Problem(message, "close it, then build again", file=str(shown)))
    if found.added:
        message = f"the folder holds files that specgen did not write: {_list_first(found.added)}"
        raise Refused(Problem(message, "give an empty folder, or move them", file=str(shown)))
    if found.edited:
        message = f"edited by hand since it was written: {_list_first(found.edited)}"
        raise Refused(Problem(message, "move it to keep it, or give another folder", file=str(shown)))


def list_dropped(folder: Path) -> list[str]:
    """The names of files in a folder that a file manager put there and that a new package does not keep."""
    return sorted(name for name in _DROPPED if os.path.isfile(folder / name))  # noqa: PTH113 (no error without rights)


def list_written(folder: Path) -> list[str]:
    """The names of the files of a package that stand in a folder; none where it holds no package of ours."""
    there = os.path.isfile(folder / MANIFEST)  # noqa: PTH113 (no error for a name too long)
    return [name for name in _read_digests(folder) if name != MANIFEST and (folder / name).is_file()] if there else []


def count_documents(folder: Path) -> int:
    """How many documents the package in a folder has; none where its manifest does not tell."""
    data = _parse(read_given_file(folder / MANIFEST, _LISTED)) if (folder / MANIFEST).is_file() else None
    documents = (data or {}).get("documents")
    return len(documents) if isinstance(documents, dict) else 0


def is_spent(folder: Path) -> bool:
    """Whether a temporary folder holds no work of the user: it is unfinished or an unchanged package."""
    return not (folder / MANIFEST).is_file() or not _find_changes(folder).hold_work


def _list_first(names: tuple[str, ...]) -> str:
    return ", ".join(names[:3]) + (", ..." if len(names) > 3 else "")


def _find_changes(folder: Path, use: FileUse = _WRITTEN) -> PackageChanges:
    """What of a folder is not as the manifest in it says."""
    digests = _read_digests(folder)
    entries = {entry.name: entry for entry in sorted(folder.iterdir())}
    listed = _match_names(entries, digests)
    added, edited, opened = [], [], []
    for name, entry in entries.items():
        document = _find_open_document(name, digests)
        if document:
            opened.append(document)
        elif name not in listed:
            added += [] if name in _DROPPED and entry.is_file() else [name]
        elif not _is_unchanged(entry, digests[listed[name]], use):
            edited.append(name)
    there = set(listed.values())
    missing = tuple(name for name in digests if name not in there)
    return PackageChanges(tuple(added), tuple(edited), tuple(opened), missing)


def _match_names(entries: Iterable[str], digests: Iterable[str]) -> dict[str, str]:
    """The listed name of each entry that has one; a copy may have composed or taken apart the letters of a name."""
    known, there = set(digests), set(entries)
    apart = {unicodedata.normalize("NFC", name): name for name in known - there}
    found = {name: name if name in known else apart.get(unicodedata.normalize("NFC", name)) for name in there}
    return {name: listed for name, listed in found.items() if listed is not None}


def _find_open_document(name: str, documents: Iterable[str]) -> str:
    """The document that a word processor has open while a file of this name lies beside it; "" for any other name."""
    if name.startswith(".~lock.") and name.endswith("#"):
        return next((d for d in documents if d == name[7:-1]), "")
    # Here the mark replaces the first two letters of the name.
    return next((d for d in documents if name.startswith("~$") and d[2:] == name[2:]), "")


def _is_unchanged(entry: Path, was: Any, use: FileUse) -> bool:
    """Whether the entry is the file as written; a folder or link of that name is not."""
    return not entry.is_symlink() and entry.is_file() and digest(read_given_file(entry, use)) == was


def _read_digests(folder: Path) -> dict[str, Any]:
    """The digests listed in the manifest of a folder, and its own; empty if there is none that we wrote."""
    if not (folder / MANIFEST).is_file():
        return {}
    return _list_digests(read_given_file(folder / MANIFEST, _LISTED))


@lru_cache(maxsize=2)  # a package is looked at several times while another takes its place
def _list_digests(content: bytes) -> dict[str, Any]:
    data = _parse(content)
    if data is None:
        return {}
    files: dict[str, Any] = data["files"]
    return files | {MANIFEST: digest(_reseal(data))}


def _reseal(data: dict[str, Any]) -> bytes:
    """The bytes of a manifest as they were written with these data."""
    return _seal({key: value for key, value in data.items() if key != _SEAL})


def _parse(content: bytes) -> dict[str, Any] | None:
    """The data of a manifest that can be sealed and lists files, or None."""
    try:
        data = json.loads(content)
        _encode(data)
    except (ValueError, TypeError, RecursionError):
        return None
    if not isinstance(data, dict) or not isinstance(data.get("files"), dict) or not data["files"]:
        return None
    return data
