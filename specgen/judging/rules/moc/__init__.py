"""A group of rules."""
