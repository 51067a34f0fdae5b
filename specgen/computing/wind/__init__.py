"""Wind."""
