"""What a detail of the mockup stands for on the work: the marks, sizes, and places that the project gives."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.documents.color_hold import tell_hold
from specgen.documents.composing import letter_here
from specgen.documents.context import DocumentContext
from specgen.documents.layouts import tell_length
from specgen.documents.mockup import (
    find_full_panel,
    list_built_faces,
    list_built_joints,
    list_mesh_zones,
    list_mockup_faces,
)
from specgen.model.field import Path

_REPAIRS = {
    "recoat_to_break": "Repairs: full panels recoated to the next corner or joint",
    "spot": "Repairs: spots recoated",
}
# What a detail stands for where the project places none of it yet.
_AT_LARGE = {"outside_corner": "Outside corners", "opening": "Openings", "grade_end": "Terminations above grade"}
# What lies at the foot of an elevation, by whether it is soil.
GROUND = {True: "soil", False: "paving", None: "grade"}
_CORNERS = ("left_end", "right_end")


def name_represented(context: DocumentContext, detail: str) -> list[Any]:
    """The places of the work that a detail stands for, as a cell; empty where the project names none."""
    name = _NAMED.get(detail)
    parts: list[Any] = []
    for part in name(context) if name else ():
        parts += [*(["; "] if parts else []), *part]
    return parts or [_AT_LARGE[detail]] if detail in _AT_LARGE else parts


def _members(context: DocumentContext, *path: str) -> tuple[str, ...]:
    return context.project.members.get(path, ())


def _given(context: DocumentContext, *path: str) -> bool:
    return context.project.is_given(path)


def _sizes(context: DocumentContext, path: Path, first: str, second: str, between: str = " by ") -> list[Any]:
    """Two sizes of a member; empty where one is absent."""
    paths = ((*path, first), (*path, second))
    if not all(context.project.get(one) is not None for one in paths):
        return []
    return [context.display(paths[0]), between, context.display(paths[1])]


def _name_face(context: DocumentContext, mark: str) -> str:
    """An elevation by its mark and, where it has one, its name."""
    name = context.project.get(("elevations", mark, "name"))
    return f"{mark} {name}" if name else mark


def _panel(context: DocumentContext) -> Iterator[list[Any]]:
    sizes = _sizes(context, ("panel_limits",), "max_width", "max_height", " wide by ")
    if sizes:
        area = letter_here(context.display(("panel_limits", "max_area")))
        yield ["Panels up to ", *sizes, " high, maximum ", area]
        yield from _largest_panel(context)


def _largest_panel(context: DocumentContext) -> Iterator[list[Any]]:
    """The largest whole panel of the faces shown, where their lines are given."""
    largest = find_full_panel(context)
    if largest is not None:
        wide, high = (tell_length(context, side) for side in (largest.width, largest.height))
        yield [f"as {largest.mark}, ", wide, " by ", high]


def _aesthetic_joint(context: DocumentContext) -> Iterator[list[Any]]:
    if _given(context, "aesthetic_joint", "profile"):
        sizes = _sizes(context, ("aesthetic_joint",), "width", "depth", " wide by ")
        yield [context.display(("aesthetic_joint", "profile")), *([", ", *sizes, " deep"] if sizes else [])]


def _corners(context: DocumentContext) -> Iterator[list[Any]]:
    """The outside corners, each with the elevations that meet there, named once."""
    seen = set()
    for mark in list_mockup_faces(context):
        for end in _CORNERS:
            if context.project.get(("elevations", mark, end)) == "outside_corner":
                meets = context.project.get(("elevations", mark, end.replace("end", "meets")))
                pair = frozenset((mark, str(getattr(meets, "mark", meets or mark))))
                if pair not in seen:
                    seen.add(pair)
                    yield ["Corner of " + " and ".join(_name_face(context, one) for one in sorted(pair))]


def _openings(having: str) -> Callable[[DocumentContext], Iterator[list[Any]]]:
    """The marks of the openings by elevation; with a name, those that have this flashing."""

    def name(context: DocumentContext) -> Iterator[list[Any]]:
        for mark in list_mockup_faces(context):
            path = ("elevations", mark, "openings")
            shown = [
                opening
                for opening in _members(context, *path)
                if not having or context.project.get((*path, opening, having)) is True
            ]
            if shown:
                yield [f"{_name_face(context, mark)}: {', '.join(shown)}"]

    return name


def list_joint_sizes(context: DocumentContext) -> list[list[Any]]:
    """Each joint that the mockup shows with its width and depth; those of one size together."""
    sizes: dict[str, tuple[list[str], list[Any]]] = {}
    for mark in list_built_joints(context):
        size = _sizes(context, ("joints", mark), "width", "depth")
        sizes.setdefault("".join(map(str, size)), ([], size))[0].append(mark)
    return [[", ".join(marks), *([", ", *size] if size else [])] for marks, size in sizes.values()]


def _grade(context: DocumentContext) -> Iterator[list[Any]]:
    for mark in list_built_faces(context):
        path = ("elevations", mark)
        if _given(context, *path, "grade_clearance"):
            over = GROUND[context.project.get((*path, "grade_is_soil"))]
            yield [f"{_name_face(context, mark)}: ", context.display((*path, "grade_clearance")), f" above {over}"]


def _mesh(context: DocumentContext) -> Iterator[list[Any]]:
    """The zones of mesh by wall; walls of the same mesh together."""
    for kinds, walls in list_mesh_zones(context).items():
        yield [f"{', '.join(walls)}: {', '.join(kinds)}"]


def _colors(context: DocumentContext) -> Iterator[list[Any]]:
    for mark in _members(context, "colors"):
        reference = ("colors", mark, "reference")
        told = [", ", context.display(reference)] if _given(context, *reference) else []
        hold = tell_hold(context, mark)
        yield [mark, *told, *([f"; {hold}"] if hold else [])]


def _repairs(context: DocumentContext) -> Iterator[list[Any]]:
    method = context.project.get(("finish", "repair_method"))
    if method in _REPAIRS:
        yield [_REPAIRS[method]]


def _test_area(context: DocumentContext) -> Iterator[list[Any]]:
    """Where the tests that destroy are made, and the room they take."""
    tape, pull = (context.standards.criteria[f"adhesion_{name}"].readings for name in ("tape", "pull"))
    room = f"room for {tape} tape tests, {pull} pull-offs, coupons"
    yield [f"Beside the face to be kept, on the same substrate, with every layer and coat; {room}"]


_NAMED: dict[str, Callable[[DocumentContext], Iterator[list[Any]]]] = {
    "full_panel": _panel,
    "joint_crossing": _aesthetic_joint,
    "outside_corner": _corners,
    "opening": _openings(""),
    "sill_pan": _openings("sill_pan"),
    "head_flashing": _openings("head_flashing"),
    "sealant_joint": lambda context: iter(list_joint_sizes(context)),
    "grade_end": _grade,
    "each_mesh_zone": _mesh,
    "each_color": _colors,
    "day_stop": lambda context: iter([["Joints and corners at which spraying stops"]]),
    "recoat_patch": _repairs,
    "test_area": _test_area,
    "build_up_steps": lambda context: iter([["All layers and coats, in order"]]),
}
