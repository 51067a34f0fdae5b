"""Coats."""
