"""What a project gives prints: a field given in `clean` that no document prints stands in a list with its reason."""

import dataclasses
from pathlib import Path

import pytest
import yaml

from specgen.documents import document
from specgen.documents.calculations import gather_calculations
from specgen.documents.catalogue import templates
from specgen.documents.context import DocumentContext
from specgen.documents.origins import follow
from specgen.model.field import Field, dotted_path
from specgen.model.field import Path as FieldPath
from specgen.model.project import Project
from tests.documents.support import context_of_example

REASONS = yaml.safe_load((Path(__file__).parent / "unprinted.yaml").read_text("utf-8"))
UNPRINTED = [path for paths in REASONS.values() for path in paths]
# How the files are read and which package it is; they print in the name of what they decide.
OF_THE_FILE = {"format", "firm", "coating_system"}


def given(project: Project) -> set[str]:
    """The fields that the example or a file it names gives, stars for marks."""
    return names_of(project, {*project.values, *project.maker}) - OF_THE_FILE


def names_of(project: Project, paths: set[FieldPath]) -> set[str]:
    fields = (project.schema.field_at(path) for path in paths)
    return {dotted_path(field.path) for field in fields if field is not None}


def compose_all(context: DocumentContext) -> None:
    for template in templates():
        document.compose_document(template, context, draft=False)


def printed(context: DocumentContext, monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """The fields that documents read, and those that calculations print as their inputs.

    All is composed once before it is watched, so that what calculations and clauses read has been read by then.
    """
    compose_all(context)
    read: set[FieldPath] = set()
    value, value_of = Project.value, Project.value_of

    def watch_value(project: Project, path: FieldPath) -> object:
        read.add(path)
        return value(project, path)

    def watch_value_of(project: Project, entry: Field, path: FieldPath) -> object:
        read.add(path)
        return value_of(project, entry, path)

    with monkeypatch.context() as watched:
        watched.setattr(Project, "value", watch_value)
        watched.setattr(Project, "value_of", watch_value_of)
        compose_all(dataclasses.replace(context))  # one that remembers nothing of the first time
    for calculation in gather_calculations(context):
        for member, working in calculation.workings.items():
            origins = (follow(context.project, row.origin, member) for row in working.inputs)
            read |= {path for path in origins if path is not None}
    return names_of(context.project, read)


def test_what_is_given_prints_or_stands_in_the_list_with_its_reason(monkeypatch: pytest.MonkeyPatch) -> None:
    context = context_of_example("clean")
    assert given(context.project) - printed(context, monkeypatch) == set(UNPRINTED)


def test_each_field_of_the_list_stands_there_once_and_under_a_reason() -> None:
    assert len(set(UNPRINTED)) == len(UNPRINTED)
    assert all(len(reason.split()) > 4 for reason in REASONS)


# What a reviewer looks for on the pages: the heads of a product, a finish and a sealant schedule.
LOOKED_FOR = {
    "walls.*.wrb.product",
    "walls.*.attachment.product",
    "walls.*.insulation.product",
    "walls.*.base_coat.product",
    "walls.*.mesh.layers.*.product",
    "smoothing.product",
    "primer.product",
    "gloss.product",
    "sealants.*.product",
    "sealants.*.color",
    "joints.*.rod_product",
    "colors.*.number",
    "parties.eifs_source.name",
    "parties.finish_source.name",
    "parties.wrb_source.name",
    "parties.sealant_source.name",
    "gloss.voc",
    "code.voc_limit",
    "gloss_target.units",
    "gloss_target.tolerance",
    "gloss_target.angle",
    "joints.*.length",
    "joints.*.width",
    "joints.*.depth",
    "joints.*.rod_diameter",
    "sealants.*.reported_face",
    "elevations.*.impact_zones.*.class",
    "instruments.*.calibrated_to",
}


def test_what_a_reviewer_looks_for_is_given_and_prints() -> None:
    assert given(context_of_example("clean").project) >= LOOKED_FOR
    assert not LOOKED_FOR & set(UNPRINTED)
