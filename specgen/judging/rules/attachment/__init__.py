"""Does the wall hold the board by adhesive alone, without a fastener that shows through the gloss?"""
