"""Composes documents from templates and the project: a tree of blocks, numbered and with resolved references."""
