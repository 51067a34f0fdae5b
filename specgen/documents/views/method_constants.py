"""Constants of the methods, each once, with the sheets that use it."""

from typing import Any

from specgen.documents.calculations import gather_calculations, number_sheets
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.expression_text import spell_formula
from specgen.documents.page_figures import CONSTANT_DIGITS, figure
from specgen.documents.sheet_steps import symbols_used
from specgen.documents.views.workings import constants, set_abreast, value_cell
from specgen.model.field import Path
from specgen.model.working import InputRow


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two constants abreast: symbol, name, value with the mark of its source, and the calculations that use it."""
    numbers, found = number_sheets(context), dict[tuple[Any, ...], tuple[Path, InputRow, list[int]]]()
    for calculation in gather_calculations(context):
        if calculation.workings:
            member = next(iter(calculation.workings))
            used_in = symbols_used(calculation.provider, calculation.workings[member])
            for row in constants(calculation.workings):
                if (row.value == 1 and not row.unit) or row.symbol not in used_in:
                    continue
                key = (row.symbol, row.name, figure(row.value, CONSTANT_DIGITS), row.unit)
                used = found.setdefault(key, (member, row, []))[2]
                used.append(numbers[calculation.provider.name])
    cells = [
        (
            [f"{row.name[:1].upper()}{row.name[1:]} ({_list(used)}), ", *spell_formula(row.symbol)],
            value_cell(context, member, row, CONSTANT_DIGITS),
        )
        for member, row, used in found.values()
    ]
    return set_abreast("Constant", cells)


def _list(numbers: list[int]) -> str:
    return ", ".join(map(str, numbers))
