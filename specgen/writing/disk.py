"""The only writer of files: a whole package or nothing, and nothing of the user's lost."""

import hashlib
import json
import os
import shutil
import tempfile
from pathlib import Path
from typing import Any

from ..vocabulary.problem import Problem, Refused

MANIFEST = "manifest.json"


def write_package(folder: Path, files: dict[str, bytes], about: dict[str, Any]) -> None:
    """Write all files and their manifest to `folder`, in place of a package that was written there before.

    Raises Refused where the folder holds anything else, or a file of the package was edited since.
    """
    folder = folder.absolute()
    _refuse_foreign(folder)
    manifest = about | {"files": {name: digest(content) for name, content in sorted(files.items())}}
    files = files | {MANIFEST: (json.dumps(manifest, indent=1, ensure_ascii=False) + "\n").encode()}
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        beside = Path(tempfile.mkdtemp(prefix=f".{folder.name}-", dir=folder.parent))
    except OSError as error:
        raise _failed(folder, error) from None
    try:
        for name, content in files.items():
            (beside / name).write_bytes(content)
        beside.chmod(0o777 & ~_umask())
        _exchange(beside, folder)
    except OSError as error:
        raise _failed(folder, error) from None
    finally:
        shutil.rmtree(beside, ignore_errors=True)


def digest(content: bytes) -> str:
    """The SHA-256 of a file, as the manifest lists it."""
    return hashlib.sha256(content).hexdigest()


def write_new(file: Path, content: str) -> None:
    """Write a file that must not exist yet; raises Refused."""
    try:
        with file.open("x", encoding="utf-8") as opened:
            opened.write(content)
    except FileExistsError:
        raise Refused(Problem("the file exists and is not overwritten", "give another name", file=str(file))) from None
    except OSError as error:
        raise _failed(file, error) from None


def _exchange(new: Path, old: Path) -> None:
    """Put the new folder in the place of the old one; the old one stands until the new one is whole."""
    if not old.exists():
        new.rename(old)
        return
    aside = new.with_name(new.name + "-old")
    old.rename(aside)
    try:
        new.rename(old)
    except OSError:
        aside.rename(old)
        raise
    shutil.rmtree(aside, ignore_errors=True)


def _refuse_foreign(folder: Path) -> None:
    if not folder.exists():
        return
    if not folder.is_dir():
        raise Refused(Problem("a file stands where the package should go", "give another folder", file=str(folder)))
    present = {entry.name for entry in folder.iterdir()}
    listed = _listed(folder)
    foreign = sorted(present - set(listed) - ({MANIFEST} if listed else set()))
    if foreign:
        names = ", ".join(foreign[:3]) + (", ..." if len(foreign) > 3 else "")
        message = f"the folder holds files that specgen did not write: {names}"
        raise Refused(Problem(message, "give an empty folder, or move them", file=str(folder)))
    edited = sorted(
        name
        for name, was in listed.items()
        if (folder / name).is_file() and digest((folder / name).read_bytes()) != was
    )
    if edited:
        message = f"edited by hand since it was written: {', '.join(edited)}"
        raise Refused(Problem(message, "move it to keep it, or give another folder", file=str(folder)))


def _listed(folder: Path) -> dict[str, str]:
    """The files a manifest in the folder lists; none where there is no manifest of ours."""
    try:
        files = json.loads((folder / MANIFEST).read_text("utf-8"))["files"]
    except (OSError, ValueError, KeyError, TypeError):
        return {}
    return files if isinstance(files, dict) else {}


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _failed(path: Path, error: OSError) -> Refused:
    return Refused(
        Problem(f"nothing was written: {error.strerror or error}", "check folder, rights and space", file=str(path))
    )
