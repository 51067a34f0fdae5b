"""`python -m specgen`."""

from .cli import run

run()
