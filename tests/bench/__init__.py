"""Measures speed as ratios in one run: `python -m tests.bench`. Never collected as a test.

Each figure is printed beside its goal; the machine's own speed cancels out.
"""
