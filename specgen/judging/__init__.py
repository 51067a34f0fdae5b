"""Judges a project by the rules of the trade: findings, open items, and a verdict for each wall."""
