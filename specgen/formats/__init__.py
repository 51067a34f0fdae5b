"""Writers of a document, one for each format; all walk the same tree."""
