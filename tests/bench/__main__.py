"""Prints every ratio."""

from tests.bench import checking, drawing, formats, growing

checking.measure()
growing.measure()
formats.measure()
drawing.measure()
