"""Manifests for the tests: those of real packages, changed, and sealed as the package's own seal is made."""

import hashlib
import json
from pathlib import Path
from typing import Any


def bytes_of(data: Any) -> bytes:
    """Data in the form of a manifest."""
    return (json.dumps(data, indent=1, ensure_ascii=False) + "\n").encode("utf-8", "surrogatepass")


def sealed(data: dict[str, Any]) -> bytes:
    """A manifest with a digest of all that stands in it, as if nobody had edited it."""
    bare = {key: value for key, value in data.items() if key != "manifest"}
    return bytes_of(bare | {"manifest": hashlib.sha256(bytes_of(bare)).hexdigest()})


def manifest_of(package: Path) -> Any:
    """The data of a package's manifest."""
    return json.loads((package / "manifest.json").read_text("utf-8"))


def forge(package: Path, **changes: Any) -> None:
    """Put a changed manifest into a package, sealed as if it were the one written; a value of `...` leaves out."""
    data = manifest_of(package) | changes
    (package / "manifest.json").write_bytes(sealed({key: value for key, value in data.items() if value is not ...}))
