"""`specgen completion`: the script by which a shell completes commands, options and names at the Tab key."""

from argparse import Action, ArgumentParser, Namespace
from collections.abc import Iterator

from specgen import computing
from specgen.commands import Outcome, load_commands, make_parser
from specgen.model.problem import refuse

HELP = "completion at the Tab key, for bash, zsh or fish"
ORDER = 90
SHELLS = ("bash", "zsh", "fish")
EXAMPLES = (
    ('completion bash > ~/.specgen-completion; echo ". ~/.specgen-completion" >> ~/.bashrc', "for bash, from then on"),
    ('completion zsh > "${fpath[1]}/_specgen"', "for zsh, from then on"),
    ("completion fish > ~/.config/fish/completions/specgen.fish", "for fish, from then on"),
)
READ_ON = "it needs the extra completion: see the installation in the README"
# What stands for a file or folder in the help of an argument.
_FILES, _FOLDERS = ("FILE", "FILE.docx", "OLD", "NEW"), ("DIR", "PACKAGE")


def arguments(parser: ArgumentParser) -> None:
    """Declare the shell."""
    parser.add_argument("shell", metavar="SHELL", choices=SHELLS, help=", ".join(SHELLS))


def run(args: Namespace) -> Outcome:
    """Give the script; raises Refused without the library that writes it."""
    try:
        import shtab
    except ImportError:
        raise refuse(
            "completion needs a library that is not installed", "install specgen with its extra completion"
        ) from None
    parser = make_parser(load_commands())
    for action in _list_actions(parser):
        if action.metavar in _FILES:
            action.complete = shtab.FILE  # type: ignore[attr-defined]
        elif action.metavar in _FOLDERS:
            action.complete = shtab.DIRECTORY  # type: ignore[attr-defined]
        elif action.metavar == "NAME":
            action.choices = computing.names()
    return Outcome(text=shtab.complete(parser, shell=args.shell) + "\n")


def _list_actions(parser: ArgumentParser) -> Iterator[Action]:
    """The arguments of a parser and of its commands."""
    for action in parser._actions:
        yield action
        if isinstance(action.choices, dict):
            for own in action.choices.values():
                yield from _list_actions(own)
