"""What is held against a command that has ended."""

import re
from collections.abc import Iterator
from pathlib import Path
from unicodedata import category

from tests.attack.attempt import MOST_MEGABYTES, MOST_SECONDS, Attempt, Ended
from tests.attack.documents import find_active
from tests.attack.scratch import OUT, find_leavings, find_losses, find_torn

# Python's own words, which say nothing to a user.
_PYTHON = re.compile(r"Traceback|\b[A-Z]\w+Error\b|NoneType|object has no attribute|positional argument|unhashable")
_VERDICT = re.compile(r"^\S.*  (?:yes|no|not yet known|yes, with measures)(?:;.*)?$")
_FINDING = re.compile(r"^(?:STOP|CAUTION|NOTE) [A-Z]")
_COUNTS = re.compile(r"^(\d+) stops?, (\d+) cautions?, (\d+) notes?, ")
_LONGEST = 1_200  # characters of a line that tells an error


def find_faults(attempt: Attempt, ended: Ended, before: dict[str, str], after: dict[str, str], job: Path) -> list[str]:
    """All that is wrong with how a command ended; empty where nothing is."""
    if ended.code is None:
        return ["it hung", *_judge_cost(ended), *find_losses(before, after)]
    said = (ended.out + ended.err).decode(attempt.environment.get("PYTHONIOENCODING", "utf-8"), "surrogateescape")
    faults = [*_judge_code(attempt, ended), *_judge_cost(ended), *_judge_words(attempt, ended, said)]
    faults += find_losses(before, after)
    left = find_leavings(before, after)
    if left and ended.code == 2:
        faults.append(f"it was refused and left {', '.join(left[:3])}")
    if ended.code == 2 and f"job/{OUT}" in after.keys() - before.keys():
        faults.append("it was refused and left a package")
    torn = find_torn(job / OUT)
    faults += [torn] if torn else []
    if (job / OUT).is_dir():
        faults += [f"{file.name}: {what}" for file in sorted((job / OUT).iterdir()) for what in find_active(file)]
    return faults


def _judge_code(attempt: Attempt, ended: Ended) -> Iterator[str]:
    killed = (-attempt.kill, 128 + attempt.kill) if attempt.kill is not None else ()
    if ended.code not in (0, 1, 2, *killed):
        yield f"exit code {ended.code}"
    if attempt.expect == "refused" and ended.code in (0, 1):
        yield "it was taken"
    if attempt.expect == "taken" and ended.code == 2:
        yield "it was refused"


def _judge_cost(ended: Ended) -> Iterator[str]:
    if ended.seconds > MOST_SECONDS:
        yield f"{ended.seconds:.1f} s of processor time"
    if ended.megabytes > MOST_MEGABYTES:
        yield f"{ended.megabytes:.0f} MB"


def _judge_words(attempt: Attempt, ended: Ended, said: str) -> Iterator[str]:
    found = _PYTHON.search(said)
    if found and not any(found[0] in word for word in attempt.words):
        yield f"Python's own words: {found[0]}"
    odd = next((char for char in said if not (char.isprintable() or char in "\n\t" or category(char) == "Zs")), "")
    if odd:
        yield f"the terminal is sent {odd!a}"
    err = ended.err.decode("utf-8", "replace").splitlines()
    told = [line for line in err if not line.startswith(("usage:", " "))]
    yield from (f"a line of no message: {line[:80]!a}" for line in told[:200] if not line.startswith("specgen: "))
    yield from (f"a message of {len(line)} characters" for line in told[:200] if len(line) > _LONGEST)
    if ended.code == 2 and not told and not attempt.output:
        yield "it was refused without a word"
    yield from _judge_report(attempt, ended)


def _judge_report(attempt: Attempt, ended: Ended) -> Iterator[str]:
    """The report of `check` read back: as many verdicts as walls, as many findings as are counted."""
    lines = ended.out.decode("utf-8", "replace").splitlines()
    if not attempt.walls or ended.code == 2 or not lines:
        return
    verdicts = sum(bool(_VERDICT.match(line)) for line in lines)
    if verdicts != attempt.walls:
        yield f"{verdicts} verdicts of {attempt.walls} walls"
    counts = _COUNTS.match(lines[-1])
    findings = sum(bool(_FINDING.match(line)) for line in lines)
    if counts and sum(map(int, counts.groups())) != findings:
        yield f"{findings} findings where {lines[-1]!a} are counted"
