"""Question sheets for those who owe something, and blank tables of members: what is asked, and how it is set."""
