"""What a substrate is to a code: concrete or masonry, or a sheet on framing."""

from specgen.model.typed_views import Wall

MASONRY = ("concrete", "concrete_masonry", "existing_brick")
SHEETS = ("glass_mat_gypsum", "cement_board", "plywood", "osb", "paper_faced_gypsum")


def is_masonry(wall: Wall) -> bool:
    """Whether a wall is of concrete or masonry, painted or not.

    Raises Absent if it is painted and nobody says what is below.
    """
    old_coating = wall.substrate.kind == "existing_coated"
    return wall.substrate.base in ("concrete", "masonry") if old_coating else wall.substrate.kind in MASONRY
