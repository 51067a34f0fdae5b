"""Does the color stay cool enough for the board, and are color and gloss measured to be compared?"""
