"""Runs one command after the other in this process, as they come in by lines of JSON; started by `processes.py`."""

import base64
import contextlib
import io
import json
import os
import resource
import sys
import time
import traceback
from typing import Any

from specgen.cli import main


def serve() -> None:
    """Answer each line with how its command ended."""
    answers = os.fdopen(os.dup(1), "w")
    for line in sys.stdin:
        asked = json.loads(line)
        os.chdir(asked["job"])
        told = run([os.fsdecode(bytes.fromhex(word)) for word in asked["words"]])
        # The folder is taken away before the next command.
        os.chdir("/")
        answers.write(json.dumps(told) + "\n")
        answers.flush()


def run(words: list[str]) -> dict[str, Any]:
    """Run one command; its streams are those of a terminal that reads UTF-8."""
    streams = [io.TextIOWrapper(io.BytesIO(), "utf-8", errors="backslashreplace", write_through=True) for _ in range(2)]
    start = time.process_time()
    with contextlib.redirect_stdout(streams[0]), contextlib.redirect_stderr(streams[1]):
        code = _end(words)
    seconds = time.process_time() - start
    out, err = (base64.b64encode(stream.buffer.getvalue()).decode() for stream in streams)
    megabytes = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return {"code": code, "out": out, "err": err, "seconds": seconds, "megabytes": megabytes}


def _end(words: list[str]) -> int:
    try:
        return main(words)
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else 1
    except BaseException:
        traceback.print_exc()
        return 1


if __name__ == "__main__":
    serve()
