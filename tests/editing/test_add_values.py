"""Values put into a file, each case retyped as a careful hand would write it."""

from typing import Any

import pytest

from specgen.editing.add_values import add_values
from specgen.editing.edit import Addition, Edit
from specgen.model.problem import Refused
from specgen.reading.schema import project_schema

ADDRESS = ("project.address", "1 Way")


def edit(source: str, *additions: Any) -> Edit:
    wanted = [Addition(tuple(path.split(".")), *rest) for path, *rest in additions]
    return add_values(source.encode(), wanted, project_schema(), "p.yaml")


def told(done: Edit) -> list[tuple[str, int, str, str, str]]:
    return [(".".join(c.path), c.line, c.given, c.offered, c.reason) for c in done.conflicts]


# What is tried, the file, what is added, and the file as it is to be.
CASES: dict[str, tuple[str, list[tuple[str, ...]], str]] = {
    "a tab before a comment stays": (
        "format: 1\nproject:\n  name: X\t# kept\n  number:\t# asked\n",
        [ADDRESS, ("project.number", "7")],
        "format: 1\nproject:\n  name: X\t# kept\n  number: '7'\t# asked\n  address: 1 Way\n",
    ),
    "line ends of another system": (
        "format: 1\r\nproject:\r\n  name: X\r\nwalls: {}\r\n",
        [ADDRESS],
        "format: 1\r\nproject:\r\n  name: X\r\n  address: 1 Way\r\nwalls: {}\r\n",
    ),
    "a byte order mark, and no final line end": (
        "\ufeffformat: 1\nproject: {name: X}",
        [ADDRESS, ("site.exposure", "C")],
        "\ufeffformat: 1\nproject: {name: X, address: 1 Way}\nsite:\n  exposure: C",
    ),
    "no final line end": ("project:\n  name: X", [ADDRESS], "project:\n  name: X\n  address: 1 Way"),
    "braces on one line": ("project: {name: X}\n", [ADDRESS], "project: {name: X, address: 1 Way}\n"),
    "braces with a comma at their end": ("project: {name: X, }\n", [ADDRESS], "project: {name: X, address: 1 Way, }\n"),
    "empty braces": ("project: {}\n", [ADDRESS], "project: {address: 1 Way}\n"),
    "first in braces": ("project: {address: X}\n", [("project.name", "N")], "project: {name: N, address: X}\n"),
    "braces over several lines": (
        "project: {\n  name: X,  # one\n  number: 3  # two\n}\nformat: 1\n",
        [ADDRESS],
        "project: {\n  name: X,  # one\n  number: 3, address: 1 Way  # two\n}\nformat: 1\n",
    ),
    "the whole file in braces": (
        "{format: 1, project: {name: X}}",
        [ADDRESS, ("site.exposure", "C")],
        "{format: 1, project: {name: X, address: 1 Way}, site: {exposure: C}}",
    ),
    "empty keys in braces": (
        "project: {name: tbd, number, address: }\n",
        [("project.name", "no: 1"), ("project.number", "1, 2"), ADDRESS],
        "project: {name: 'no: 1', number: '1, 2', address: 1 Way}\n",
    ),
    "a comment that belongs to the next section": (
        "walls:\n  W1:\n    substrate:\n      kind: concrete\n  # about W2\n  W2: {}\n",
        [("walls.W1.substrate.thickness", "8 in")],
        "walls:\n  W1:\n    substrate:\n      kind: concrete\n      thickness: 8 in\n  # about W2\n  W2: {}\n",
    ),
    "a comment that goes on from a value": (
        "climate:\n  hot_air: 94 F   # design\n                  # day\n  # cold\n  zone: 4A\n",
        [("climate.cold_air", "2 F", "from\nthe table")],
        "climate:\n  hot_air: 94 F   # design\n                  # day\n"
        "  # from\n  # the table\n  cold_air: 2 F\n  # cold\n  zone: 4A\n",
    ),
    "comments further in, of what is above": (
        "walls:\n  W1:\n    wrb:\n      kind: felt\n\n    # May be given:\n    #layers:\n\n"
        "  # next\n  W3: {}\n# about colors\ncolors: {}\n",
        [("walls.W2.wrb.kind", "none"), ("walls.W1.wrb.coats", "2")],
        "walls:\n  W1:\n    wrb:\n      kind: felt\n      coats: 2\n\n    # May be given:\n"
        "    #layers:\n\n  # next\n  W3: {}\n"
        "  W2:\n    wrb:\n      kind: none\n# about colors\ncolors: {}\n",
    ),
    "a new section behind comments of the one above": (
        "walls:\n  W1:\n    wrb:\n      kind: felt\n\n    # May be given:\n    #layers:\n\n"
        "# about colors\ncolors: {}\n",
        [("aesthetic_joint.depth", "1/2 in")],
        "walls:\n  W1:\n    wrb:\n      kind: felt\n\n    # May be given:\n    #layers:\n\n"
        "aesthetic_joint:\n  depth: 1/2 in\n\n"
        "# about colors\ncolors: {}\n",
    ),
    "another indentation": (
        "project:\n    name: X\nwalls:\n    W1:\n        framing:\n            kind: none\n",
        [("walls.W1.substrate.kind", "concrete"), ("walls.W2.framing.kind", "none")],
        "project:\n    name: X\nwalls:\n    W1:\n        framing:\n            kind: none\n"
        "        substrate:\n            kind: concrete\n    W2:\n        framing:\n            kind: none\n",
    ),
    "entries of lists, written in lines and in braces": (
        "contract:\n  spec_sections:\n  - number: 07 24 00\n  - {number: 09 96 00}\n",
        [
            ("contract.spec_sections.0.title", "T"),
            ("contract.spec_sections.1.title", "T, U"),
            ("contract.spec_sections.2.title", "V"),
        ],
        "contract:\n  spec_sections:\n  - number: 07 24 00\n    title: T\n  - {number: 09 96 00, title: 'T, U'}\n"
        "  - title: V\n",
    ),
    "a text in lines as the last value": (
        "project:\n  name: |\n    long\n\n\n# next\nsite: {}\n",
        [ADDRESS],
        "project:\n  name: |\n    long\n  address: 1 Way\n\n\n# next\nsite: {}\n",
    ),
    "a text in lines at the end of a file without a final line end": (
        "site: {}\nproject:\n  name: |\n    long",
        [ADDRESS],
        "site: {}\nproject:\n  name: |\n    long\n  address: 1 Way",
    ),
    "a text that keeps its blank lines": (
        "project:\n  name: >+\n    long\n\nsite: {}\n",
        [ADDRESS],
        "project:\n  name: >+\n    long\n\n  address: 1 Way\nsite: {}\n",
    ),
    "a quoted text over several lines": (
        "project:\n  name: 'X\n\n    y'   # kept\nsite: {}\n",
        [ADDRESS],
        "project:\n  name: 'X\n\n    y'   # kept\n  address: 1 Way\nsite: {}\n",
    ),
    "sections that are empty or tbd": (
        "project: tbd  # later\nsite:\nwalls:\n",
        [ADDRESS, ("site.exposure", "C"), ("walls.W1.substrate.kind", "concrete")],
        "project:   # later\n  address: 1 Way\nsite:\n  exposure: C\nwalls:\n  W1:\n    substrate:\n"
        "      kind: concrete\n",
    ),
    "marks that YAML would misread": (
        "joints:\n  J1: {elevation: E1}\n",
        [(f"joints.{mark}.elevation", "E1") for mark in ("yes", "1", "null", "#", "J 2", "Ü", "a'b", "2027-01-01")],
        "joints:\n  J1: {elevation: E1}\n"
        + "".join(
            f"  {mark}:\n    elevation: E1\n"
            for mark in ("'yes'", "'1'", "'null'", "'#'", "J 2", "Ü", "a'b", "'2027-01-01'")
        ),
    ),
    "texts that YAML would misread": (
        "project: {name: X}\nsite:\n  exposure: C\n",
        [
            ("project.number", "0712"),
            ("project.address", "a]b # c"),
            ("site.latitude", "41.2 deg"),
            ("contract.number", "# 3"),
            ("contract.award_date", "2027-01-18"),
        ],
        "project: {name: X, number: '0712', address: 'a]b # c'}\ncontract:\n  number: '# 3'\n"
        "  award_date: 2027-01-18\nsite:\n  latitude: 41.2 deg\n  exposure: C\n",
    ),
    "a list": ("site: {}\n", [("site.surroundings", "[a, b c]")], "site: {surroundings: [a, b c]}\n"),
    "what opens a file stays above its first key": (
        "# head\nproject:\n  # why\n  name: X\n",
        [("format", "1"), ("project.number", "A")],
        "# head\nformat: 1\nproject:\n  # why\n  name: X\n  number: A\n",
    ),
    "a key before a first one with its comment": (
        "walls:\n  W1:\n    # board\n    substrate:\n      kind: concrete\n",
        [("walls.W1.framing.kind", "none")],
        "walls:\n  W1:\n    framing:\n      kind: none\n    # board\n    substrate:\n      kind: concrete\n",
    ),
    "sections that stand apart": (
        "format: 1\n\nproject:\n  name: X\n\nwalls: {}\n",
        [("site.exposure", "C")],
        "format: 1\n\nproject:\n  name: X\n\nsite:\n  exposure: C\n\nwalls: {}\n",
    ),
    "a document between its signs": (
        "--- # one\nproject:\n  name: X\n...\n",
        [ADDRESS, ("site.exposure", "C")],
        "--- # one\nproject:\n  name: X\n  address: 1 Way\nsite:\n  exposure: C\n...\n",
    ),
    "keys with a question mark": (
        "? project\n: name: X\n? site\n: {exposure: C}\n",
        [ADDRESS, ("site.latitude", "1 deg")],
        "? project\n: name: X\n  address: 1 Way\n? site\n: {latitude: 1 deg, exposure: C}\n",
    ),
    "letters beyond the first plane": (
        "project: {name: '😀 é'}\nsite: {exposure: C}\n",
        [ADDRESS, ("site.latitude", "1 deg")],
        "project: {name: '😀 é', address: 1 Way}\nsite: {latitude: 1 deg, exposure: C}\n",
    ),
    "a value with an anchor": (
        "project: &p {name: X}\n",
        [ADDRESS],
        "project: &p {name: X, address: 1 Way}\n",
    ),
    "an override beside a merge key": (
        "walls:\n  W1: &w\n    insulation: {kind: eps}\n  W2:\n    <<: *w\n",
        [("walls.W2.framing.kind", "none")],
        "walls:\n  W1: &w\n    insulation: {kind: eps}\n  W2:\n    <<: *w\n    framing:\n      kind: none\n",
    ),
    "an empty key without braces, with its comment": (
        "project:\n  name: X\n",
        [("project.address", "", "Where is it?")],
        "project:\n  name: X\n  # Where is it?\n  address:\n",
    ),
    "an empty key that belongs into braces": (
        "project: {name: X}\nsite: {}\n",
        [("project.address", "", "Where is it?")],
        "project: {name: X}\n# Missing in the braces above; write each inside them:\n#   Where is it?\n#   address:\n"
        "site: {}\n",
    ),
    "an empty key of members in braces": (
        "joints:\n  J1: {kind: a}\n  J2: {kind: b}\nsite: {}\n",
        [("joints.J1.width", "", "How wide?"), ("joints.J2.width", "", "How wide?")],
        "joints:\n  J1: {kind: a}\n  J2: {kind: b}\n  # Missing in the braces above; write each inside them:\n"
        "  #   How wide?\n  #   J1.width, J2.width:\nsite: {}\n",
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_a_value_stands_where_a_careful_hand_would_write_it(case: str) -> None:
    source, additions, wanted = CASES[case]
    done = edit(source, *additions)
    assert done.source.decode() == wanted
    assert (done.conflicts, done.remarks) == ((), ())


@pytest.mark.parametrize("case", CASES)
def test_what_was_added_is_not_added_again(case: str) -> None:
    _, additions, wanted = CASES[case]
    again = edit(wanted, *additions)
    assert (again.source.decode(), again.added, again.conflicts) == (wanted, (), ())


def test_another_value_is_a_conflict_and_stays() -> None:
    source = "site:\n  latitude: 41.20 deg\n  surroundings: [a, b]  # seen\nproject: 5\n"
    done = edit(source, ("site.latitude", "40 deg"), ("site.surroundings", "[a, c]"), ADDRESS)
    assert done.source.decode() == source
    assert told(done) == [
        ("site.latitude", 2, "41.20 deg", "40 deg", ""),
        ("site.surroundings", 3, "[a, b]", "[a, c]", ""),
        ("project.address", 4, "", "1 Way", "a section is wanted here"),
    ]


def test_the_same_value_written_otherwise_is_none() -> None:
    done = edit("site: {latitude: 41.20 deg, exposure: c}\n", ("site.latitude", "41.2 deg"), ("site.exposure", "C"))
    assert (done.added, done.conflicts) == ((), ())


def test_two_values_for_one_field_are_told_and_the_first_is_written() -> None:
    done = edit("project: {}\n", ADDRESS, ("project.address", "2 Way"))
    assert done.source == b"project: {address: 1 Way}\n"
    assert told(done) == [("project.address", 0, "1 Way", "2 Way", "")]


def test_only_where_it_is_asked_for_a_value_is_written_over() -> None:
    done = edit("package: {purpose: &p 'design_draft'}  # now\n", ("package.purpose", "closeout", "", True))
    assert done.source == b"package: {purpose: &p closeout}  # now\n"


REPEATED = """\
walls:
  W1: &w
    insulation: &b {kind: eps}
  W2:
    <<: *w
  W3:
    insulation: *b
"""


def test_what_is_added_below_an_anchor_is_told_of_each_that_repeats_it() -> None:
    done = edit(REPEATED, ("walls.W1.insulation.product", "Board"))
    assert done.source.decode() == REPEATED.replace("{kind: eps}", "{kind: eps, product: Board}")
    assert done.remarks == (
        "walls.W2.insulation.product has the value too, as it repeats walls.W1.insulation.product",
        "walls.W3.insulation.product has the value too, as it repeats walls.W1.insulation.product",
    )


def test_a_section_that_is_repeated_gets_no_value_of_its_own() -> None:
    done = edit(REPEATED, ("walls.W2.insulation.product", "A"), ("walls.W3.insulation.product", "B"))
    assert done.source.decode() == REPEATED
    assert told(done) == [
        (
            "walls.W2.insulation.product",
            3,
            "",
            "A",
            "walls.W2.insulation comes with a merge key; write the section out to give it values of its own",
        ),
        (
            "walls.W3.insulation.product",
            7,
            "",
            "B",
            "this section repeats *b; write it out to give it values of its own",
        ),
    ]


def test_a_repeated_section_that_gets_the_same_value_is_no_conflict() -> None:
    done = edit(REPEATED, ("walls.W3.insulation.product", "Board"), ("walls.W1.insulation.product", "Board"))
    assert done.conflicts == ()


def test_lines_and_texts_of_what_was_added_are_told() -> None:
    done = edit("project:\n  name: X\n", ("format", "1"), ADDRESS)
    assert [(".".join(one.path), one.line, one.text) for one in done.added] == [
        ("format", 1, "1"),
        ("project.address", 4, "1 Way"),
    ]


NOT_ADDED = [
    ("project: {}\n", "project.adress", "there is no field 'project.adress' (did you mean project.address?)"),
    ("walls: {}\n", "walls.W1.substrate.knd", "did you mean walls.W1.substrate.kind?"),
    ("- a\n", "format", "p.yaml:1:1: the file does not begin with a name and a colon"),
    ("format: 1\nformat: 1\n", "firm", "p.yaml:2:1: format: 'format' appears twice, in line 1 and in line 2"),
    ("? project\n", "project.name", "p.yaml: nothing was changed: a value cannot be put here safely"),
]


@pytest.mark.parametrize(
    ("source", "path", "message"),
    NOT_ADDED,
)
def test_what_cannot_be_done_is_refused_in_words(source: str, path: str, message: str) -> None:
    with pytest.raises(Refused, match=r".*") as refused:
        edit(source, (path, "x"))
    assert message in str(refused.value)
