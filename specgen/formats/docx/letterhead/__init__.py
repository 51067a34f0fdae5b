"""The paper that Word documents are written on: a firm's letterhead, made whole with our own styles and parts."""

from specgen.formats.docx.letterhead.paper import Paper, paper

__all__ = ["Paper", "paper"]
