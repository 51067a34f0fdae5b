"""`python -m specgen`."""

from specgen.cli import run

run()
