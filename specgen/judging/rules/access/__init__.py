"""Can people reach the wall safely, and does what carries them leave no mark on it?"""
