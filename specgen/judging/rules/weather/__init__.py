"""Is the coat sprayed in wind and air that it bears?"""
