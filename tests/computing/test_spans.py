"""Every key of a calculation has a range that is told with both ends. The ranges are common practice, no source."""

import itertools
import math
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen import computing
from specgen.computing.arguments import find_span
from specgen.model.problem import Refused
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import convert, with_unit
from specgen.resolving.provider import Argument, Provider
from tests.computing._figures import worked

SAMPLES: dict[str, dict[str, str]] = {
    file.stem: yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader)[0]
    for file in sorted((Path(__file__).parent / "samples").glob("*.yaml"))
}
MEASURED = [
    pytest.param(provider, key, id=f"{provider.name}-{key.name}")
    for provider in map(computing.find, computing.names())
    if provider.direct is not None
    for key in provider.keys
    if not key.choices and key.dimension not in ("word", "yes_no")
]
# Keys of a form of their own, which bound their figures themselves; each is tried below.
OWN_FORM = {
    "done",
    "start",
    "shift",
    "days_off",
    "holidays",
    "guns",
    "lab1",
    "lab2",
    "cup",
    "to",
    "months",
    "time_zone",
}


def text_of(value: Any) -> str:
    if not isinstance(value, Quantity):
        return f"{float(value):.9f}"
    return f"{float(value.to(value.unit)):.12f} {value.unit.removesuffix(' apart')}"


def beyond(value: Any, way: int) -> str:
    """A text a little beyond an end."""
    if not isinstance(value, Quantity):
        return f"{float(value) + way:.9f}%" if value else str(way)
    return text_of(Quantity.of(value.to(value.unit) + way, value.unit))


def test_every_key_that_is_no_word_is_measured_or_of_its_own_form() -> None:
    keys = {(p.name, k.name) for p in map(computing.find, computing.names()) for k in p.keys if p.direct is not None}
    words = {k.values[1].name for k in MEASURED}  # type: ignore[union-attr]
    others = {
        key.name
        for provider in map(computing.find, computing.names())
        if provider.direct is not None
        for key in provider.keys
        if key.name not in words and not key.choices and key.dimension != "yes_no"
    }
    assert len(keys) > 100
    assert others == OWN_FORM


@pytest.mark.parametrize(("provider", "key"), MEASURED)
def test_a_key_has_a_range_with_its_default_in_it(provider: Provider, key: Argument) -> None:
    assert key.span, "name its range: span, within, or a field"
    least, most = find_span(key, provider)
    assert least < most
    for usual in {key.default, key.default_si} - {None, "", "air"}:
        assert least <= convert(key.field, with_unit(str(usual), key.bare)) <= most


@pytest.mark.parametrize(("provider", "key"), MEASURED)
@pytest.mark.parametrize("end", [0, 1])
def test_what_lies_beyond_is_refused_with_both_ends(provider: Provider, key: Argument, end: int) -> None:
    if provider.sections or provider.name in SAMPLES:
        given = SAMPLES[provider.name] | {key.name: beyond(find_span(key, provider)[end], (-1, 1)[end])}
        if key.dimension == "number":
            given[key.name] = given[key.name].removesuffix("%")
        with pytest.raises(Refused) as refused:
            worked(provider.name, given)
        told = [str(problem) for problem in refused.value.problems if problem.message.startswith(key.name)]
        if key.read is None:
            assert len(told) == 1
            assert "(it lies from " in told[0]
            assert " to " in told[0]


# A figure that is no slip of a digit but nonsense: its key, and the ends as a user reads them.
NOBODY_MEANS = [
    ("sealant-quantity", {"waste": "1e99"}, "waste is 1e99 % (it lies from 0 % to 100 %)"),
    ("backer-rod", {"width": "1e12 m"}, "width is 1e12 m (it lies from 0.00238 m to 0.152 m)"),
    ("coating-quantity", {"coats": "1e99"}, "coats is 1e99 (it lies from 1 to 10)"),
    ("coating-quantity", {"coats": "0"}, "coats is 0 (it lies from 1 to 10)"),
    ("joint-width", {"round_up": "-1/16 in"}, "round_up is -1/16 in (it lies from 1/64 in to 1 in)"),
    ("day-area", {"hours": "800"}, "hours is 800 h (it lies from 0 h to 24 h)"),
    ("hose-loss", {"flow": "1e99 scfm"}, "flow is 1e99 scfm (it lies from 0 scfm to 2000 scfm)"),
    ("air-demand", {"leak": "1e99"}, "leak is 1e99 % (it lies from 0 % to 100 %)"),
]


@pytest.mark.parametrize(("name", "more", "told"), NOBODY_MEANS, ids=[f"{row[0]} {row[1]}" for row in NOBODY_MEANS])
def test_a_figure_that_nobody_means_is_refused(name: str, more: dict[str, str], told: str) -> None:
    with pytest.raises(Refused) as refused:
        worked(name, SAMPLES[name] | more)
    assert told in [str(problem) for problem in refused.value.problems]


@pytest.mark.parametrize("name", sorted(SAMPLES))
def test_at_the_ends_of_its_ranges_a_sum_is_finite_or_refused(name: str) -> None:
    provider = computing.find(name)
    spans = {
        key.name: find_span(key, provider)
        for key in provider.keys
        if key.name in SAMPLES[name] and key.span and not key.choices and key.dimension not in ("word", "yes_no")
    }
    made = 0
    for ends in itertools.islice(itertools.product((0, 1), repeat=len(spans)), 0, 256):
        given = {key: text_of(span[end]) for (key, span), end in zip(spans.items(), ends, strict=True)}
        given |= {key: f"{text}%" for key, text in given.items() if " " not in text and _is_percent(provider, key)}
        try:
            working = worked(name, SAMPLES[name] | given)
        except Refused:
            continue
        made += 1
        assert all(math.isfinite(step.value) for step in working.steps)
    # The times of a cup are those of its formula, which are fewer than those of any cup.
    assert made or name.startswith("cup-")


def _is_percent(provider: Provider, name: str) -> bool:
    return any(key.name == name and key.dimension == "percent" for key in provider.keys)
