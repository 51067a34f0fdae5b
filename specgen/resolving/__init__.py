"""Each value computed once, on demand, by name; and which limit is in force."""
