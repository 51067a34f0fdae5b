"""What the finish of a project is called: metallic until each of its colors is told to have no flake."""

from specgen.documents.context import DocumentContext


def is_metallic(context: DocumentContext) -> bool:
    """Whether any color has flake, or may have."""
    colors = context.project.members.get(("colors",), ())
    return not colors or any(context.project.get(("colors", color, "metallic")) is not False for color in colors)


def name_finish(context: DocumentContext) -> str:
    """`metallic gloss finish`."""
    return "metallic gloss finish" if is_metallic(context) else "gloss finish"
