"""The digest by which files, and what documents print, are known again."""

import hashlib


def digest(content: bytes) -> str:
    """The SHA-256 of some bytes in 64 hexadecimal digits, as the manifest of a package lists it."""
    return hashlib.sha256(content).hexdigest()
