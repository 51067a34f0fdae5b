"""Loaded into a run of pytest: writes the names of the tests that fail, each as it fails, to the file it is given."""

import os
from pathlib import Path

import pytest

PLACE = "SPECGEN_FAILING"  # what names the file


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    _write(report)


def pytest_collectreport(report: pytest.CollectReport) -> None:
    _write(report)


def _write(report: pytest.TestReport | pytest.CollectReport) -> None:
    if report.failed:
        with Path(os.environ[PLACE]).open("a") as file:
            file.write(f"{report.nodeid}\n")
