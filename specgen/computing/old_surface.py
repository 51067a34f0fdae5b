"""Surfaces whose own hold must be proved by pull tests before a board is glued to them."""

from specgen.model.typed_views import Substrate

_BARE = ("metal", "existing_brick")


def is_old_surface(substrate: Substrate) -> bool:
    """Whether boards would be glued to old brick, bare metal or a coating that stays; raises Absent."""
    return substrate.kind in _BARE or bool(substrate.kind == "existing_coated" and not substrate.coating_removed)
