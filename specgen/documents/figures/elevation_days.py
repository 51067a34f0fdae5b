"""The areas that are sprayed in a day: whole columns of panels, from one joint that runs right through to the next."""

from specgen.documents.figures.elevation_canvas import Canvas, View
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Day
from specgen.documents.figures.labels import center_label, measure
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity, round_quantity

RISE = 13.5  # from the wall to the bracket of a day


def tell_days(facts: ElevationFacts, days: list[Day]) -> str:
    """How much is sprayed in a day, and where a day ends."""
    if facts.day_area is None:
        return "Day areas: set on site, from joint to joint"
    unit = "ft2" if facts.system == "ip" else "m2"
    area = format_quantity(round_quantity(Quantity.of(Quantity(facts.day_area, "area", "m2").to(unit), unit)), unit)
    ends = {0: "less than one column of panels; break at level joints", 1: "this elevation in one day"}
    return f"Gloss, both coats, in a day: maximum {area}; {ends.get(len(days), 'days as marked')}"


def draw_days(canvas: Canvas, view: View, days: list[Day]) -> None:
    """Bracket the days above the marks of the lines, where there is more than one."""
    if len(days) < 2:
        return
    y = view.box.top - RISE
    for number, day in enumerate(days, 1):
        start, end = max(day.start, view.left), min(day.end, view.right)
        if end - start < 1e-6:
            continue
        left, right = view.x(start), view.x(end)
        canvas.line("day", left, y, right, y)
        for x in (left, right):
            canvas.line("day", x, y - 1, x, y + 2)
        for text in (f"Day {number}", str(number)):
            if measure(text) + 1 < right - left and canvas.place([center_label(text, (left + right) / 2, y - 2.2)]):
                break
        else:
            canvas.lost.append(f"Day {number}")
