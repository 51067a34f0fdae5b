"""Prints every ratio."""

from tests.bench import checking, drawing, formats, growing, laying, several

checking.measure()
growing.measure()
formats.measure()
drawing.measure()
laying.measure()
several.measure()
