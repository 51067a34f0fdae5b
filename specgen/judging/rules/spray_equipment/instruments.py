"""Every instrument that the acceptance form names is on the list.

Why: a limit is only as good as the instrument it is read with. One that nobody has brought leaves its line
of the form empty on the day it counts.

passes
    package: {purpose: mockup_submittal}
    mockup: {criteria: [{name: gloss, instrument: GM-2}, {name: look, instrument: eye}]}
    instruments: {GM-2: {kind: gloss_meter}}
fails AIR-06a at mockup.criteria.0.instrument
    package: {purpose: mockup_submittal}
    mockup: {criteria: [{name: film, instrument: film gauge}]}
    instruments: {GM-2: {kind: gloss_meter}}
"""

from functools import partial

from specgen.judging.choice_groups import names, normalize
from specgen.judging.rule import CAUTION, Rule, Violations, is_draft, violation
from specgen.model.absence import any_of
from specgen.model.typed_views import AcceptanceCriterion, Description, Instrument

RULE = Rule(
    "AIR-06",
    "Instruments on hand and calibrated",
    remedy="List the instrument with its number and calibration date.",
    steps="equipment setup",
    documents="D11 D12",
)

SEEN = ("eye", "range samples")


@RULE.test(
    "a",
    CAUTION,
    "The acceptance form names an instrument that is not listed: {found}.",
    at="acceptance_criterion.instrument",
    basis="memory",
)
def not_on_the_list(criterion: AcceptanceCriterion, project: Description) -> Violations:
    """A line of the form is read with an instrument that is not listed."""
    if is_draft(project) or normalize(criterion.instrument) in SEEN:
        return
    if not any_of(project.instruments, partial(_named, criterion.instrument)):
        yield violation(criterion.instrument)


def _named(text: str, instrument: Instrument) -> bool:
    """Whether a text names an instrument by its mark or its kind."""
    return names(text, instrument.mark) or names(text, instrument.kind)
