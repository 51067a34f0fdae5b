"""Would the tests notice? `python -m tests.mutate N` makes N small changes, one at a time, and runs the tests on each.

A change is drawn by a seed from the code of the package, its rows, and its templates: an order turned, a figure moved,
a unit, a severity, a word. What no test notices is printed. Each trial runs in a copy of the checkout; nothing is
collected from here, and nothing is written beside it.
"""
