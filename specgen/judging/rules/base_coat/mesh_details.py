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
    "Laps, detail mesh, diagonals, and back-wraps",
    remedy="Lap standard mesh a minimum of {mesh.lap}.",
    steps="mesh",
    documents="D07 D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "Standard mesh laps {found}; minimum {wanted}.",
    when="mesh_layer.kind = standard and mesh_layer.lap < limit",
    limit="mesh.lap",
)

RULE.clause(
    "b",
    STOP,
    "Detail mesh is omitted at aesthetic joints, where the base coat cracks.",
    when="wall.mesh.detail_at_aesthetic_joints = no",
    basis="practice",
    remedy="Add detail mesh at every aesthetic joint to the drawings and the checklist.",
)

RULE.clause(
    "c",
    STOP,
    "Diagonal mesh is omitted at opening corners, where the base coat cracks.",
    when="wall.mesh.diagonals = no",
    basis="guide_eifs_p24",
    remedy="Add diagonal mesh at every opening corner to the drawings and the checklist.",
)

RULE.clause(
    "d",
    STOP,
    "Board edges are not back-wrapped with mesh.",
    when="wall.mesh.back_wrap = no",
    basis="guide_eifs_p24",
    remedy="Back-wrap every exposed board edge, and add the back-wraps to the drawings and the checklist.",
)
