"""Values put into a file of the user: text inserted at its place, every other byte kept."""
