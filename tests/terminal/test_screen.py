"""How lines wrap and are painted; the screen that standard output is."""

import pytest

from specgen.terminal.screen import Line, Screen, find_screen, show_lines, wrap

BLUNT = "W1  no: cannot be built so (ATT-01a, BAS-01a, BAS-01b)"


@pytest.mark.parametrize(
    ("text", "hanging", "width", "lines"),
    [
        (BLUNT, 4, 80, [BLUNT]),
        (BLUNT, 4, 27, ["W1  no: cannot be built so", "    (ATT-01a, BAS-01a,", "    BAS-01b)"]),
        ("     a bb ccc", 7, 9, ["     a bb", "       ccc"]),
        # A word that is longer than the line stays whole.
        ("at walls.W1.mesh.layers.0.order here", 2, 10, ["at", "  walls.W1.mesh.layers.0.order", "  here"]),
        ("", 2, 10, [""]),
    ],
)
def test_a_line_breaks_at_blanks_and_hangs(text: str, hanging: int, width: int, lines: list[str]) -> None:
    assert wrap(text, hanging, width) == lines


def test_only_a_part_is_painted_and_no_word_of_the_user_paints() -> None:
    line = Line("STOP ATT-01a  \x1b[32mW1", 2, "STOP", "stop")
    assert show_lines([line], Screen()) == "STOP ATT-01a  \\u001b[32mW1\n"
    painted = show_lines([line], Screen(painted=True))
    assert painted == "\x1b[1;31mSTOP\x1b[0m ATT-01a  \\u001b[32mW1\n"


def test_what_follows_on_is_painted_where_the_whole_line_is() -> None:
    assert show_lines([Line("one two", 2, style="bold")], Screen(5, painted=True)) == (
        "\x1b[1mone\x1b[0m\n\x1b[1m  two\x1b[0m\n"
    )


def test_what_is_no_terminal_is_80_wide_and_plain(capsys: pytest.CaptureFixture[str]) -> None:
    assert find_screen() == Screen(80, painted=False, is_terminal=False)
    assert find_screen("always") == Screen(80, painted=True, is_terminal=False)
