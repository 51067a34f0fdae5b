"""Hostile and mistaken input against the real command: `python -m tests.attack SECONDS`. Never collected.

A class is one file in `classes/`; presence is registration. It draws attempts; the rest runs and judges them. What is
held against a command is ours: no traceback, an exit code it tells, one line for each error, bounded time and memory,
nothing of the user's touched, nothing active in what was built.
"""
