"""Is the wall flat enough for the light that falls on it?"""
