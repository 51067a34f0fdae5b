"""Where an input of a calculation comes from: a field and its file, another calculation, or the method itself."""

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import PurePath
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.absence import Absent
from specgen.model.field import Path, bound, dotted
from specgen.model.project import Project, View
from specgen.model.source import Source
from specgen.model.working import Given, Working
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS
from specgen.resolving.provider import Provider

# What stands where no field holds the figure: a calculation that tells its origins leaves out those of its method.
METHOD, SET = "figure of the method", "set in the calculation"


@dataclass(frozen=True, slots=True)
class Origin:
    """Where an input comes from in words, and the source behind its figure where it is not the project's own."""

    text: str
    source: Source | None = None


def origin(context: DocumentContext, provider: Provider, member: Path, given: Given) -> Origin:
    """The origin of an input: as the calculation tells it, else the one field it reads by that name and figure."""
    told = given.origin or provider.origins.get(given.symbol, "")
    if told in context.resolve.names:
        return Origin(_computed(context, member, told), given.source)
    path = followed(context.project, told, member) if told else _holding(context, provider, member, given)
    if path is not None:
        return Origin(_field(context, path), given.source or context.display(path).source)
    if told and (members := _members(context, told)):
        return Origin(members, given.source)
    need = "" if told else _need(context, provider, member, given)
    left = METHOD if given.source is not None or provider.origins else SET
    return Origin(told or (_computed(context, member, need) if need else left), given.source)


def followed(project: Project, pattern: str, member: Path) -> Path | None:
    """The field a pattern leads to for a member, through references; None where it is no path or a link is absent."""
    at: Path = ()
    try:
        for name in bound(pattern, member):
            field = project.schema.node(at).field
            if field is not None:
                linked = project.get(at)
                if linked is None or field.kind != "reference":
                    return None
                at = linked.path
            at += (name,)
        return at if project.schema.node(at).field is not None and "*" not in at else None
    except KeyError:
        return None


def _field(context: DocumentContext, path: Path) -> str:
    """`Moving length (joints.J1.panel_length), project.yaml`; a default says so."""
    project = context.project
    field = project.schema.node(path).field
    assert field is not None
    if path in project.values:
        file = PurePath(project.place(path).file).name
        return f"{field.label} ({dotted(path)}){f', {file}' if file else ''}"
    return f"{field.label} ({dotted(path)}): not given, the usual value"


def _members(context: DocumentContext, told: str) -> str:
    """As `_field`, for the path of a collection; empty where it is none."""
    project, path = context.project, tuple(told.split("."))
    if path not in project.members:
        return ""
    collection = project.schema.node(path).collection
    assert collection is not None
    file = PurePath(project.place(path).file).name
    return f"{collection.label} ({told}){f', {file}' if file else ''}"


def _computed(context: DocumentContext, member: Path, name: str) -> str:
    at = context.resolve.member(member, name)
    title = context.resolve.find(name).title
    return f"computed: {title[:1].lower()}{title[1:]}{f', {at[-1]}' if at else ''}"


def _holding(context: DocumentContext, provider: Provider, member: Path, given: Given) -> Path | None:
    """The one field read by the calculation that holds the figure and shares a word with the input's name.

    An equal figure alone says nothing: a tolerance of 1/16 in is no shear of 1/16 in.
    """
    project = context.project
    claimed = {followed(project, pattern, member) for pattern in provider.origins.values()}
    paths = [p for p in _read(project, provider, member) if p not in claimed and _same(project.get(p), given)]
    alike = [p for p in paths if _said(p[-1]) & _said(given.name)]
    named = [p for p in alike if _said(p[-1]) == _said(given.name)] or alike
    return named[0] if len(named) == 1 else None


def _said(name: str) -> frozenset[str]:
    return frozenset(word for word in re.findall(r"[a-z]+", name.lower()) if len(word) > 2) - {"the", "that", "and"}


def _read(project: Project, provider: Provider, member: Path) -> Iterator[Path]:
    """The fields a calculation reads; where it reads a reference, those of what that leads to."""
    for pattern in provider.reads:
        path = followed(project, pattern, member)
        if path is None:
            continue
        linked = project.get(path)
        if isinstance(linked, View):
            yield from (linked.path + (name,) for name, node in linked.node.children.items() if node.field is not None)
        else:
            yield path


def _same(value: Any, given: Given) -> bool:
    if isinstance(value, Quantity):
        unit = f"{given.unit} apart" if value.dimension == "temperature_difference" else given.unit
        if unit not in UNITS or UNITS[unit].dimension != value.dimension:
            return False
        return math.isclose(value.number(unit), given.value, rel_tol=1e-9)
    counts = isinstance(value, (int, float, Fraction)) and not isinstance(value, bool)
    return counts and any(math.isclose(float(value) * f, given.value, rel_tol=1e-9) for f in (1, 0.01))


def _need(context: DocumentContext, provider: Provider, member: Path, given: Given) -> str:
    """The calculation whose result the input is."""
    for name in provider.needs:
        try:
            value = context.resolve(member, name)
        except Absent:
            continue
        if isinstance(value, Working) and _same(_quantity(value), given):
            return name
    return ""


def _quantity(working: Working) -> Any:
    known = working.unit in UNITS
    return working.quantity if known else float(working.result)
