"""From a judged project to documents: templates, one block tree, several walkers, one writer of files."""
