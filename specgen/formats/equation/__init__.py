"""Expressions of a calculation as equations in a web page and in a Word file."""
