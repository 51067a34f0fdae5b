"""A face gets one batch, and primer and gloss of it are kept back for recoating a panel.

Why: no second batch of a flake finish looks like the first. A panel damaged later is recoated from what
was kept, or it shows for good.

passes
    primer: {reserve: 10}
    gloss: {reserve: 10}
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, elevation: E1, batch: B41}, {step: gloss, elevation: E1, batch: B42, boxed_batches: yes}]
fails FIN-09a at log.1.batch
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, elevation: E1, batch: B41}, {step: gloss, elevation: E1, batch: B42, boxed_batches: no}]
fails FIN-09b at primer.reserve
    primer: {reserve: 5}
fails FIN-09c at gloss.reserve
    gloss: {reserve: 0}
"""

from specgen.judging.choice_groups import SPRAYED, normalize
from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.judging.site_work import entry_of
from specgen.model.absence import if_given, read_all
from specgen.model.typed_views import SiteRecordEntry
from specgen.recording.history import History

RULE = Rule(
    "FIN-09",
    "One batch per face, with reserve",
    remedy="Use one boxed batch for a face, and keep a reserve of it for recoating.",
    steps="primer gloss",
    documents="D13",
)


@RULE.test(
    "a",
    CAUTION,
    "Batch {found} was opened on a face begun with batch {wanted}, and the two were not boxed.",
    at="log.batch",
    basis="memory",
    remedy=(
        "Stop at the next corner or joint. View both batches on the wall from the viewing distance; where they differ, "
        "recoat the whole face from one boxed batch, after a repeat of the mockup with it."
    ),
    why="no second batch of a flake finish looks like the first, and where two meet within a face a line shows",
)
def second_batch(log: SiteRecordEntry, history: History) -> Violations:
    """A pail is of another batch than the pail before it at the same place, and the two were not boxed."""
    if log.step not in SPRAYED:
        return
    batch, face = read_all(lambda: log.batch, lambda: log.elevation)
    if len(history.list_values("batch", face.mark, log.step, if_given(lambda: log.area) or "")) < 2:
        return
    before = history.find_previous_with("batch", entry_of(log))
    if before is not None and normalize(before.values["batch"]) != normalize(batch) and not log.boxed_batches:
        yield violation(batch, wanted=before.values["batch"])


RULE.clause(
    "b",
    CAUTION,
    "The primer reserve is {found} %; {wanted} % is usual.",
    when="primer.reserve < limit",
    limit="coat.reserve",
    step="primer",
    remedy="Order {coat.reserve} more primer of the same batch, and keep it for recoating a panel.",
)

RULE.clause(
    "c",
    CAUTION,
    "The gloss reserve is {found} %; {wanted} % is usual.",
    when="gloss.reserve < limit",
    limit="coat.reserve",
    step="gloss",
    remedy="Order {coat.reserve} more gloss of the same batch, and keep it for recoating a panel.",
)
