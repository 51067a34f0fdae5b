"""Is the package whole, signed, in date and without contradiction?"""
