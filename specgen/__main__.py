"""`python -m specgen`, and the command itself."""

import signal


def run() -> None:
    """Run the command; a request to end that comes while it reads ends it at once, without a word."""
    # Reading and judging leave nothing behind; the writers hold signals while they write.
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, signal.SIG_DFL)
    from specgen.cli import run as run_command

    run_command()


if __name__ == "__main__":
    run()
