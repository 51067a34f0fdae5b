"""The adhesive leaves the drainage path open.

Why: Water behind the board must reach an outlet; adhesive across its way holds it there.

passes
    {walls: {W1: {attachment: {method: adhesive_notched_trowel, ribbon_direction: vertical}, drainage: {kind: adhesive_ribbons, efficiency: 94, outlets: [base]}}}}
fails ATT-08a at walls.W1.attachment.method
    {walls: {W1: {drainage: {kind: adhesive_ribbons}}}}
fails ATT-08b at walls.W1.attachment.ribbon_direction
    {walls: {W1: {attachment: {method: adhesive_notched_trowel, ribbon_direction: horizontal}, drainage: {kind: adhesive_ribbons}}}}
fails ATT-08c at walls.W1.drainage.efficiency
    {walls: {W1: {drainage: {kind: adhesive_ribbons, efficiency: 89}}}}
fails ATT-08d at walls.W1.drainage.outlets
    {walls: {W1: {drainage: {kind: adhesive_ribbons, outlets: []}}}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import less
from ...rule import CAUTION, STOP, Found, Rule, found
from ...settling import every, some

RULE = Rule(
    "ATT-08",
    "Adhesive pattern and drainage",
    remedy="Vertical notched ribbons, grooved board or mat; weep at every base and head.",
    steps="boards",
    documents="D08 D11",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "The adhesive pattern {found} dams the drainage path: confirm.",
    needs="calc.drainage_due walls.*.drainage.kind walls.*.attachment.method",
    each="walls",
    basis="astm_e2273",
)
def dammed(wall: Any, resolve: Any) -> Iterator[Found]:
    """A full bed or dabs stand in the way of the water."""
    if every(
        lambda: wall.drainage.kind not in ("grooved_board", "drainage_mat"),
        lambda: wall.attachment.method in ("adhesive_full_bed", "adhesive_ribbon_and_dab"),
        lambda: some(lambda: wall.drainage.kind != "none", lambda: resolve("drainage-due").result),
    ):
        yield found(wall.attachment.method)


@RULE.clause(
    "b",
    CAUTION,
    "Horizontal ribbons dam the drainage path: confirm.",
    needs="calc.drainage_due walls.*.drainage.kind walls.*.attachment.ribbon_direction",
    each="walls",
    basis="astm_e2273",
)
def lying_ribbons(wall: Any, resolve: Any) -> Iterator[Found]:
    """Ribbons lie across the way of the water."""
    if every(
        lambda: wall.drainage.kind not in ("grooved_board", "drainage_mat"),
        lambda: wall.attachment.ribbon_direction == "horizontal",
        lambda: some(lambda: wall.drainage.kind != "none", lambda: resolve("drainage-due").result),
    ):
        yield found(wall.attachment.ribbon_direction)


@RULE.clause(
    "c",
    STOP,
    "Drainage efficiency is {found} %; at least {wanted} % is asked of a drained wall.",
    needs="walls.*.drainage.kind walls.*.drainage.efficiency",
    each="walls",
    limit="drainage.efficiency",
)
def drains_too_little(wall: Any, limit: Any) -> Iterator[Found]:
    """The tested share of water is below what is asked."""
    if every(lambda: wall.drainage.kind != "none", lambda: less(wall.drainage.efficiency, limit)):
        yield found(wall.drainage.efficiency, wanted=limit)


@RULE.clause(
    "d",
    CAUTION,
    "The drained wall has no outlet for its water: confirm.",
    needs="walls.*.drainage.kind walls.*.drainage.outlets",
    each="walls",
    basis="memory",
)
def no_outlet(wall: Any) -> Iterator[Found]:
    """The drained wall has nowhere to let the water out."""
    if every(lambda: wall.drainage.kind != "none", lambda: not wall.drainage.outlets):
        yield found()
