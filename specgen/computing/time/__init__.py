"""Time."""
