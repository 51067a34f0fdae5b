"""Is the board of a kind, grade and thickness that carries the finish?"""
