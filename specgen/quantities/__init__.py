"""Quantities with exact units, their text and their comparison: a small library that imports nothing else of ours."""
