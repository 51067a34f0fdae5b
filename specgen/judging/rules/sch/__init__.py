"""Rules of the schedule."""
