"""specgen: from one description of an exterior wall job to a judged, written submittal."""

__version__ = "0.1.0"
