"""Heat."""
