"""Holds signals off while files are written, so that nothing is left half done."""

import signal
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from specgen.model.problem import Stopped


@contextmanager
def signals_held() -> Iterator[Callable[[], None]]:
    """Hold off SIGINT, SIGTERM and SIGHUP; yields a call that raises Stopped if one has arrived.

    One that arrives behind the last such call is dropped: what is written then is whole, and the work about to end.
    """
    arrived: list[int] = []

    def answer() -> None:
        if arrived:
            raise Stopped(arrived[0])

    before: dict[Any, Any] = {}
    try:
        if threading.current_thread() is threading.main_thread():
            for name in ("SIGINT", "SIGTERM", "SIGHUP"):
                number = getattr(signal, name, None)
                # A run that was told to outlive its terminal goes on to ignore what it ignores.
                if number is not None and signal.getsignal(number) != signal.SIG_IGN:
                    before[number] = signal.signal(number, lambda got, _: arrived.append(got))
        yield answer
    finally:
        for number, handler in before.items():
            signal.signal(number, signal.SIG_DFL if handler is None else handler)
