"""An expression of a working, set as an equation in a web page and in a Word file."""
