"""The measure of each finding: which rules share it, who takes it, and before which work."""

from collections.abc import Iterable, Iterator
from itertools import groupby
from typing import NamedTuple

from specgen.judging.owners import find_party
from specgen.judging.registry import load_rules
from specgen.model.finding import Finding
from specgen.model.project import Project
from specgen.model.source import Source

# The work that waits, by the step at which a procedure prints the finding; a step of its own name is not listed.
_BEFORE = {
    "site_conditions": "start of work",
    "equipment": "mockup",
    "old_coating": "boards",
    "substrate": "boards",
    "wrb": "boards",
    "flashings": "boards",
    "board_layout": "boards",
    "rasp": "base coat",
    "aesthetic_joints": "base coat",
    "heavy_mesh": "base coat",
    "mesh": "base coat",
    "second_pass": "smoothing",
    "smoothing_1": "smoothing",
    "smoothing_2": "smoothing",
    "protection": "spraying",
    "setup": "spraying",
    "release_primer": "gloss",
    "clean_equipment": "spraying",
    "acceptance": "sealant",
}
# What decides on a wall is known before any work, and what a color must bear before any of it is made.
_DECISION = "decision on the walls"
_SETTLED_BEFORE = {
    "ATT-05e": _DECISION,
    "ATT-05i": _DECISION,
    "ATT-05j": _DECISION,
    "HEA-01": _DECISION,
    "HEA-03": _DECISION,
    "HEA-05": _DECISION,
    "HEA": "mockup",
    "ACC-09": "mockup",  # which is sprayed first
    "PLN-02": "mockup",
    "WEA-09d": "mockup",
}
# An old wall is repaired and washed before the pull tests that decide on it.
_PREPARED = ("ATT-06b", "ATT-06c", "ATT-06h")
_PULLED = ("existing_coated", "existing_brick")
# Two sentences that begin with so many words alike are told as one.
_ALIKE = 4


class Measure(NamedTuple):
    """What is wrong at one place, and what is to be done about it by whom and when."""

    codes: tuple[str, ...]  # of the clauses that share it
    subjects: tuple[str, ...]  # names of the members, or `project`
    collection: str  # of the members; empty for several, or for the project
    message: str
    remedy: str
    by: str  # the role of the party
    before: str  # the work that waits for it
    sources: tuple[tuple[str, Source], ...]  # each with the code of its clause


def list_measures(project: Project, findings: Iterable[Finding]) -> tuple[Measure, ...]:
    """One for each place and remedy; clauses of a rule with the same place and remedy share theirs."""
    single = [one for finding in findings for one in _split(project, finding)]
    shared = groupby(single, key=lambda one: (one.codes[0][:6], one.subjects, one.remedy, one.by, one.before))
    return tuple(_join(list(group)) for _, group in shared)


def name_rules(codes: tuple[str, ...]) -> str:
    """`PLN-02a, b`: a rule with its clauses."""
    first, *others = codes
    return ", ".join((first, *(code[6:] for code in others)))


def name_groups(codes: Iterable[str]) -> str:
    """What the letters of some rules stand for: `ACC access, HEA heat and color`."""
    groups = {rule.code[:3]: rule.group for rule in load_rules()}
    return ", ".join(f"{letters} {groups[letters]}" for letters in sorted({code[:3] for code in codes}))


def work_waiting(code: str, step: str) -> str:
    """The work before which a measure is taken or a document is at hand: `boards`."""
    early = next((_SETTLED_BEFORE[part] for part in (code, code[:6], code[:3]) if part in _SETTLED_BEFORE), "")
    return early or _BEFORE.get(step) or step.replace("_", " ")


def _find_waiting(project: Project, finding: Finding, subjects: tuple[str, ...]) -> str:
    """The work that waits for a measure: the pull tests for what is repaired on an old wall."""
    kinds = [project.get(("walls", mark, "substrate", "kind")) for mark in subjects]
    if finding.code in _PREPARED and kinds and set(kinds) <= set(_PULLED):
        return "pull tests"
    return work_waiting(finding.code, finding.step)


def _split(project: Project, finding: Finding) -> Iterator[Measure]:
    for told in finding.told:
        lifted = f" Lifted by deviation {finding.lifted_by}." if finding.lifted_by else ""
        yield Measure(
            codes=(finding.code,),
            subjects=told.subjects,
            collection=_find_collection(finding),
            message=told.message + lifted,
            remedy=told.remedy,
            by=find_party(project, finding),
            before=_find_waiting(project, finding, told.subjects),
            sources=tuple((finding.code, source) for source in finding.basis.sources),
        )


def _join(measures: list[Measure]) -> Measure:
    first = measures[0]
    sources = {source: (code, source) for one in reversed(measures) for code, source in reversed(one.sources)}
    return first._replace(
        codes=tuple(code for one in measures for code in one.codes),
        message=_join_sentences([one.message for one in measures]),
        sources=tuple(reversed(sources.values())),
    )


def _join_sentences(sentences: list[str]) -> str:
    """Sentences that begin alike as one: `too loose for a prominent face and where light rakes the face`."""
    told = list(dict.fromkeys(sentences))
    words = [sentence.split(" ") for sentence in told]
    alike = next((at for at, row in enumerate(zip(*words, strict=False)) if len(set(row)) > 1), 0)
    if len(told) < 2 or alike < _ALIKE or any(". " in sentence for sentence in told):
        return " ".join(told)
    ends = [" ".join(row[alike:]).removesuffix(".") for row in words]
    return f"{' '.join(words[0][:alike])} {', '.join(ends[:-1])} and {ends[-1]}."


def _find_collection(finding: Finding) -> str:
    """The collection whose members a finding is about; empty for the project and for what stands within a member."""
    clauses = (clause for rule in load_rules() for clause in rule.clauses)
    each = next((clause.each for clause in clauses if clause.code == finding.code), ())
    return each[0] if len(each) == 1 else ""
