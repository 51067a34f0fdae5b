"""`matrix`: substrate by attachment."""

from typing import Any

from tests.running import run_main


def test_the_matrix_answers_for_every_substrate_and_attachment(capsys: Any) -> None:
    out = run_main(capsys, "matrix").out
    rows = {line.split("  ")[0]: line for line in out.splitlines()[1:15]}
    assert len(rows) == 14
    assert "no ATT-04a" in rows["paper-faced gypsum"]
    assert rows["concrete"].count("yes") == 3
    assert rows["concrete"].count("no ATT-01a") == 2
