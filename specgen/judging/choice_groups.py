"""Choices of the catalogue that several rules speak of, each set under the name the trade gives it,
and words that a text may name."""

import re

ADHESIVE = ("adhesive_full_bed", "adhesive_notched_trowel", "adhesive_ribbon_and_dab")
SHEETS = ("glass_mat_gypsum", "cement_board", "plywood", "osb", "paper_faced_gypsum")
WOOD = ("plywood", "osb")
BOARDS = ("glass_mat_gypsum", "cement_board")
POURED_OR_LAID = ("concrete", "concrete_masonry")
BETWEEN_EIFS = ("eifs_to_eifs", "floor_line")
SPRAYED = ("primer", "gloss")
PLASTERED = ("mesh", "second_pass", "smoothing_1", "smoothing_2")
SIGNED_PAPERS = ("test_report", "letter", "certificate", "calculation")
SCAFFOLDS = ("frame_scaffold", "system_scaffold")
# As the condition of a clause names them: `in between_eifs`.
GROUPS = {name.lower(): words for name, words in list(globals().items()) if isinstance(words, tuple)}


def plain(text: str) -> str:
    """A text as it is compared: whatever its case, its outer spaces, and underscores for spaces."""
    return text.replace("_", " ").strip().casefold()


def names(text: str, word: str) -> bool:
    """Whether a text names a mark or a kind, as a word of its own."""
    return re.search(rf"(?<!\w){re.escape(plain(word))}(?!\w)", plain(text)) is not None
