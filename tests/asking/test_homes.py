"""An answer goes into the file where its field is at home, also where two files share a section."""

from pathlib import Path

import pytest

from specgen.asking.offers import Offer
from specgen.asking.placing import Placer
from specgen.reading.schema import project_schema

SCHEMA = project_schema()
FILES = {"firm": "firm.yaml", "coating_system": "coating-system.yaml", "project": "project.yaml"}
JOB = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial}
firm: firm.yaml
coating_system: coating-system.yaml
"""
# A value of every section that a side file shares with the project file, so that the section stands there already.
SIDES = {
    "firm.yaml": "safety: {silica_plan: A1}\ncompressor: {air_flow: 26 cfm}\nattachments: {A1: {kind: letter}}\n",
    "coating-system.yaml": "format: 1\ngloss: {coats: 2}\n",
}


def job_in(folder: Path, **files: str) -> Placer:
    for name, text in {"project.yaml": JOB, **SIDES, **files}.items():
        (folder / name).write_text(text, "utf-8")
    return Placer(folder / "project.yaml", SCHEMA)


def offer_at(path: tuple[str, ...], text: str) -> Offer:
    return Offer(path, text, text, "a.xlsx, Questions!H4")


def member_path(pattern: tuple[str, ...]) -> tuple[str, ...]:
    """A path with the mark of a new member for each star."""
    path: tuple[str, ...] = ()
    for depth, name in enumerate(pattern):
        collection = SCHEMA.collections.get(pattern[: depth + 1])
        first = (
            "0"
            if collection and collection.kind == "items"
            else collection.keys[0]
            if collection and collection.keys
            else "M1"
        )
        path += (first if name == "*" else name,)
    return path


def test_every_field_goes_to_the_file_where_it_is_at_home(tmp_path: Path) -> None:
    placer = job_in(tmp_path)
    wrong = []
    for pattern, field in SCHEMA.fields.items():
        path = member_path(pattern)
        if (
            field.home == "record"
            or path in placer.project.values
            or path in (("firm",), ("coating_system",), ("records",))
        ):
            continue
        placed = placer.place([offer_at(path, field.example)])
        files = [file.name for file in placed.after]
        astray = [
            problem for problem in placed.problems if "belongs in" in problem.message or "also in" in problem.message
        ]
        if astray or (files and files != [FILES[field.home]]):
            wrong.append((".".join(path), files, astray))
    assert wrong == []


@pytest.mark.parametrize(
    ("path", "text", "file"),
    [
        ("gloss.same_sprayer", "yes", "project.yaml"),
        ("gloss.product", "Gloss 7", "coating-system.yaml"),
        ("attachments.A2.kind", "letter", "project.yaml"),
        ("attachments.A1.title", "Silica plan", "firm.yaml"),
        ("guns.G1.kind", "hvlp", "firm.yaml"),
        ("crews.red.size", "3", "project.yaml"),
    ],
)
def test_an_answer_goes_beside_what_it_belongs_to(path: str, text: str, file: str, tmp_path: Path) -> None:
    placed = job_in(tmp_path).place([offer_at(tuple(path.split(".")), text)])
    assert placed.problems == []
    assert [one.name for one in placed.after] == [file]


def test_a_section_of_the_firm_that_a_file_has_already_is_kept_there(tmp_path: Path) -> None:
    own = JOB + "guns: {G1: {kind: hvlp}}\n"
    placed = job_in(tmp_path, **{"project.yaml": own}).place([offer_at(("guns", "G2", "count"), "1")])
    assert (placed.problems, [one.name for one in placed.after]) == ([], ["project.yaml"])
    firm = SIDES["firm.yaml"] + "crews: {red: {size: 3}}\n"
    placed = job_in(tmp_path, **{"firm.yaml": firm}).place([offer_at(("crews", "blue", "size"), "2")])
    assert (placed.problems, [one.name for one in placed.after]) == ([], ["firm.yaml"])
