"""The letterhead of the Word documents: the firm's own, completed with our styles and parts."""

from specgen.formats.docx.letterhead.builder import Letterhead, read_letterhead

__all__ = ["Letterhead", "read_letterhead"]
