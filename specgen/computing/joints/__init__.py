"""Movement joints."""
