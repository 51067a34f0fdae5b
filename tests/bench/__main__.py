"""Prints every ratio."""

from tests.bench import checking, formats, growing

checking.measure()
growing.measure()
formats.measure()
