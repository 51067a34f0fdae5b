"""A figure of the trade stands in one place: rows of the limits are moved, and all that rests on them moves.

The figures are our own; the sentences are those of the approved documents with the figure changed by hand.
"""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

from specgen import pipeline, standards
from specgen.computing.coats._cups import CUPS
from specgen.output import package
from tests.computing.asked import line, sum_of
from tests.golden import DOCUMENTS
from tests.support import EXAMPLES

# Row, its figure moved, and in which document which words rest on it: before, and after.
MOVED: dict[str, tuple[str, list[tuple[str, str, str]]]] = {
    "board.left_under_joint": (
        "7/8 in",
        [
            ("D06", "Minimum remaining board: 3/4 in.", "Minimum remaining board: 7/8 in."),
            ("D06", "on reveals: 3/4 in of board stays under", "on reveals: 7/8 in of board stays under"),
            ("D06", "Remaining board, B\u00a0= 3/4\u00a0in", "Remaining board, B\u00a0= 7/8\u00a0in"),
            ("D06", "0.5 + 0.0625 + 0 + 0.75 | 1-5/16", "0.5 + 0.0625 + 0 + 0.875 | 1-7/16"),
            ("D08", "Leave a minimum of 3/4 in of board", "Leave a minimum of 7/8 in of board"),
        ],
    ),
    "board.thickness_most": (
        "3-1/2 in",
        [("D06", "4\u00a0in maximum thickness", "3-1/2\u00a0in maximum thickness")],
    ),
    "joint.depth_least": (
        "5/16 in",
        [
            ("D06", "half the width, at least 1/4 in,", "half the width, at least 5/16 in,"),
            ("D06", "Minimum bead depth, D_l\u00a0= 1/4", "Minimum bead depth, D_l\u00a0= 5/16"),
        ],
    ),
    "joint.depth_most": (
        "7/16 in",
        [
            ("D06", "J2, J3 | 1 | 1/2 | 1/2 |", "J2, J3 | 1 | 7/16 | 7/16 |"),
            ("D06", "Maximum bead depth, D_m\u00a0= 1/2", "Maximum bead depth, D_m\u00a0= 7/16"),
        ],
    ),
    "joint.width_most": ("7/8 in", [("D06", "", "Maximum width of one bead: 7/8 in.")]),
    "joint.rod_oversize": (
        "30",
        [
            ("D06", "closed-cell rod 25% wider than the joint", "closed-cell rod 30% wider than the joint"),
            ("D06", "| 15/16 | 1 |", "| 0.975 | 1 |"),
        ],
    ),
    "cup.zahn_range_least": ("22 s", [("D06", "13.1.1: 20 to 80 s;", "13.1.1: 22 to 75 s;")]),
    "cup.zahn_range_most": ("75 s", []),
    "cup.between_cups": ("30", [("D06", "may differ by 33% of their mean", "may differ by 30% of their mean")]),
    "weather.above_dew_point": (
        "6 F apart",
        [("D08", "primer, gloss, sealant | minimum 5 °F", "primer, gloss, sealant | minimum 6 °F")],
    ),
    "weather.least_coats": (
        "52 F",
        [("D08", "primer, gloss | minimum 50 °F[a], during", "primer, gloss | minimum 52 °F")],
    ),
    "substrate.age": ("35", [("D08", "a minimum age of 28 days", "a minimum age of 35 days")]),
}
WORDS = [(document, old, new) for _, words in MOVED.values() for document, old, new in words]


class Moved(NamedTuple):
    """Documents and findings of the clean example, and sums from keys, with the rows moved."""

    texts: dict[str, str]
    findings: dict[str, str]


@pytest.fixture(scope="module")
def moved(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Moved]:
    """The clean example, built by a folder of rows whose limits are moved."""
    folder = tmp_path_factory.mktemp("standards")
    shutil.copytree(standards.FOLDER, folder, dirs_exist_ok=True)
    rows = (folder / "limits.yaml").read_text("utf-8")
    for name, (value, _) in MOVED.items():
        # The metric figures lie near those that are moved: these go without.
        row = rf"(?m)^({re.escape(name)}:\s*\{{value: )[^,]+(?:, value_si: [^,]+)?"
        rows, count = re.subn(row, rf"\g<1>{value}", rows)
        rows = re.sub(rf"(?m)^({re.escape(name)}: .*), source_si: \w+", r"\g<1>", rows)
        assert count == 1, name
    (folder / "limits.yaml").write_text(rows, "utf-8")
    try:
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(standards, "FOLDER", folder)
            standards.load_standards.cache_clear()
            yield Moved(*built(unstated(tmp_path_factory.mktemp("clean"))))
    finally:
        standards.load_standards.cache_clear()


def unstated(folder: Path) -> Path:
    """The project file of the clean example, whose attachments state no figure of the trade."""
    shutil.copytree(EXAMPLES / "clean", folder, dirs_exist_ok=True)
    for name in ("project.yaml", "coating-system.yaml"):
        text, count = re.subn(r"states: \[[^]]*\], ", "", (folder / name).read_text("utf-8"))
        assert count
        (folder / name).write_text(text, "utf-8")
    return folder / "project.yaml"


def built(file: Path) -> tuple[dict[str, str], dict[str, str]]:
    case = pipeline.check(file)
    context = case.context
    made = package.make_package(context.project, context.standards, case.judgment, context.resolve, ("txt",), (), True)
    texts = {name[:3]: content.decode() for name, content in made.files.items()}
    return texts, {finding.code: finding.message for finding in case.judgment.findings}


@pytest.mark.parametrize(("document", "old", "new"), WORDS)
def test_every_sentence_and_sum_that_rests_on_a_row_moves_with_it(
    document: str, old: str, new: str, moved: Moved
) -> None:
    approved = next(DOCUMENTS.glob(f"clean-{document}-*.txt")).read_text("utf-8")
    assert old in approved and new not in approved
    assert new in moved.texts[document]
    assert not old or old not in moved.texts[document]


# Joints J2 and J3 of the example are 1 in wide and 1/2 in deep, with a rod of 1-1/4 in.
FIRED = {
    "SLT-03c": "1 in wide; maximum 7/8 in",
    "SLT-03e": "minimum 1.3 in, 30% over the joint width",
    "SLT-03h": "maximum 7/16 in",
}


def test_the_clauses_that_rest_on_a_row_fire_by_the_moved_figure(moved: Moved) -> None:
    approved = (DOCUMENTS / "clean-D05-warnings-and-limitations.txt").read_text("utf-8")
    for code, words in FIRED.items():
        assert code not in approved
        assert words in moved.findings[code]
        assert words in moved.texts["D05"]
    assert {code for code in moved.findings if code.startswith("SLT")} == set(FIRED)


def test_sums_from_keys_rest_on_the_moved_rows(moved: Moved) -> None:
    margin = sum_of("surface-margin", air="70 F", rh="50%", surface="80 F")
    assert line(margin, "T_m") == pytest.approx(line(margin, "T_d") + 6)
    assert "less than 6 °F above the dew point" in margin.source[0].reference
    assert (CUPS["zahn_4"].least, CUPS["zahn_4"].most, CUPS["zahn_4"].spread) == (22, 75, 0.3)
    deep = sum_of("joint-depth", width="3 in")
    assert deep.result == 0.4375
    assert "Maximum width of one bead: 7/8 in." in deep.notes
