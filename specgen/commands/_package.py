"""What `specgen check --package` answers: whether a package is as it was written, and from what it was made."""

from argparse import Namespace
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome
from specgen.commands._project_file import find_project_file
from specgen.model.forbidden_characters import show_unseen
from specgen.model.problem import Problem, Refused, refuse
from specgen.model.value_text import count
from specgen.output.manifest import MANIFEST
from specgen.output.package_check import ATTACHMENT, PROJECT_FILE, PackageState, check_package

MOST_LISTED = 20  # files of one kind that are named as text


def answer_package(args: Namespace) -> Outcome:
    """The state of the package; a program that reads the data gets its object also where it is refused."""
    try:
        state = check_package(Path(args.package), _find_project(args))
    except Refused as refused:
        data = _to_data(args.package, None, refused.problems) if args.format == "json" else None
        return Outcome(NOT_DONE, data=data, problems=refused.problems)
    code = DONE if state.is_as_written else AGAINST
    if args.format == "json":
        return Outcome(code, data=_to_data(args.package, state))
    return Outcome(code, "".join(f"{show_unseen(line)}\n" for line in _tell(args.package, state)))


def _find_project(args: Namespace) -> Path | None:
    """The project file named beside the package; raises Refused for more than one."""
    if len(args.files) > 1:
        raise refuse("a package is made from one project", "name one FILE beside --package")
    return find_project_file(args.files[0]) if args.files else None


def _tell(folder: str, state: PackageState) -> Iterator[str]:
    """A line on the whole, and one for each file that differs."""
    by = f"by specgen {state.version}" if state.version else "by an earlier version"
    if state.is_as_written:
        inputs = state.inputs or ()
        names = [one.name for one in inputs if one.kind != ATTACHMENT]
        attached = len(inputs) - len(names)
        names += [count(attached, ATTACHMENT)] if attached else []
        made_from = f" from {', '.join(names)}, unchanged" if names else ""
        yield f"{folder}: {count(state.files, 'file')}, as written {by}{made_from}"
        return
    changes = state.changes
    if any(changes):
        yield f"{folder}: not as written {by}"
    else:
        yield f"{folder}: {count(state.files, 'file')}, as written {by}; what it was made from has changed since"
    told = [
        ("added", changes.added),
        ("edited", changes.edited),
        ("open", changes.opened),
        ("missing", changes.missing),
    ]
    for state_of_input in ("changed", "missing"):
        for kind in (PROJECT_FILE, ATTACHMENT):
            named = tuple(o.name for o in state.inputs or () if (o.state, o.kind) == (state_of_input, kind))
            told.append((f"{kind} {state_of_input} since", named))
    for word, names_of in told:
        yield from (f"  {word}: {name}" for name in names_of[:MOST_LISTED])
        if len(names_of) > MOST_LISTED:
            yield f"  {word}: {len(names_of) - MOST_LISTED} more"
    if MANIFEST in changes.edited:
        yield f"  {MANIFEST} was edited itself: what it lists is not to be relied on"


def _to_data(folder: str, state: PackageState | None, problems: tuple[Problem, ...] = ()) -> dict[str, Any]:
    """The object of `check --package --format json`."""
    changes = state.changes if state is not None else None
    inputs = state.inputs if state is not None else None
    return {
        "format": 1,
        "package": folder,
        "errors": [asdict(problem) for problem in problems],
        "as_written": state is not None and not any(state.changes),
        "specgen": state.version if state is not None else None,
        "files": state.files if state is not None else None,
        "added": list(changes.added) if changes else [],
        "edited": list(changes.edited) if changes else [],
        "open": list(changes.opened) if changes else [],
        "missing": list(changes.missing) if changes else [],
        "input": None if inputs is None else [{"file": one.name, "state": one.state} for one in inputs],
    }
