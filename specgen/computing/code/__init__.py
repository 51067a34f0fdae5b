"""Code look-ups."""
