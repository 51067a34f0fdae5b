"""What reading and judging cost."""

import gc
import re
import sys
import tempfile
from pathlib import Path

import yaml

from specgen import pipeline
from specgen.computing.joints.joint_width import JointInputs, joint_width
from specgen.model.problem import Refused
from specgen.quantities.quantity import Quantity
from specgen.reading.positions import MOST_VALUES, read_text
from tests.bench.measuring import at_most, process, seconds
from tests.support import ROOT

CLEAN = ROOT / "project_examples" / "clean" / "project.yaml"
LARGE = ROOT / "project_examples" / "large" / "project.yaml"
LONG = 50_000  # lines


def measure() -> None:
    """The whole process on a usual file, then what each part costs beyond the start."""
    usual = process(sys.executable, "-m", "specgen", "check", str(CLEAN))
    start = process(sys.executable, "-c", "import yaml, cerberus")
    at_most("check of clean / start of yaml and cerberus", usual / start, 4)
    kept = process(sys.executable, "-m", "specgen", "calc", "joint-width", "--from", str(CLEAN))
    at_most("all joint widths of clean / start of yaml and cerberus", kept / start, 4)
    bare = process(sys.executable, "-c", "import yaml")
    asked = process(sys.executable, "-m", "specgen", "calc", "dew-point", "air=70F", "rh=50%")
    at_most("calc dew-point / start of yaml", asked / bare, 3)
    at_most("CPU seconds of 1,000 joint widths", seconds(_joint_widths), 0.2)
    with tempfile.TemporaryDirectory() as folder:
        _judged(Path(folder) / "project.yaml")
        _read(Path(folder) / "long.yaml")
        _invalid(Path(folder) / "invalid.yaml")
        _without_end(Path(folder) / "hostile.yaml")


def _joint_widths() -> None:
    usual = {
        "alpha": Quantity.of("8e-6", "/F"),
        "movement_class": "50",
        "tolerance": Quantity.of("1/8", "in"),
        "hot": Quantity.of(150, "F"),
        "cold": Quantity.of(0, "F"),
        "install_low": Quantity.of(40, "F"),
        "install_high": Quantity.of(100, "F"),
        "round_up": Quantity.of("1/16", "in"),
    }
    for inches in range(100, 1_100):
        joint_width(JointInputs(length=Quantity.of(inches, "in"), **usual))


def _judged(file: Path) -> None:
    text = LARGE.read_text("utf-8")
    file.write_text(doubled(text), "utf-8")
    pipeline.check(LARGE)
    once, both = seconds(lambda: pipeline.check(LARGE)), seconds(lambda: pipeline.check(file))
    at_most("check of large / plain load of it", once / seconds(lambda: plain_load(text)), 12)
    at_most("check of twice the elevations / of once", both / once, 2.1)


def _read(file: Path) -> None:
    text = "".join(f"E{n}: {{wall: W1, width: 40 ft, height: {n} in}}\n" for n in range(LONG))
    file.write_text(text, "utf-8")
    ratio = seconds(lambda: read_text(file, file.name), 3) / seconds(lambda: plain_load(text), 3)
    at_most("data and positions of 50,000 lines / plain load", ratio, 1.2)


def _invalid(file: Path) -> None:
    once, both = (seconds(lambda many=many: _refused(file, many), 3) for many in (2_000, 4_000))
    at_most("check of 4,000 wrong entries / of 2,000", both / once, 2.2)


def _refused(file: Path, many: int) -> None:
    head = "format: 1\npackage: {purpose: design_draft}\nproject: {name: Wrong}\nelevations:\n"
    file.write_text(head + "".join(f"  E{n}: {{wide: 40, facing: X, width: 3}}\n" for n in range(many)), "utf-8")
    _is_refused(file)


def _is_refused(file: Path) -> None:
    try:
        pipeline.check(file)
    except Refused:
        return
    raise AssertionError("the wrong file was accepted")


def _without_end(file: Path) -> None:
    """What would grow without end is refused while it is read."""
    wide = f"a: &a {{{', '.join(f'k{n}: 1' for n in range(9_000))}}}\n"
    shapes = {
        "5,000 merges of a wide mapping": wide + "".join(f"b{n}: {{<<: *a}}\n" for n in range(5_000)),
        "900,000 aliases in one merge": "a: &a {}\nb: {<<: [" + "*a," * 900_000 + "]}\n",
        "a list of too many values": "contract: [" + "1," * MOST_VALUES + "]\n",
        "a mapping of too many marks": "walls:\n" + "".join(f"  V{n}: {{}}\n" for n in range(MOST_VALUES)),
    }
    for name, text in shapes.items():
        file.write_text(f"format: 1\n{text}", "utf-8")
        at_most(f"CPU seconds to refuse {name}", seconds(lambda: _is_refused(file), 3), 3)


def doubled(text: str) -> str:
    """The large example with every elevation and joint twice, the second under another mark."""
    head, rest = text.split("elevations:\n")
    elevations, joints = rest.split("joints:\n")
    again = [re.sub(r"(?m)^  ([EJ])(\d+):", r"  \1x\2:", part) for part in (elevations, joints)]
    return f"{head}elevations:\n{elevations}{again[0]}joints:\n{joints}{again[1]}"


def plain_load(text: str) -> None:
    """A plain load by the C loader, the cyclic collector off."""
    gc.disable()
    yaml.load(text, Loader=yaml.CSafeLoader)
    gc.enable()
