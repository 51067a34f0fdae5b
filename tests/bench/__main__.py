"""Prints every ratio."""

from tests.bench import checking, drawing, formats, growing, laying

checking.measure()
growing.measure()
formats.measure()
drawing.measure()
laying.measure()
