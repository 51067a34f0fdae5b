"""The resolver of computed values: once each, never in a circle, and what is missing told by path."""

import dataclasses
from pathlib import Path
from typing import Any

import pytest

from specgen import computing, pipeline
from specgen.model.absence import Absent
from specgen.model.field import Node, Schema, bind_path, dotted_path
from specgen.model.problem import Refused
from specgen.reading.schema import project_schema
from specgen.resolving.provider import CycleError, Provider, Resolver
from tests.support import case_of

TWO = {
    "walls": {"W2": {}},
    "elevations": {"E1": {"wall": "W1"}, "E2": {"wall": "W2"}},
    "joints": {"J1": {"elevation": "E1"}, "J2": {"elevation": "E2"}, "J3": {"elevation": "E2"}},
}


def counting(name: str, each: tuple[str, ...], calls: list[tuple[str, ...]], *needs: str) -> Provider:
    """A provider whose value is its path with those it needs, and that writes down each time it computes."""

    def compute(view: Any, ask: Any) -> Any:
        calls.append((name, *view.path))
        return (dotted_path(view.path), *(ask(need) for need in needs))

    return Provider(name=name, title=name, each=each, compute=compute, needs=needs)


def resolver_of(folder: Path, *providers: Provider) -> Resolver:
    return Resolver(case_of(folder, TWO).project, {p.name: p for p in providers}.__getitem__)


def test_a_value_is_computed_once_for_each_member(tmp_path: Path) -> None:
    calls: list[tuple[str, ...]] = []
    resolver = resolver_of(tmp_path, counting("a", ("walls",), calls, "b"), counting("b", (), calls))
    asked = [resolver(path, "a") for path in (("walls", "W1"), ("walls", "W2"), ("walls", "W1"))]
    assert asked == [("walls.W1", ("",)), ("walls.W2", ("",)), ("walls.W1", ("",))]
    assert calls == [("a", "walls", "W1"), ("b",), ("a", "walls", "W2")]


def test_a_value_belongs_to_the_member_a_path_leads_through_or_stands_on(tmp_path: Path) -> None:
    calls: list[tuple[str, ...]] = []
    resolver = resolver_of(
        tmp_path,
        counting("wall", ("walls",), calls),
        counting("face", ("elevations",), calls, "wall"),
        counting("all", (), calls),
    )
    assert resolver(("walls", "W1", "substrate", "kind"), "wall") == ("walls.W1",)
    assert resolver(("joints", "J1"), "face") == ("elevations.E1", ("walls.W1",))
    assert resolver(("joints", "J3"), "wall") == resolver(("elevations", "E2"), "wall") == ("walls.W2",)
    assert resolver(("joints", "J1"), "all") == resolver((), "all") == ("",)
    assert len(calls) == len(set(calls)) == 4


@pytest.mark.parametrize(
    ("needs", "circle"),
    [
        ({"a": ("a",)}, "a.*a"),
        ({"a": ("b",), "b": ("a",)}, "a.*b.*a"),
        ({"a": ("b",), "b": ("c",), "c": ("b",)}, "b.*c.*b"),
    ],
)
def test_values_that_wait_for_one_another_are_refused(
    needs: dict[str, tuple[str, ...]], circle: str, tmp_path: Path
) -> None:
    resolver = resolver_of(tmp_path, *(counting(name, (), [], *others) for name, others in needs.items()))
    for _ in range(2):
        with pytest.raises(CycleError, match=circle):
            resolver((), "a")


def test_one_name_for_two_members_is_no_circle(tmp_path: Path) -> None:
    asked = []

    def compute(view: Any, ask: Any) -> Any:
        asked.append(view.mark)
        return view.mark if view.mark == "W2" else resolver(("walls", "W2"), "a")

    resolver = resolver_of(tmp_path, Provider(name="a", title="A", each=("walls",), compute=compute))
    assert resolver(("walls", "W1"), "a") == "W2"
    assert asked == ["W1", "W2"]


def test_a_value_that_could_not_be_computed_is_tried_again_and_leaves_no_circle_behind(tmp_path: Path) -> None:
    resolver = resolver_of(
        tmp_path, Provider(name="a", title="A", each=("walls",), compute=lambda view, ask: view.framing.kind)
    )
    for _ in range(2):
        with pytest.raises(Absent) as raised:
            resolver(("walls", "W1"), "a")
        assert raised.value.path == ("walls", "W1", "framing", "kind")


def test_a_value_of_a_section_belongs_to_the_section_a_path_leads_through(tmp_path: Path) -> None:
    calls: list[tuple[str, ...]] = []
    provider = dataclasses.replace(
        counting("coat", (), calls), sections=("primer", "gloss"), reads=("*.dry_film", "elevations")
    )
    resolver = resolver_of(tmp_path, provider)
    assert resolver(("primer",), "coat") == resolver(("primer", "coats"), "coat") == ("primer",)
    assert calls == [("coat", "primer")]
    assert resolver.missing(("gloss",), "coat") == [("gloss", "dry_film")]
    assert provider.members(resolver.project) == [("primer",), ("gloss",)]
    for path in ((), ("walls", "W1")):
        with pytest.raises(KeyError, match="none of primer, gloss"):
            resolver(path, "coat")


def test_what_leads_to_no_member_is_refused(tmp_path: Path) -> None:
    resolver = resolver_of(tmp_path, counting("joint", ("joints",), []))
    with pytest.raises(KeyError, match="walls.W1 leads to no member of joints"):
        resolver(("walls", "W1"), "joint")
    with pytest.raises(KeyError):
        resolver((), "unheard-of")


def missing(folder: Path, change: Any, path: tuple[str, ...], name: str) -> set[str]:
    return {dotted_path(p) for p in pipeline.make_resolver(case_of(folder, change).project).missing(path, name)}


EVERYTHING = {
    "climate.hot_air",
    "climate.cold_air",
    "site.latitude",
    "site.altitude",
    "elevations.E1.facing",
    "elevations.E1.color",
    "elevations.E1.reflecting_surface_near",
    "joints.J1.sealant",
    "joints.J1.panel_length",
    "joints.J1.thermal_expansion",
    "joints.J1.moisture_strain",
    "joints.J1.structural_closing",
    "joints.J1.structural_opening",
    "joints.J1.structural_shear",
    "joints.J1.tolerance",
    "joints.J1.install_low",
    "joints.J1.install_high",
}


def test_all_that_is_missing_is_told_at_once_that_of_needed_values_too(tmp_path: Path) -> None:
    # Fields that the schema fills by itself are never missing.
    fields = project_schema().fields
    filled = {f"joints.J1.{path[2]}" for path, made in fields.items() if path[0] == "joints" and made.default}
    assert missing(tmp_path, TWO, ("joints", "J1"), "joint-width") == EVERYTHING - filled


def test_what_is_given_is_not_missing(tmp_path: Path) -> None:
    change = TWO | {"climate": {"hot_air": "95 F", "cold_air": "0 F"}}
    change["joints"] = {"J1": {"elevation": "E1", "panel_length": "20 ft"}}
    told = missing(tmp_path, change, ("joints", "J1"), "joint-width")
    assert "site.latitude" in told
    assert not told & {"climate.hot_air", "climate.cold_air", "joints.J1.panel_length"}


def test_a_link_that_is_missing_is_told_alone(tmp_path: Path) -> None:
    change = {"elevations": {"E1": {}, "E2": {}}, "joints": {"J1": {}}}
    assert "joints.J1.elevation" in missing(tmp_path, change, ("joints", "J1"), "joint-width")
    assert missing(tmp_path, change, ("joints", "J1"), "face-heat") == {"joints.J1.elevation"}


def test_every_provider_reads_fields_that_there_are_and_needs_providers_that_there_are() -> None:
    schema = project_schema()
    for name in computing.names():
        provider = computing.find(name)
        for read in provider.reads:
            for section in provider.sections or ("",):
                assert reached(schema, bind_path(read, (section,) if section else ())), read
        assert set(provider.needs) <= set(computing.names())
        assert not provider.each or schema.node(provider.each).collection is not None


def reached(schema: Schema, path: tuple[str, ...]) -> Node:
    """The node a path leads to, through references; KeyError for one there is not."""
    node = schema.root
    for name in path:
        if node.field is not None:
            assert node.field.kind == "reference", path
            node = schema.node((node.field.to, "*"))
        child = node.below(name)
        if child is None:
            raise KeyError(name)
        node = child
    return node


def test_a_path_through_a_reference_waits_for_the_reference_alone(tmp_path: Path) -> None:
    provider = Provider(
        name="a",
        title="A",
        each=("elevations",),
        compute=lambda view, ask: view.color,
        reads=("elevations.*.color.emittance",),
    )
    resolver = Resolver(case_of(tmp_path, TWO).project, {"a": provider}.__getitem__)
    assert resolver.missing(("elevations", "E1"), "a") == [("elevations", "E1", "color")]
    colored = {"colors": {"C1": {"kind": "custom"}}, "elevations": {"E1": {"color": "C1"}}}
    resolver = Resolver(case_of(tmp_path, colored).project, {"a": provider}.__getitem__)
    assert resolver.missing(("elevations", "E1"), "a") == []


def test_no_two_calculations_wait_for_one_another() -> None:
    def below(name: str, seen: tuple[str, ...]) -> None:
        assert name not in seen, seen
        for need in computing.find(name).needs:
            below(need, (*seen, name))

    for name in computing.names():
        below(name, ())


def test_a_calculation_that_reads_what_there_is_not_is_told_with_the_nearest_name(tmp_path: Path) -> None:
    trial = Provider(
        name="trial", title="Trial", each=("joints",), compute=lambda joint, ask: 1, reads=("joints.*.tolerence",)
    )
    resolver = Resolver(case_of(tmp_path, {"joints": {"J1": {"width": "1 in"}}}).project, lambda name: trial)
    for call in (resolver, resolver.missing):
        with pytest.raises(Refused, match=r"^trial reads joints\.\*\.tolerence: 'tolerence' .*did you mean tolerance"):
            call(("joints", "J1"), "trial")
