"""Templates and the project to documents: a tree of blocks, numbered and with its references."""
