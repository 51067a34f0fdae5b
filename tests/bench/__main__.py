"""Prints every ratio."""

from tests.bench import checking, writing

checking.measure()
writing.measure()
