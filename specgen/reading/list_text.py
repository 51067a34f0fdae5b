"""A list as it is typed, `[a, b]`, to its entries."""

import yaml

from specgen.reading.positions import Loader


def split_list(text: str) -> list[str]:
    """The entries of a list as typed, `[a, b]`; what is in no brackets is one entry."""
    if not (text.startswith("[") and text.endswith("]")):
        return [text] if text else []
    node = compose_text(text)
    if isinstance(node, yaml.SequenceNode) and all(isinstance(one, yaml.ScalarNode) for one in node.value):
        return [one.value for one in node.value]
    return [entry.strip() for entry in text[1:-1].split(",") if entry.strip()]


def compose_text(source: str) -> yaml.Node | None:
    """The node of a short text; None where it is not YAML."""
    try:
        return yaml.compose(source, Loader)
    except (yaml.YAMLError, ValueError):
        return None
