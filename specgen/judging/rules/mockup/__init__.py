"""Does the mockup show all that will be judged, made and kept as the work is?"""
