"""The registry of a public library of units, made once: it reads its definitions anew each time it is made."""

import pint

UNITS: pint.UnitRegistry = pint.UnitRegistry()
