"""Many projects checked at once, in as many processes as there are cores; a project that is refused stops no other."""

import os
import signal
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any, NamedTuple

from specgen.commands import AGAINST, DONE, NOT_DONE
from specgen.commands._project_file import find_project_file
from specgen.judging.registry import load_rules
from specgen.model.finding import Severity
from specgen.model.problem import Problem, Refused
from specgen.model.value_text import count
from specgen.pipeline import check, told_from_here
from specgen.reading.schema import project_schema
from specgen.standards import load_standards
from specgen.terminal.fault import describe_fault
from specgen.terminal.progress import Tell, tell_nobody
from specgen.terminal.report_data import report_to_data


class Asked(NamedTuple):
    """What is asked of each project: findings of one severity or rule alone, and whether they are listed at all."""

    severity: Severity | None = None
    rule: str = ""
    listed: bool = True


class CheckedFile(NamedTuple):
    """A project file as it was named, how its check ended, and the object that tells of it."""

    file: str
    code: int
    data: dict[str, Any]


def check_files(files: Sequence[str], asked: Asked, tell: Tell = tell_nobody) -> list[CheckedFile]:
    """Each project in the order of the files; the fault of one is told in its own object.

    `tell` takes how many are done.
    """
    workers = min(_count_cores(), len(files))
    if workers > 1:
        try:
            return list(_follow(_check_apart(files, asked, workers), len(files), tell))
        except (OSError, ImportError, NotImplementedError):  # no more processes here, or no way to wait for them
            pass
    return list(_follow((_check_file(file, asked) for file in files), len(files), tell))


def _follow(checked: Iterable[CheckedFile], number: int, tell: Tell) -> Iterator[CheckedFile]:
    """What is checked, each told of as it is done."""
    for done, one in enumerate(checked, 1):
        tell(f"checked {done} of {count(number, 'project')}")
        yield one


def refuse_file(file: str, *problems: Problem) -> CheckedFile:
    """What is told of a file that could not be checked."""
    return CheckedFile(file, NOT_DONE, report_to_data(None, None, problems))


def _count_cores() -> int:
    """The cores that this process may run on."""
    usable: Callable[[int], set[int]] | None = getattr(os, "sched_getaffinity", None)
    return len(usable(0)) if usable else os.cpu_count() or 1


def _check_apart(files: Sequence[str], asked: Asked, workers: int) -> Iterator[CheckedFile]:
    """The same in processes of their own, which end with this one."""
    import multiprocessing
    from concurrent.futures import ProcessPoolExecutor
    from concurrent.futures.process import BrokenProcessPool

    # What every check needs is read once, before the process is copied.
    load_rules(), load_standards(), project_schema()
    copied = "fork" in multiprocessing.get_all_start_methods()
    how = multiprocessing.get_context("fork" if copied else "spawn")
    with ProcessPoolExecutor(workers, how, _follow_parent) as pool:
        for file, done in [(file, pool.submit(_check_file, file, asked)) for file in files]:
            try:
                yield done.result()
            except BrokenProcessPool:
                yield refuse_file(
                    file, Problem("the process that checked it was ended", "check it by itself", file=file)
                )


def _follow_parent() -> None:
    """End at once when asked to, and when the process that asked for the checks has ended, however it did."""
    import multiprocessing
    import threading

    signal.signal(signal.SIGINT, signal.SIG_DFL)
    parent = multiprocessing.parent_process()

    def follow() -> None:
        if parent is not None:
            parent.join()
        os._exit(NOT_DONE)

    threading.Thread(target=follow, daemon=True).start()


def _check_file(file: str, asked: Asked) -> CheckedFile:
    try:
        path = find_project_file(file)
        with told_from_here(path):
            case = check(path)
    except Refused as refused:
        return refuse_file(file, *refused.problems)
    except Exception as error:  # a fault of ours stops no other project either
        return refuse_file(file, describe_fault(error, f"specgen check {file}"))
    data = report_to_data(case.project, case.judgment, (), asked.severity, asked.rule)
    if not asked.listed:
        data |= {"findings": [], "open": [], "not_judged": []}
    return CheckedFile(file, AGAINST if case.judgment.stopped else DONE, data)
