"""Tab stops of a paragraph."""


def render_tab_stop(stops: dict[int, str], place: int, kind: str) -> str:
    """The tab stops of a paragraph with a single stop; empty where its style already has exactly that one."""
    if stops == {place: kind}:
        return ""
    cleared = "".join(f'<w:tab w:val="clear" w:pos="{other}"/>' for other in sorted(stops) if other != place)
    return f'<w:tabs>{cleared}<w:tab w:val="{kind}" w:pos="{place}"/></w:tabs>'
