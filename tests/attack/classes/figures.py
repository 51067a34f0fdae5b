"""Numbers, quantities and dates: the grammar of fields and of `calc`, mutated."""

import random

import yaml

from specgen import computing
from tests.attack.attempt import Attempt
from tests.attack.classes._projects import choose_field, dump, set_field, small
from tests.support import ROOT

KINDS = ("quantity", "integer", "number", "percent", "date", "time", "bearing")
UNITS = [
    "in",
    "ft",
    "mm",
    "m",
    "mil",
    "um",
    "F",
    "C",
    "psi",
    "kPa",
    "%",
    "h",
    "min",
    "sq ft",
    "m2",
    "gal",
    "L",
    "deg",
    '"',
    "'",
]
PIECES = [
    *"0123456789.,/-+eE'\" ½¾⅜%°x*_:",
    "1e9",
    "e99999999",
    "00",
    "1/2",
    "--",
    "1,500",
    "nan",
    "inf",
    "0x1F",
    "²",
    "−",
    "٣",
    "１",
]
# Slips whose figure nobody can mean; each must be refused where a length is asked for.
SLIPS = [
    "11/2 in",
    "5'-61/2\"",
    "5'-66\"",
    "1'500 in",
    "1 3/2 in",
    "1½5 in",
    "½5 in",
    "12 1/2e1 in",
    "1e99999999 in",
    "1/0 in",
    "3_6 in",
]
SAMPLES = {
    file.stem: yaml.safe_load(file.read_text("utf-8")) for file in (ROOT / "tests/computing/samples").glob("*.yaml")
}


def draw(chance: random.Random) -> Attempt:
    """A figure of a field, or of a key of a calculation."""
    return _draw_key(chance) if chance.random() < 0.5 else _draw_field(chance)


def _draw_field(chance: random.Random) -> Attempt:
    data, slip = small(), chance.random() < 0.15
    field = choose_field(chance, "quantity" if slip else chance.choice(KINDS))
    slip = slip and field.unit_ip == "in" and field.kind != "list"
    text = chance.choice(SLIPS) if slip else _mutate(chance, field.example.strip("[]"))
    set_field(data, field, text)
    about = f"{'.'.join(field.path)}: {text!a}"
    return Attempt(
        about[:120], ("check", "project.yaml"), {"project.yaml": dump(data)}, expect="refused" if slip else ""
    )


def _draw_key(chance: random.Random) -> Attempt:
    name = chance.choice(sorted(SAMPLES))
    pairs = {key: str(value) for key, value in chance.choice(SAMPLES[name]).items()}
    keys = [key.name for key in computing.find(name).keys]
    key = chance.choice([*keys, *pairs])
    pairs[key] = _mutate(chance, pairs.get(key, "1"))
    words = tuple(f"{key}={value}" for key, value in pairs.items())
    shown = chance.choice([(), ("--format", "json")])
    return Attempt(f"calc {name} {key}={pairs[key]!a}"[:120], ("calc", name, *words, *shown))


def _mutate(chance: random.Random, text: str) -> str:
    """A text with a few pieces put in, taken out or repeated, or made of pieces alone."""
    text = text if chance.random() < 0.8 else "".join(chance.choices(PIECES, k=chance.randint(1, 6)))
    for _ in range(chance.randint(1, 3)):
        at = chance.randint(0, len(text))
        kind = chance.choice(["in", "in", "out", "unit", "twice", "large"])
        if kind == "in":
            text = text[:at] + chance.choice(PIECES) + text[at:]
        elif kind == "out":
            text = text[:at] + text[at + 1 :]
        elif kind == "unit":
            text = f"{text} {chance.choice(UNITS)}"
        elif kind == "twice":
            text = text[:at] + text[at : at + 2] * chance.choice([2, 3, 400]) + text[at:]
        else:
            text = text.replace(chance.choice("123456789"), chance.choice(["9" * 30, "1e15", "0.000000001", "-5", "0"]))
    return text.replace("\0", "")
