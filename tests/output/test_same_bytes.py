"""The same input gives the same bytes, wherever and by whomever it is built. Behavior of ours."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.conftest import HERE, WHOLE_DRAFT, build_example
from tests.support import EXAMPLES

NAMES = sorted(file.parent.name for file in EXAMPLES.glob("*/project.yaml"))
# The Turkish locale is known for its own rules of upper and lower case; a machine without it falls back to plain C.
ELSEWHERE = {"TZ": "Pacific/Kiritimati", "LC_ALL": "tr_TR.UTF-8", "PYTHONHASHSEED": "4711", "PYTHONUTF8": "1"}


def bytes_of(folder: Path) -> dict[str, bytes]:
    return {file.name: file.read_bytes() for file in folder.iterdir()}


@pytest.mark.parametrize("example", NAMES)
def test_two_builds_of_an_example_give_the_same_bytes(
    example: str, draft_of: Callable[[str], Path], tmp_path: Path
) -> None:
    other = tmp_path / "some other" / "place \u00e4"
    build_example(example, other, *WHOLE_DRAFT, surroundings=ELSEWHERE, mask=0o077)
    made = bytes_of(draft_of(example))
    assert all(HERE.get(name) != value for name, value in ELSEWHERE.items())
    assert len(made) > 3
    assert bytes_of(other) == made
