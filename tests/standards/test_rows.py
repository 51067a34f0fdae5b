"""Our own data files are read as a general YAML library reads them (PyYAML, its loader without types)."""

from pathlib import Path

import pytest
import yaml

from specgen.standards.rows import read_rows
from tests.support import ROOT

SPECGEN = ROOT / "specgen"
FILES = sorted([*SPECGEN.glob("standards/*.yaml"), *SPECGEN.glob("reading/schema/*.yaml")])


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
@pytest.mark.no_cover
def test_a_data_file_is_read_as_by_the_library(file: Path) -> None:
    assert read_rows(file) == yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader)  # noqa: S506


@pytest.mark.parametrize("text", ["", "- a\n- b\n", "a\n"])
def test_a_file_that_holds_no_mapping_is_an_error(text: str, tmp_path: Path) -> None:
    (tmp_path / "rows.yaml").write_text(text, "utf-8")
    with pytest.raises(ValueError, match="holds no mapping"):
        read_rows(tmp_path / "rows.yaml")
