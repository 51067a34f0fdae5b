"""How findings name the members they are about; the names are retyped by hand."""

from pathlib import Path

import pytest

from specgen.judging.subject_names import join_subjects, name_subject
from tests.support import project_of


def test_a_criterion_is_named_in_words_and_by_its_number_where_it_has_no_name(tmp_path: Path) -> None:
    lines = [{"name": "sealant_face"}, {"method": "by eye"}]
    project = project_of(tmp_path, {"mockup": {"criteria": lines}})
    named = [name_subject(project, ("mockup", "criteria", place)) for place in ("0", "1")]
    assert named == ["acceptance criterion sealant face", "acceptance criterion 2"]


@pytest.mark.parametrize(
    ("names", "told"),
    [
        (["acceptance criterion gloss"], "acceptance criterion gloss"),
        (["acceptance criterion 1", "acceptance criterion sealant face"], "acceptance criteria: 1, sealant face"),
        (["accessory 1", "accessory 3"], "accessories: 1, 3"),
        (["planned wait 1", "planned wait 2"], "planned waits: 1, 2"),
        (["E1", "E2"], "E1, E2"),
        (["W1 mesh layer 1", "W1 mesh layer 2"], "W1 mesh layer 1, W1 mesh layer 2"),
    ],
)
def test_members_without_a_mark_share_their_noun(names: list[str], told: str) -> None:
    assert join_subjects(names) == told
