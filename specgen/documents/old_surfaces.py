"""The surfaces that board is adhered to and that are pulled first."""

from specgen.documents.context import DocumentContext
from specgen.scheduling.applying import applies

# The test that pulls them.
BOND_TEST = "existing_bond"


def list_pulled(context: DocumentContext) -> list[str]:
    """The marks of the walls whose surface is pulled before board is adhered to it."""
    when = context.standards.field_tests[BOND_TEST].when
    return [mark for mark in context.project.members[("walls",)] if applies(when, context.project, mark)]
