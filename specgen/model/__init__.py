"""Frozen types only: fields, the project, findings, workings, blocks, sources, and the text of their values."""
