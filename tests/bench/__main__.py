"""Prints every ratio."""

from tests.bench import checking, formats

checking.measure()
formats.measure()
