"""Color."""
