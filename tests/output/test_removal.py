"""What is told of the package that stood in a folder before."""

from pathlib import Path

import pytest

from specgen.output.removal import tell_removed


@pytest.mark.parametrize(
    ("left", "told"),
    [
        ((), []),
        ((".DS_Store",), [".DS_Store, put into {folder} by a file manager, was removed"]),
        (
            ("Thumbs.db", ".DS_Store"),
            [".DS_Store and Thumbs.db, put into {folder} by a file manager, were removed"],
        ),
    ],
)
def test_what_a_file_manager_left_is_told_as_one_or_as_several(
    left: tuple[str, ...], told: list[str], tmp_path: Path
) -> None:
    for name in left:
        (tmp_path / name).write_bytes(b"x")
    assert tell_removed(tmp_path, []) == [line.format(folder=tmp_path) for line in told]
