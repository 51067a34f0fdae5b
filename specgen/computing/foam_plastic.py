"""Foam plastic in exterior walls: the boards that are foam, and the types of construction that restrict it."""

FOAM = ("eps", "xps", "polyiso", "phenolic")
# Construction types I to IV, the exterior walls of which section 2603.5 is about.
RESTRICTED = ("IA", "IB", "IIA", "IIB", "IIIA", "IIIB", "IV", "IVA", "IVB", "IVC", "IVHT")
