"""Draws changes, tries each, and prints what no test noticed.

python -m tests.mutate 300
python -m tests.mutate 40 --seed 7 --kind severity --under specgen/judging
"""

import argparse
import random
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor, as_completed
from functools import partial
from itertools import zip_longest
from pathlib import Path
from queue import SimpleQueue

from tests.mutate.change import Change
from tests.mutate.code_changes import CodeChanges
from tests.mutate.data_changes import data_changes, template_changes
from tests.mutate.trial import LONGEST_S, Checkout, Tried, group_by_file
from tests.support import ROOT

# A third of the changes or less is left by the tests nearest to them: so many are tried before those left fill groups.
_BLOCK = 8


def all_changes(under: str) -> Iterator[Change]:
    """Every change of the files below a folder of the checkout."""
    for path in sorted((ROOT / under).rglob("*")):
        file = str(path.relative_to(ROOT))
        if path.suffix == ".py":
            yield from CodeChanges(file, path.read_text("utf-8")).all()
        elif path.suffix == ".yaml":
            yield from data_changes(file, path.read_text("utf-8"))
        elif path.suffix == ".j2":
            yield from template_changes(file, path.read_text("utf-8"))


def drawn(changes: list[Change], number: int, seed: int) -> list[Change]:
    """So many changes, each kind of code and of rows in its turn."""
    dice = random.Random(seed)
    groups: dict[tuple[str, str], list[Change]] = {}
    for change in changes:
        groups.setdefault((change.kind, Path(change.file).suffix), []).append(change)
    for group in groups.values():
        dice.shuffle(group)
    turns = [change for turn in zip_longest(*groups.values()) for change in turn if change]
    return turns[:number]


def try_all(changes: list[Change], jobs: int, patience: float, together: int) -> Iterator[Tried]:
    """Try each change, so many at a time, and print how it went, in the order in which they end."""
    with tempfile.TemporaryDirectory() as folder, ThreadPoolExecutor(jobs) as pool:
        free: SimpleQueue[Checkout] = SimpleQueue()
        for number in range(jobs):
            checkout = Checkout(ROOT, Path(folder) / str(number), patience)
            checkout.prove()
            free.put(checkout)

        def use_checkout(trial: Callable[[Checkout], list[Tried]]) -> list[Tried]:
            checkout = free.get()
            try:
                return trial(checkout)
            finally:
                free.put(checkout)

        def try_each(trials: Iterable[Callable[[Checkout], list[Tried]]]) -> Iterator[Tried]:
            for ended in as_completed([pool.submit(use_checkout, trial) for trial in trials]):
                yield from ended.result()

        size = _BLOCK * jobs * together
        for start in range(0, len(changes), size):
            unnoticed = []
            for tried in try_each(partial(try_near, change) for change in changes[start : start + size]):
                if tried.noticed_by:
                    yield tell(tried)
                else:
                    unnoticed.append(tried.change)
            groups = group_by_file(unnoticed, together)
            yield from map(tell, try_each(partial(Checkout.try_together, changes=one) for one in groups))


def try_near(change: Change, checkout: Checkout) -> list[Tried]:
    """A change tried by the tests nearest to it."""
    return [checkout.try_near(change)]


def tell(tried: Tried) -> Tried:
    """Print how a change went."""
    print(f"{'noticed ' if tried.noticed_by else 'SURVIVED'} {tried.change.told(ROOT)}  {tried.noticed_by}", flush=True)
    return tried


def print_table(results: list[Tried]) -> None:
    """How many changes of each kind, of code and of rows, were noticed."""
    made = Counter((Path(one.change.file).suffix, one.change.kind) for one in results)
    noticed = Counter((Path(one.change.file).suffix, one.change.kind) for one in results if one.noticed_by)
    print(f"\n{'in':<7}{'kind':<10}{'made':>6}{'noticed':>9}")
    for suffix, kind in sorted(made):
        print(f"{suffix:<7}{kind:<10}{made[suffix, kind]:>6}{noticed[suffix, kind]:>9}")
    print(f"{'all':<17}{made.total():>6}{noticed.total():>9}  {noticed.total() / made.total():.1%}")


def main() -> int:
    """0 where every change was noticed, else 1."""
    parser = argparse.ArgumentParser(prog="python -m tests.mutate", description=__doc__.splitlines()[0])
    parser.add_argument("number", type=int, help="how many changes to try")
    parser.add_argument("--seed", type=int, default=1, help="draws the same changes again (default 1)")
    parser.add_argument("--kind", help="only changes of this kind, such as severity")
    parser.add_argument("--under", action="append", help="only files below this folder (default specgen and templates)")
    parser.add_argument("--jobs", type=int, default=2, help="how many are tried at a time (default 2)")
    parser.add_argument("--after", type=int, default=0, help="how many of those drawn were tried before")
    parser.add_argument("--together", type=int, default=8, help="how many are tried by all tests at once (default 8)")
    parser.add_argument("--patience", type=float, default=LONGEST_S, help="processor seconds for the tests of a room")
    args = parser.parse_args()
    changes = [one for under in args.under or ("specgen", "templates/documents") for one in all_changes(under)]
    changes = [one for one in changes if args.kind in (None, one.kind)]
    picked = drawn(changes, args.after + args.number, args.seed)[args.after :]
    print(f"{len(changes)} changes can be made; {len(picked)} are tried", flush=True)
    results = list(try_all(picked, args.jobs, args.patience, args.together))
    if results:
        print_table(results)
    return int(not all(one.noticed_by for one in results))


sys.exit(main())
