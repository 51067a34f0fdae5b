"""Heavy mesh goes on first, butted and dried, and standard mesh is embedded over it.

Why: heavy mesh is too thick to lap, and a lap of it stands out as a ridge no later coat hides. The
standard mesh over it ties the butted edges together.

passes
    walls:
      W1:
        mesh:
          layers:
            - {kind: high_impact, order: 1, edge: butted, dry_hours: 24}
            - {kind: standard, order: 2}
fails BAS-02a at walls.W1.mesh.layers.1.order
    walls: {W1: {mesh: {layers: [{kind: standard, order: 1}, {kind: high_impact, order: 2}]}}}
fails BAS-02b at walls.W1.mesh.layers.0.dry_hours
    walls: {W1: {mesh: {layers: [{kind: high_impact, dry_hours: 12}]}}}
fails BAS-02c at walls.W1.mesh.layers.0.edge
    walls: {W1: {mesh: {layers: [{kind: high_impact, edge: lapped}]}}}
fails BAS-02d at walls.W1.mesh.layers.0.order
    walls: {W1: {mesh: {layers: [{kind: high_impact, order: 1}]}}}
"""

from functools import partial

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import all_known, any_known
from specgen.model.typed_views import Description, MeshLayer
from specgen.quantities.comparison import more

RULE = Rule(
    "BAS-02",
    "Heavy mesh under standard mesh",
    remedy="Install heavy mesh as the first layer.",
    steps="heavy_mesh mesh",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "Heavy mesh is layer {found}; required as layer {wanted}.",
    when="mesh_layer.kind = high_impact and mesh_layer.order != limit",
    limit="mesh.heavy_order",
)

RULE.clause(
    "b",
    STOP,
    "Heavy mesh dries for {found} h before the next layer; minimum {wanted} h.",
    when="mesh_layer.kind = high_impact and mesh_layer.dry_hours < limit",
    limit="mesh.heavy_dry",
    remedy="Let heavy mesh dry for a minimum of {mesh.heavy_dry} before the next layer.",
    why="the next layer shifts a mesh that is still wet below it",
)

RULE.clause(
    "c",
    STOP,
    "Heavy mesh edges are {found}; heavy mesh is too thick to lap, and a lap shows as a ridge.",
    when="mesh_layer.kind = high_impact and mesh_layer.edge != butted",
    wanted="butted",
    basis="trade_impact",
    remedy="Butt the edges of heavy mesh.",
)


@RULE.test(
    "d",
    STOP,
    "No standard mesh lies over the heavy mesh, so its butted edges crack.",
    at="mesh_layer.order",
    basis="practice",
    remedy="Embed standard mesh over the heavy mesh.",
    why="butted edges crack where no mesh runs over them",
)
def heavy_mesh_bare(layer: MeshLayer, project: Description) -> Violations:
    """No layer of standard mesh lies over heavy mesh."""
    if layer.kind != "high_impact":
        return
    layers = project.walls[layer.path[1]].mesh.layers
    if not any_known(*(partial(_standard_over, other, layer) for other in layers)):
        yield violation(layer.kind)


def _standard_over(other: MeshLayer, layer: MeshLayer) -> bool:
    """Whether a layer is standard mesh that goes on after the given one."""
    return all_known(lambda: other.kind == "standard", lambda: more(other.order, layer.order))
