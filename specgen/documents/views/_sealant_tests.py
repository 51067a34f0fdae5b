"""How many hand pulls the sealant of a project is given, by the length of its joints."""

from math import ceil

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.quantities.quantity import Quantity


def count_sealant_tests(context: DocumentContext) -> DisplayValue | None:
    """The number of pulls: those of the first length of joint, and one for each later length that is begun.

    None where the length of a joint is not given.
    """
    project = context.project
    lengths = [project.get(("joints", mark, "length")) for mark in project.members.get(("joints",), ())]
    if not lengths or None in lengths:
        return None
    total: Quantity = sum(lengths[1:], start=lengths[0])
    least, first, later = (
        context.limit(f"sealant.{name}") for name in ("field_tests", "field_test_length", "field_test_later")
    )
    beyond = max(0, ceil((total.amount - first.raw.amount) / later.raw.amount))
    planned = [project.get(("sealants", mark, "field_tests")) for mark in project.members.get(("sealants",), ())]
    number = max([least.raw, *filter(None, planned)]) + beyond
    return DisplayValue(str(number), number, least.source, about="Sealant pull tests", row=least.row)
