"""The folder of an attempt, with files of the user's in it that no command may touch."""

import hashlib
import json
import os
import shlex
import shutil
from pathlib import Path

from tests.attack.attempt import Attempt

# Files of the user's: beside the package, in a folder whose name looks like one of ours, and above the project.
CANARIES = {
    "job/plan.txt": b"the user's own",
    "job/.specgen-mine-new/work.txt": b"not one of ours",
    "job/kept/letter.txt": b"a folder beside",
    "above.txt": b"above the project",
}
OUT = "out"


def lay_out(attempt: Attempt, folder: Path) -> Path:
    """Write the files of an attempt and the user's own; returns the folder the command is run in."""
    shutil.rmtree(folder, ignore_errors=True)
    for name, content in {**CANARIES, **{f"job/{name}": content for name, content in attempt.files.items()}}.items():
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content)
    job = folder / "job"
    for name, target in attempt.links.items():
        (job / name).symlink_to(target)
    for name in attempt.pipes:
        os.mkfifo(job / name)
    for name, size in attempt.sparse.items():
        with (job / name).open("wb") as opened:
            opened.truncate(size)
    return job


def take_stock(folder: Path) -> dict[str, str]:
    """What stands in a folder by name: the digest of each file, and what anything else is."""
    found = {}
    for above, folders, names in os.walk(folder):
        for name in folders + names:
            path = Path(above, name)
            found[str(path.relative_to(folder))] = _describe(path)
    return found


def _describe(path: Path) -> str:
    if path.is_symlink():
        return f"link to {path.readlink()}"
    if not path.is_file():
        return "folder" if path.is_dir() else "device"
    if path.stat().st_size > 100_000_000:
        return f"{path.stat().st_size} bytes"
    return hashlib.sha256(path.read_bytes()).hexdigest()


def find_losses(before: dict[str, str], after: dict[str, str]) -> list[str]:
    """What a command took away or changed, save the package itself, and what it keeps beside it as it was."""
    own = {name: what for name, what in before.items() if not _in_package(name)}
    lost = [f"{name} is gone" for name in own if name not in after]
    kept = {name for name in own if after.get(f"{name}.before") == own[name]}
    return lost + [
        f"{name} was changed" for name in own if name not in kept and after.get(name, own[name]) != own[name]
    ]


def find_leavings(before: dict[str, str], after: dict[str, str]) -> list[str]:
    """What a command left beside the package."""
    return [name for name in after if name not in before and not _in_package(name)]


def _in_package(name: str) -> bool:
    return name == f"job/{OUT}" or name.startswith(f"job/{OUT}/")


def find_torn(package: Path) -> str:
    """What of a package is not as its manifest says; empty for a whole one, or none."""
    if not (package / "manifest.json").is_file():
        return "a package without a manifest" if package.is_dir() and any(package.glob("D*")) else ""
    try:
        listed = json.loads((package / "manifest.json").read_bytes())["files"]
    except (ValueError, KeyError):
        return "a package whose manifest is cut short"
    found = {file.name: hashlib.sha256(file.read_bytes()).hexdigest() for file in package.iterdir()}
    found.pop("manifest.json")
    return "" if found == listed else "a package that is not as its manifest says"


def keep(attempt: Attempt, folder: Path) -> str:
    """Save an attempt, so that it can be run again; returns the command that does so."""
    job = lay_out(attempt, folder)
    words = " ".join(map(shlex.quote, attempt.words))
    setting = "".join(f"{name}={shlex.quote(value)} " for name, value in attempt.environment.items())
    into = f" > {shlex.quote(attempt.output)}" if attempt.output else ""
    return f"cd {job} && {setting}python -m specgen {words}{into}"
