"""Reads text to typed values, once, and keeps the place of every value."""
