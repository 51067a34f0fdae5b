"""Text becomes typed facts here, once, with the place of every value kept beside them."""
