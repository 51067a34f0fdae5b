"""A document to the bytes of one format; each format walks the same tree."""
