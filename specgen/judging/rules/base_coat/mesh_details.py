"""Standard mesh laps, and detail mesh, diagonals and wrapped edges are all there.

Why: the lamina cracks where stress gathers: at aesthetic joints, at opening corners, and at edges
that are not wrapped. A short lap is a seam in its reinforcement.

passes
    walls:
      W1:
        mesh:
          layers: [{kind: standard, lap: 2-1/2 in}]
          detail_at_aesthetic_joints: yes
          diagonals: yes
          back_wrap: yes
fails BAS-03a at walls.W1.mesh.layers.0.lap
    walls: {W1: {mesh: {layers: [{kind: standard, lap: 2 in}]}}}
fails BAS-03b at walls.W1.mesh.detail_at_aesthetic_joints
    walls: {W1: {mesh: {detail_at_aesthetic_joints: no}}}
fails BAS-03c at walls.W1.mesh.diagonals
    walls: {W1: {mesh: {diagonals: no}}}
fails BAS-03d at walls.W1.mesh.back_wrap
    walls: {W1: {mesh: {back_wrap: no}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.quantities.comparison import less

RULE = Rule(
    "BAS-03",
    "Laps, detail mesh, diagonals and back-wraps",
    remedy="Add them to drawing and check list.",
    steps="mesh",
    documents="D07 D08 D11",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Standard mesh laps {found}; {wanted} is the least.",
    each="walls.*.mesh.layers",
    needs="walls.*.mesh.layers.*.kind walls.*.mesh.layers.*.lap",
    limit="mesh.lap",
)
def short_lap(layer: Any, limit: Any) -> Iterator[Found]:
    """Standard mesh laps less than it must."""
    if layer.kind == "standard" and less(layer.lap, limit):
        yield found(layer.lap, wanted=limit)


@RULE.clause(
    "b",
    STOP,
    "Detail mesh is left out at the aesthetic joints.",
    each="walls",
    needs="walls.*.mesh.detail_at_aesthetic_joints",
    basis="practice",
)
def no_detail_mesh(wall: Any) -> Iterator[Found]:
    """There is no detail mesh at the aesthetic joints."""
    if not wall.mesh.detail_at_aesthetic_joints:
        yield found(wall.mesh.detail_at_aesthetic_joints)


@RULE.clause(
    "c",
    STOP,
    "Diagonal mesh is left out at opening corners.",
    each="walls",
    needs="walls.*.mesh.diagonals",
    basis="guide_eifs_p24",
)
def no_diagonals(wall: Any) -> Iterator[Found]:
    """There is no diagonal mesh at opening corners."""
    if not wall.mesh.diagonals:
        yield found(wall.mesh.diagonals)


@RULE.clause(
    "d",
    STOP,
    "Edges are not wrapped with mesh.",
    each="walls",
    needs="walls.*.mesh.back_wrap",
    basis="guide_eifs_p24",
)
def edges_bare(wall: Any) -> Iterator[Found]:
    """Mesh is not carried round the edges of the board."""
    if not wall.mesh.back_wrap:
        yield found(wall.mesh.back_wrap)
