"""A document to the bytes of a Word file."""
