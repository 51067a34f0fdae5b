"""Moisture."""
