"""What the finish is called, in every document the same."""

from pathlib import Path

import pytest

from specgen.documents.finish_name import name_finish
from tests.documents.support import context_of


@pytest.mark.parametrize(
    ("colors", "name"),
    [
        ({"C1": {}}, "metallic gloss finish"),
        ({"C1": {"metallic": "no"}, "C2": {"metallic": "yes"}}, "metallic gloss finish"),
        ({"C1": {"metallic": "no"}}, "gloss finish"),
    ],
)
def test_the_finish_is_metallic_until_every_color_is_told_to_be_without_flake(
    tmp_path: Path, colors: dict[str, dict[str, str]], name: str
) -> None:
    assert name_finish(context_of(tmp_path, {"colors": colors})) == name
