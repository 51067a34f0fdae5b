"""Board."""
