"""Scales of sections: those of ISO 5455, and in US units those that halve."""

_SCALES = {"si": (1, 2, 5, 10, 20, 50), "ip": (1, 2, 4, 8, 16, 32)}


def choose_scale(real: float, room: float, system: str) -> int:
    """The scale, as its second figure, by which a length in millimeters fits the room on paper."""
    fitting = [scale for scale in _SCALES[system] if real / scale <= room]
    return fitting[0] if fitting else _SCALES[system][-1]
