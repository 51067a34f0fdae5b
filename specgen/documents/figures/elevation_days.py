"""The areas that are sprayed in a day: whole columns of panels, from one joint that runs right through to the next."""

from specgen.documents.figures.elevation_canvas import Canvas, View
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Day
from specgen.documents.figures.labels import center_label, measure
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity

RISE = 13.5  # from the wall to the bracket of a day


def tell_day(facts: ElevationFacts, days: list[Day]) -> list[str]:
    """The area of a day, and why no day is marked where one column of panels is more than that."""
    if facts.day_area is None:
        return []
    unit = "ft2" if facts.system == "ip" else "m2"
    area = format_quantity(Quantity(facts.day_area, "area", "m2"), unit)
    break_at = "" if days else "; less than one column of panels: break at level joints"
    return [f"Day: gloss, both coats, maximum {area}{break_at}"]


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
