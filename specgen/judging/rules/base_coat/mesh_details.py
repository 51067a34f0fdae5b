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

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "BAS-03",
    "Laps, detail mesh, diagonals and back-wraps",
    remedy="Add them to drawing and check list.",
    steps="mesh",
    documents="D07 D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "Standard mesh laps {found}; {wanted} is the least.",
    when="mesh_layer.kind = standard and mesh_layer.lap < limit",
    limit="mesh.lap",
)

RULE.clause(
    "b",
    STOP,
    "Detail mesh is left out at the aesthetic joints.",
    when="wall.mesh.detail_at_aesthetic_joints = no",
    basis="practice",
)

RULE.clause(
    "c",
    STOP,
    "Diagonal mesh is left out at opening corners.",
    when="wall.mesh.diagonals = no",
    basis="guide_eifs_p24",
)

RULE.clause(
    "d",
    STOP,
    "Edges are not wrapped with mesh.",
    when="wall.mesh.back_wrap = no",
    basis="guide_eifs_p24",
)
