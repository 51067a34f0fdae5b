"""What may have become of a package that stands, so that no other may take its place."""

import json
from collections.abc import Callable
from pathlib import Path


def edit_manifest(out: Path) -> None:
    """A note in the manifest itself."""
    manifest = out / "manifest.json"
    manifest.write_text(manifest.read_text().replace('"format": 1', '"format": 1, "note": "mine"'))


def save_manifest_anew(out: Path) -> None:
    """The manifest as another program saves it."""
    manifest = out / "manifest.json"
    manifest.write_text(json.dumps(json.loads(manifest.read_text())))


def put_folder(out: Path) -> None:
    """A folder in the place of a file."""
    (out / "a.txt").unlink()
    (out / "a.txt").mkdir()
    (out / "a.txt" / "mine").write_bytes(b"mine")


def put_link(out: Path) -> None:
    """A link in the place of a file."""
    (out / "a.txt").rename(out.parent / "moved.txt")
    (out / "a.txt").symlink_to("../moved.txt")


def add(name: str) -> Callable[[Path], object]:
    """A file added to the package."""

    def put(out: Path) -> None:
        (out / name).parent.mkdir(exist_ok=True)
        (out / name).write_bytes(b"mine")

    return put


def make_huge(out: Path) -> None:
    """A file of more bytes than any of ours, none of which the disk holds."""
    with (out / "a.txt").open("wb") as file:
        file.truncate(500_000_001)


# Each with what is told of it. Names that word processors give their marks of an open document: common practice, no
# source.
SPOILED: dict[str, tuple[Callable[[Path], object], str]] = {
    "a file edited": (
        lambda out: (out / "a.txt").write_bytes(b"mine"),
        r"edited by hand since it was written: a\.txt \(move it",
    ),
    "the manifest edited": (edit_manifest, r"edited by hand since it was written: manifest\.json"),
    "the manifest saved anew": (save_manifest_anew, r"edited by hand since it was written: manifest\.json"),
    "a folder for a file": (put_folder, r"edited by hand since it was written: a\.txt"),
    "a link for a file": (put_link, r"edited by hand since it was written: a\.txt"),
    "a file far too large": (make_huge, r"nothing was written: the file is larger than 500 MB \(move it out"),
    "a file added": (add("notes.txt"), "did not write"),
    "a file of like name added": (add("A.TXT"), "did not write"),
    "a folder added": (add("more/notes.txt"), "did not write"),
    "a document open": (add(".~lock.a.txt#"), r"open in another program: a\.txt \(close it"),
    "a document open in another program": (add("~$txt"), r"open in another program: a\.txt \(close it"),
}
