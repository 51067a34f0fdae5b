"""Frozen types only: fields, the project, findings, workings, blocks, sources, and how their values read."""
