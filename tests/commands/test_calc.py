"""`calc`: one sum as data, what it refuses, all of a name in a project."""

import json
import re
import shlex
from pathlib import Path
from typing import Any

import pytest

from specgen import computing
from tests.running import run_main
from tests.support import ROOT, SMALL, merged, written


def test_a_sum_as_data_has_its_keys_and_a_bare_result(capsys: Any) -> None:
    keys = (
        "length=30ft",
        "alpha=3.6e-6/F",
        "movement_class=50",
        "tolerance=1/8in",
        "hot=105F",
        "cold=-15F",
        "install_low=60F",
        "install_high=75F",
        "moisture_strain=0.0002",
        "structural_closing=1/4in",
        "structural_opening=1/4in",
    )
    done = run_main(capsys, "calc", "joint-width", *keys, "--format", "json")
    made = json.loads(done.out)
    assert done.code == 0
    assert set(made) == {"name", "given", "result", "unit", "steps", "source", "notes"}
    assert set(made["steps"][0]) == {"symbol", "name", "expression", "substitution", "value", "unit"}
    # 0.8857 in before rounding: Cornell University, ARCH 262, fall 2007; the next sixteenth is 15/16.
    assert (made["result"], made["unit"]) == (0.9375, "in")
    metric = json.loads(run_main(capsys, "calc", "joint-width", *keys, "unit=mm", "--format", "json").out)
    assert metric["result"] == pytest.approx(0.9375 * 25.4)


@pytest.mark.parametrize(
    "wrong", [("length=30ft", "alpha"), ("alpha=steep",), ("movement_class=60",), ("length=30psi",), ("unit=psi",)]
)
def test_a_sum_refuses_what_it_cannot_use(wrong: tuple[str, ...], capsys: Any) -> None:
    good = {
        "length": "30ft",
        "alpha": "4e-6/F",
        "movement_class": "50",
        "tolerance": "0in",
        "temperature_range": "100F",
    }
    given = good | {w.partition("=")[0]: w.partition("=")[2] for w in wrong if "=" in w}
    words = [f"{key}={value}" for key, value in given.items()] + [w for w in wrong if "=" not in w]
    done = run_main(capsys, "calc", "joint-width", *words)
    assert (done.code, done.out) == (2, "")
    assert done.err.startswith("specgen: ")


def test_all_sums_of_a_project_are_told_and_what_they_wait_for(tmp_path: Path, capsys: Any) -> None:
    words = ("calc", "joint-width", "--from", str(ROOT / "project_examples" / "clean" / "project.yaml"))
    done = run_main(capsys, *words, "--working")
    assert done.code == 0
    assert done.out.count("result ") == len(re.findall(r"(?m)^J\d+: ", done.out))
    assert done.out.startswith(run_main(capsys, *words).out)
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "1 in"}}}))
    told = run_main(capsys, "calc", "joint-width", "--from", str(file)).out
    assert told.startswith("Sealant joint width\n\nJ1: pending ")
    assert "joints.J1.elevation" in told


def test_an_answer_of_the_code_is_told_with_its_reason_and_as_data(tmp_path: Path, capsys: Any) -> None:
    code = {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]}
    file = written(tmp_path, merged(SMALL, {"code": code, "walls": {"W1": {"framing": {"kind": "wood"}}}}))
    words = ("calc", "drainage-due", "--from", str(file))
    # IBC 1407 asks for drainage on framed walls of type V only.
    why = "construction type IIB is not type V"
    told = run_main(capsys, *words).out
    assert told.split("\n")[2:4] == ["wall  answer  why", f"W1    no      {why}"]
    assert "source: International Building Code" in run_main(capsys, *words, "--working").out
    row = {"subject": "W1", "name": "drainage-due", "result": False, "why": why}
    assert json.loads(run_main(capsys, *words, "--format", "json").out) == {"name": "drainage-due", "instances": [row]}


def test_figures_that_cannot_be_are_told_beside_the_member_they_belong_to(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, SMALL | {"primer": {"cup": "zahn_4", "cup_least": "15 s", "cup_most": "30 s"}})
    words = ("calc", "cup-viscosity", "--from", str(file))
    problem = "15 s is outside the range of the cup Zahn No. 4 (its formula holds from 20 to 80 s)"
    told = run_main(capsys, *words).out.splitlines()
    assert told[2].startswith("section  viscosity at the shortest time")
    assert (told[3][:5], told[-1]) == ("gloss", f"primer: {problem}")
    row = {"subject": "primer", "name": "cup-viscosity", "result": None, "problems": [problem]}
    assert json.loads(run_main(capsys, *words, "--format", "json").out)["instances"][0] == row


@pytest.mark.parametrize("name", ["elevation-area", "coating-quantity"])
def test_no_sum_is_made_of_an_opening_larger_than_its_wall(name: str, tmp_path: Path, capsys: Any) -> None:
    face = {"width": "9 ft", "height": "9 ft", "openings": {"A": {"width": "6 ft", "height": "10 ft"}}}
    file = written(tmp_path, SMALL | {"elevations": {"E1": face}})
    told = run_main(capsys, "calc", name, "--from", str(file))
    assert (told.code, told.out) == (2, "")
    assert told.err.count("\n") == 1
    assert "elevations.E1.openings.A: the opening is 10 ft high, the wall is 9 ft high" in told.err


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("air-demand", "Air demand of the spray guns\n\nproject: pending guns\n"),
        (
            "wall-layers",
            "Wall R-value and winter vapor\n\nW1: pending walls.W1.layers, climate.months, gloss.permeance\n",
        ),
    ],
)
def test_a_sum_waits_for_a_whole_section_where_it_has_no_member(
    name: str, told: str, tmp_path: Path, capsys: Any
) -> None:
    assert run_main(capsys, "calc", name, "--from", str(written(tmp_path, SMALL))) == (0, told, "")


@pytest.mark.parametrize("name", ["bond-demand", "bond-pulls"])
def test_a_sum_that_a_member_has_not_says_so(name: str, tmp_path: Path, capsys: Any) -> None:
    words = ("calc", name, "--from", str(written(tmp_path, SMALL | {"joints": {}})))
    done = run_main(capsys, *words)
    assert (done.code, done.out.splitlines()[2:], done.err) == (0, ["W1: does not apply"], "")
    row = {"subject": "W1", "name": name, "result": None, "applies": False}
    assert json.loads(run_main(capsys, *words, "--format", "json").out)["instances"] == [row]


@pytest.mark.parametrize("name", [name for name in computing.names() if computing.find(name).direct is not None])
def test_the_help_of_a_calculation_names_its_keys_and_its_example_runs(name: str, capsys: Any) -> None:
    done = run_main(capsys, "calc", name, "--help")
    assert (done.code, done.err) == (0, "")
    called = [line.strip() for line in done.out.splitlines() if line.startswith(f"  specgen calc {name} ")]
    words = shlex.split(called[0])[1:]
    asked = {word.partition("=")[0] for word in words[2:]}
    shown = set(re.findall(r"^  (\w+)  ", done.out.partition("\nkeys:\n")[2].partition("\n\n")[0], re.M))
    # A day or a moment has no unit.
    assert asked <= shown and ("unit" in shown) is (name not in ("finish", "next-start"))
    ran = run_main(capsys, *words)
    assert (ran.code, ran.err) == (0, "")
    # What the page says must be given is told to be missing, each key by its name.
    needed = [key for key in shown if re.search(rf"^  {key}  .*\n.*must be given$", done.out, re.M)]
    assert all(f"specgen: {key} must be given" in run_main(capsys, "calc", name).err for key in needed)


def test_the_help_of_a_calculation_tells_units_ranges_defaults_and_fields(capsys: Any) -> None:
    out = run_main(capsys, "calc", "air_demand", "-h").out
    assert out.startswith("air-demand  Air demand of the spray guns\n\nkeys:\n")
    assert (
        "  leak  added for leaks, in percent\n      a percentage, such as 50%; 0% to 100%; 10% where it is not given\n"
    ) in out
    assert "\n  guns.*.air_flow\n" in out
    out = run_main(capsys, "calc", "--help", "wall-wind").out
    # ASCE 7 maps of basic wind speed: 85 to 210 mph hold all of them.
    assert "speed in mph, ft/s, in/s, mm/s, m/s, km/h, kn; 85 mph to 210 mph; must be given\n" in out
    assert "one of allowable, strength; allowable where it is not given\n" in out


def test_the_help_of_a_look_up_tells_of_projects_alone(capsys: Any) -> None:
    out = run_main(capsys, "calc", "bond-demand", "--help").out
    assert "keys:" not in out
    assert "\nexamples:\n  specgen calc bond-demand --from project.yaml\n" in out


def test_the_help_of_no_calculation_is_that_of_the_command(capsys: Any) -> None:
    out = run_main(capsys, "calc", "--help").out
    assert out.startswith("usage: specgen calc")
    assert "\nexamples:\n  specgen calc\n" in out
    done = run_main(capsys, "calc", "dew-pont", "--help")
    assert (done.code, done.err) == (
        2,
        "specgen: there is no calculation 'dew-pont' (did you mean dew-point?)\n",
    )


@pytest.mark.parametrize(
    ("name", "own", "other"),
    [
        ("dew-point", ("air=70F", "rh=50%"), ("air=70F", "humidity=50%")),
        ("dew-point", ("air=70F", "rh=50%"), ("air=70F", "relative_humidity=50%")),
        (
            "joint-width",
            ("length=30ft", "alpha=4e-6/F", "movement_class=50", "tolerance=0in", "temperature_range=100F"),
            (
                "panel_length=30ft",
                "thermal_expansion=4e-6/F",
                "c920_class=50",
                "tolerance=0in",
                "temperature_range=100F",
            ),
        ),
    ],
)
def test_a_key_is_taken_by_the_name_of_its_field_too(
    name: str, own: tuple[str, ...], other: tuple[str, ...], capsys: Any
) -> None:
    done = run_main(capsys, "calc", name, *other)
    assert done.code == 0
    assert done == run_main(capsys, "calc", name, *own)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("air=70F", "humidty=50%"), "'humidty' is not a key of dew-point (did you mean humidity?)"),
        (("air=70F", "rhh=50%"), "'rhh' is not a key of dew-point (did you mean rh?)"),
        (("air=70F", "rh=50%", "humidity=40%"), "rh and humidity are the same key (give one of the two)"),
        (("air=70F", "humidity=40%", "rh=50%"), "humidity and rh are the same key (give one of the two)"),
        (("air=70F", "rh=50%", "blue=1"), "'blue' is not a key of dew-point (known: air, rh, unit)"),
    ],
)
def test_a_key_that_is_none_or_stands_twice_is_told_with_what_was_meant(
    words: tuple[str, ...], said: str, capsys: Any
) -> None:
    done = run_main(capsys, "calc", "dew-point", *words)
    assert (done.code, done.out) == (2, "")
    assert f"specgen: {said}" in done.err.splitlines()


def test_a_sum_whose_keys_have_no_other_name_lists_its_keys(capsys: Any) -> None:
    told = run_main(capsys, "calc", "cup-viscosity", "blue=1").err
    assert "specgen: 'blue' is not a key of cup-viscosity (known: cup, seconds, unit)" in told.splitlines()


def test_the_page_of_a_sum_names_a_key_in_both_ways(capsys: Any) -> None:
    told = run_main(capsys, "calc", "joint-width", "--help").out
    lines = told.splitlines()
    assert (
        lines[lines.index("  alpha  thermal expansion of that stretch") + 2] == "      also written thermal_expansion"
    )


def test_a_project_without_members_is_told_so(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "calc", "joint-width", "--from", str(written(tmp_path, SMALL | {"joints": {}})))
    assert done.out == "Sealant joint width\n\nno joint in the project; add one to have it computed\n"
