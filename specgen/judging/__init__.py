"""Judges a project by the trade's rules: findings, open items, and a verdict for each wall."""
