"""`matrix`: substrate by attachment."""

from typing import Any

from tests.running import run_main


def test_the_matrix_answers_for_every_substrate_and_attachment(capsys: Any) -> None:
    out = run_main(capsys, "matrix").out
    rows = {line[:20].strip(): line for line in out.splitlines()[1:11]}
    assert len(rows) == 10
    assert "no ATT-04a" in rows["paper-faced gypsum" if "paper-faced gypsum" in rows else "paper faced gypsum"]
    assert rows["concrete"].count("yes") == 3
    assert rows["concrete"].count("no ATT-01a") == 2
