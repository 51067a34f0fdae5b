"""Groups of choices used by several rules, each under its trade name, and matching of words in texts."""

import re

from specgen.weather.hold import EIFS_STEPS

ADHESIVE = ("adhesive_full_bed", "adhesive_notched_trowel", "adhesive_ribbon_and_dab")
SHEETS = ("glass_mat_gypsum", "cement_board", "plywood", "osb", "paper_faced_gypsum")
WOOD = ("plywood", "osb")
BOARDS = ("glass_mat_gypsum", "cement_board")
POURED_OR_LAID = ("concrete", "concrete_masonry", "aac", "stone", "stucco")
LAID_IN_MORTAR = ("existing_brick", "stone")
OLD_FACES = ("existing_brick", "stone", "stucco")
BETWEEN_EIFS = ("eifs_to_eifs", "floor_line")
SPRAYED = ("primer", "gloss")
AIR_SPRAY = ("conventional_pressure_fed", "hvlp")
PLASTERED = ("mesh", "second_pass", "smoothing_1", "smoothing_2")
EIFS_WORK = EIFS_STEPS
COAT_WORK = ("smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss")
# Before the mockup is accepted, and what no weather harms.
BEFORE_MOCKUP = ("site_conditions", "old_coating", "substrate", "equipment", "mockup")
DRY_WORK = ("site_conditions", "old_coating", "substrate", "equipment", "board_layout", "clean_equipment") + (
    ("acceptance", "metal_caps", "final_viewing")
)
SIGNED_DOCUMENTS = ("test_report", "letter", "certificate", "calculation")
SCAFFOLDS = ("frame_scaffold", "system_scaffold")
# By their names in the conditions of clauses: `in between_eifs`.
GROUPS = {name.lower(): words for name, words in list(globals().items()) if isinstance(words, tuple)}

_NO_WORD = re.compile(r"\W+")


def normalize(text: str) -> str:
    """A text for comparison: without case and outer spaces, underscores as spaces."""
    return text.replace("_", " ").strip().casefold()


def names(text: str, word: str) -> bool:
    """Whether a text contains a mark or a kind as a whole word."""
    # Spaces stand for all that is no part of a word; a pattern for each word would be made anew at every start.
    within, whole = (_NO_WORD.sub(" ", normalize(part)) for part in (text, word))
    return f" {whole.strip()} " in f" {within} "
