"""The base coat is free of faults and released before smoothing goes over it.

Why: smoothing is far too thin to fill what the base coat lacks. A fault under it prints through every coat above.

passes
    elevations: {E1: {wall: W1}}
    release: [{step: second_pass, elevation: E1, date: 2027-06-01, time: "15:00", defects: []}]
    log: [{step: smoothing_1, elevation: E1, date: 2027-06-02, started_at: 07:00}]
fails BAS-06a at log.0.step
    elevations: {E1: {wall: W1}}
    log: [{step: smoothing_1, elevation: E1, date: 2027-06-02, started_at: 07:00}]
    release: [{step: second_pass, elevation: E1, date: 2027-06-02, time: 09:00, defects: []}]
fails BAS-06b at release.0.defects
    release: [{step: second_pass, defects: [cat_face, mesh_visible]}]
"""

from specgen.judging.released_before import Point, is_told_unreleased
from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.typed_views import SiteRecordEntry
from specgen.recording.history import History

RULE = Rule(
    "BAS-06",
    "Release of the base coat",
    remedy="Mend the faults, rub the face with a stone, clean it, and look at it again before its release.",
    steps="second_pass smoothing_1",
    documents="D11 D12",
)

SMOOTHING = {"smoothing_1": "First smoothing coat", "smoothing_2": "Second smoothing coat"}
BASE_COAT = Point(of=("second_pass",), releases=("second_pass",), inspections=("second_pass",))


@RULE.test(
    "a",
    STOP,
    "{found} began before the base coat was released.",
    at="log.step",
    basis="practice",
    step="smoothing_1",
    remedy=(
        "Stop the smoothing. Look at the face under raking light, have it released, and mend what shows before the "
        "next coat."
    ),
)
def smoothed_before_release(log: SiteRecordEntry, history: History) -> Violations:
    """Smoothing went on before the base coat was released."""
    if log.step in SMOOTHING and is_told_unreleased(log, BASE_COAT, history):
        yield violation(SMOOTHING[log.step])


RULE.clause(
    "b",
    STOP,
    "The base coat was released with faults: {found}.",
    when="release.step = second_pass and release.defects is not empty",
    basis="practice",
    remedy=(
        "Withdraw the release. Mend the faults, rub the face with a stone, clean it, and release it when none is left."
    ),
)
