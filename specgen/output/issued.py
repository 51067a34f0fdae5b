"""Reads what a package was issued with from its manifest."""

from pathlib import Path

from specgen.model.problem import Problem, Refused
from specgen.model.state import State
from specgen.output.issued_data import NoState, read_state
from specgen.output.manifest import MANIFEST, read_manifest


def read_issued(folder: Path) -> State:
    """The state that a package was issued with; raises Refused where its manifest does not tell it."""
    manifest = read_manifest(folder)
    shown = str(folder / MANIFEST)
    if manifest.edited:
        hint = "give the package as it was issued"
        raise Refused(Problem("edited by hand since the package was written", hint, file=shown))
    if "documents" not in manifest.data:
        message = "the package does not tell what it was issued with: an earlier version wrote it, or it holds drawings"
        hint = "build it anew from its project file, into another folder"
        raise Refused(Problem(message, hint, file=shown))
    try:
        return read_state(manifest.data)
    except NoState as fault:
        hint = "give the package as it was issued"
        raise Refused(Problem(f"this is no manifest that specgen wrote: {fault}", hint, file=shown)) from None
