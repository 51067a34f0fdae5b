"""A package that stands, for the tests of the disk."""

from pathlib import Path

import pytest

from specgen.output import disk, exchange
from tests.documents.support import ONE


@pytest.fixture
def out(tmp_path: Path) -> Path:
    """A package that was written before."""
    disk.write_package(tmp_path / "out", ONE, {"format": 1})
    return tmp_path / "out"


@pytest.fixture(params=["in one step", "in three steps"])
def way(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """The two ways of exchanging folders."""
    if request.param == "in three steps":
        monkeypatch.setattr(exchange, "_exchange_at_once", lambda one, other: False)
    return str(request.param)
