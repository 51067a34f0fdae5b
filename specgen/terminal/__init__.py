"""Formats what commands print: reports, manuals, field pages, starters."""
