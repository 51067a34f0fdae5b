"""A scaffold is tied where slender, designed where sheeted, watched by a named person, and clear of power lines.

Why: a slender scaffold tips and a sheeted one sails. The person who may stop the work must have a name
before the first frame is set.

passes
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
    site: {surroundings: [power_lines], power_line_distance: 25 ft}
    people: {P1: {role: competent_person}}
    elevations: {E1: {wall: W1}}
    access:
      A1: {kind: frame_scaffold, elevation: E1, height: 40 ft, base: 5 ft, tie_plan: A31, sheeted_design: A32}
    shade: {T1: {kind: tent, elevation: E1}}
    attachments: {A31: {kind: drawing}, A32: {kind: calculation, signed: yes}}
fails ACC-06a at access.A1.height
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
    access: {A1: {kind: frame_scaffold, height: 40 ft, base: 5 ft}}
fails ACC-06c at access.A1.sheeted_design
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
    elevations: {E1: {wall: W1}}
    access: {A1: {kind: frame_scaffold, elevation: E1}}
    shade: {T1: {kind: tent, elevation: E1}}
fails ACC-06e at people.*.role
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
    people: {P1: {role: foreman}}
fails ACC-06g at site.power_line_distance
    safety: {rules: us_osha}
    site: {power_line_distance: 6 ft}
fails ACC-06h at site.power_line_distance
    safety: {rules: other}
    site: {power_line_distance: 6 ft}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.choice_groups import SCAFFOLDS
from specgen.judging.rule import CAUTION, STOP, Found, Rule, draft, found
from specgen.judging.three_valued import every, shaded, signed, somebody
from specgen.quantities.comparison import less, more

RULE = Rule(
    "ACC-06",
    "Scaffold tied, designed for its sheets, and watched",
    remedy="Tie plan, engineer's wind design for sheets, named person, distance.",
    steps="site_conditions",
    documents="D15",
    manual=__doc__,
)

SHEETED = ("tent", "shade_cloth")


@RULE.clause(
    "a",
    STOP,
    "The scaffold is {found} high, more than four times its base ({wanted}), and has no tie plan.",
    each="access",
    lift="never",
    needs="safety.rules package.purpose access.*.base access.*.tie_plan access.*.height",
    limit="access.height_to_base",
)
def untied(access: Any, project: Any, limit: Any) -> Iterator[Found]:
    """A slender scaffold has no tie plan, under federal rules."""
    if _untied(access, project, "us_osha", limit):
        yield found(access.height, wanted=limit * access.base)


@RULE.clause(
    "b",
    CAUTION,
    "The scaffold is {found} high, more than four times its base ({wanted}), and has no tie plan: local law "
    "governs, confirm.",
    each="access",
    needs="safety.rules package.purpose access.*.base access.*.tie_plan access.*.height",
    limit="access.height_to_base",
)
def untied_elsewhere(access: Any, project: Any, limit: Any) -> Iterator[Found]:
    """A slender scaffold has no tie plan, where local law governs."""
    if _untied(access, project, "other", limit):
        yield found(access.height, wanted=limit * access.base)


@RULE.clause(
    "c",
    STOP,
    "Sheets on a scaffold catch wind and no signed design is given.",
    each="access",
    lift="never",
    needs="safety.rules package.purpose access.*.kind shade.*.kind attachments.*.signed access.*.sheeted_design",
    basis="osha_scaffold_memory",
)
def sails(access: Any, project: Any) -> Iterator[Found]:
    """A sheeted scaffold has no signed design, under federal rules."""
    if _sails(access, project, "us_osha"):
        yield found()


@RULE.clause(
    "d",
    CAUTION,
    "Sheets on a scaffold catch wind and no signed design is given: local law governs, confirm.",
    each="access",
    needs="safety.rules package.purpose access.*.kind shade.*.kind attachments.*.signed access.*.sheeted_design",
    basis="osha_scaffold_memory",
)
def sails_elsewhere(access: Any, project: Any) -> Iterator[Found]:
    """A sheeted scaffold has no signed design, where local law governs."""
    if _sails(access, project, "other"):
        yield found()


@RULE.clause(
    "e",
    STOP,
    "No competent person for the scaffold is named.",
    lift="never",
    needs="safety.rules package.purpose people.*.role",
    basis="osha_scaffold_memory",
)
def unwatched(project: Any) -> Iterator[Found]:
    """Nobody is named to watch the scaffold, under federal rules."""
    if _unwatched(project, "us_osha"):
        yield found()


@RULE.clause(
    "f",
    CAUTION,
    "No competent person for the scaffold is named: local law governs, confirm.",
    needs="safety.rules package.purpose people.*.role",
    basis="osha_scaffold_memory",
)
def unwatched_elsewhere(project: Any) -> Iterator[Found]:
    """Nobody is named to watch the scaffold, where local law governs."""
    if _unwatched(project, "other"):
        yield found()


@RULE.clause(
    "g",
    STOP,
    "Power lines are {found} away; {wanted} is the least.",
    lift="never",
    needs="safety.rules site.power_line_distance",
    limit="access.power_lines",
)
def near_power(project: Any, limit: Any) -> Iterator[Found]:
    """Power lines are too near, under federal rules."""
    if every(lambda: less(project.site.power_line_distance, limit), lambda: project.safety.rules == "us_osha"):
        yield found(project.site.power_line_distance, wanted=limit)


@RULE.clause(
    "h",
    CAUTION,
    "Power lines are {found} away; {wanted} is the least: local law governs, confirm.",
    needs="safety.rules site.power_line_distance",
    limit="access.power_lines",
)
def near_power_elsewhere(project: Any, limit: Any) -> Iterator[Found]:
    """Power lines are too near, where local law governs."""
    if every(lambda: less(project.site.power_line_distance, limit), lambda: project.safety.rules == "other"):
        yield found(project.site.power_line_distance, wanted=limit)


def _untied(access: Any, project: Any, rules: str, limit: Any) -> bool:
    """Whether these rules apply and a scaffold higher than so many times its base has no tie plan."""
    if draft(project) or access.get("tie_plan") is not None:
        return False
    return every(lambda: more(access.height, limit * access.base), lambda: project.safety.rules == rules)


def _sails(access: Any, project: Any, rules: str) -> bool:
    """Whether these rules apply and a sheeted scaffold has no signed design for the wind on its sheets."""
    design = access.get("sheeted_design")
    return not draft(project) and every(
        lambda: access.kind in SCAFFOLDS,
        lambda: shaded(access, project, SHEETED),
        lambda: design is None or not signed(design),
        lambda: project.safety.rules == rules,
    )


def _unwatched(project: Any, rules: str) -> bool:
    """Whether these rules apply and nobody is named as the competent person."""
    return not draft(project) and every(
        lambda: not somebody(project, "competent_person"), lambda: project.safety.rules == rules
    )
