"""A coverage-guided fuzzer over the reader: `python -m tests.fuzz_reading SECONDS`. Never collected as a test.

Needs `atheris` from the registry. It begins from the examples and stops at the first input that ends in anything but
findings or clear errors; that input is then kept as a file and named.
"""

import sys
import tempfile
from pathlib import Path

import atheris

from tests.support import EXAMPLES

with atheris.instrument_imports(include=["specgen.reading", "specgen.vocabulary"]):
    from specgen import pipeline
    from specgen.model.problem import Refused

FOLDER = Path(tempfile.mkdtemp())


def one_input(content: bytes) -> None:
    """Read and judge a file of this content."""
    file = FOLDER / "project.yaml"
    file.write_bytes(content)
    try:
        pipeline.check(file)
    except Refused as refused:
        assert refused.problems and all(problem.message for problem in refused.problems)


def main(seconds: str) -> None:
    """Fuzz for so many seconds."""
    corpus = FOLDER / "corpus"
    corpus.mkdir()
    for example in ("first-look", "clean", "metric", "stops"):
        (corpus / example).write_bytes((EXAMPLES / example / "project.yaml").read_bytes())
    arguments = [sys.argv[0], f"-max_total_time={seconds}", "-timeout=5", "-rss_limit_mb=1000", str(corpus)]
    atheris.Setup(arguments, one_input)
    atheris.Fuzz()


if __name__ == "__main__":
    main(*sys.argv[1:])
