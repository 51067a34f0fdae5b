"""What is said of lines that are proposed: demands that cannot be met, what is traded off, the gap that is left."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from specgen.laying_out.face import Face
from specgen.laying_out.legs import find_leg, find_shift
from specgen.laying_out.search import Found, Search
from specgen.laying_out.unfolding import Part
from specgen.model.layout import ElevationLayout, Panel
from specgen.quantities.format import format_decimal, format_first
from specgen.quantities.quantity import Quantity

# So many panels or places are named, the others counted.
_NAMED = 4
# A wall of more panels is not laid out again for the sake of one leg.
_MOST_SHIFTED = 400


class Words:
    """The notes of the layouts that one search found."""

    def __init__(self, search: Search, found: Found, marks: list[str], system: str, *, held: bool) -> None:
        """`held` is whether level lines are those of other elevations too."""
        self._search, self._found, self._marks, self._system = search, found, marks, system
        self._held = held

    def note(self, part: Part, layout: ElevationLayout, other: ElevationLayout | None = None) -> ElevationLayout:
        """A layout with its notes; `other` is what is offered beside it."""
        notes = [*self._trade(layout, other), *self._past_limits(part, layout), *self._narrow(part, layout)]
        return replace(layout, notes=(*notes, *self._missed(part, layout), *self._gap()))

    def _trade(self, layout: ElevationLayout, other: ElevationLayout | None) -> Iterator[str]:
        if other is None:
            return
        stopped, through = (layout, other) if layout.proposal == "stopped" else (other, layout)
        narrow = through.score.slivers, stopped.score.slivers
        yield (
            f"Lines that run through leave {_count(narrow[0], 'narrow panel')}, lines that stop at openings "
            f"{narrow[1] or 'none'}. The price of lines that stop: {self._joint_price(through, stopped)}"
            f"{_shape_price(through, stopped)}{_missed_price(through, stopped)}."
        )

    def _joint_price(self, through: ElevationLayout, stopped: ElevationLayout) -> str:
        """How much more or less aesthetic joint is cut where lines stop."""
        more = stopped.score.joint_length - through.score.joint_length
        whole = f"{self._far(stopped.score.joint_length)} of aesthetic joint"
        if self._far(abs(more)) == self._far(Fraction(0)):
            return f"{whole}, as much as by lines that run through"
        return f"{whole}, {self._far(abs(more))} {'more' if more > 0 else 'less'}"

    def _past_limits(self, part: Part, layout: ElevationLayout) -> Iterator[str]:
        face = part.described.face
        limits = [face.meters(side) for side in (face.limits.max_width, face.limits.max_height)]
        area = Fraction(face.limits.max_area + 1, face.scale**2)
        past = [p for p in layout.panels if p.width > limits[0] or p.height > limits[1] or p.net_area >= area]
        if past:
            wide, high = max(p.width for p in past), max(p.height for p in past)
            yield (
                f"{_count(len(past), 'panel')} past a panel limit: {_name(past)}. Least change: panels of up to "
                f"{self._long(max(wide, limits[0]))} by {self._long(max(high, limits[1]))}, or one more line."
            )

    def _narrow(self, part: Part, layout: ElevationLayout) -> Iterator[str]:
        face = part.described.face
        least = face.meters(face.limits.least_side)
        narrow = sorted((p for p in layout.panels if p.least_side < least), key=lambda p: p.least_side)
        if not narrow:
            return
        places = sorted(find_narrow_places(face))
        leg = narrow[0].least_side
        bare = min((face.meters(width) for width, *_ in places), default=least)
        # What the openings leave can be mended by no line; what lies under it is cut off by the lines.
        cut_off = leg < min(bare, face.meters(face.width), face.meters(face.height))
        place, change = self._mend(part, layout, narrow[0]) if cut_off else ("", "")
        change = change or f"Least change: a minimum side of {self._long(leg)}."
        yield (
            f"{_count(len(narrow), 'panel')} narrower than the minimum side of {self._long(least)}: {_name(narrow)}; "
            f"the narrowest leg is {self._long(leg)}{place}. {change}"
        )
        told = []
        for width, one, other in places[:_NAMED]:
            wide, short = self._long(face.meters(width)), self._long(least - face.meters(width))
            told.append(f"{wide} between {one} and {other} ({short} short)")
        more = f", and {len(places) - _NAMED} more" if len(places) > _NAMED else ""
        if told:
            yield f"No line can mend wall that is too narrow by itself: {'; '.join(told)}{more}."

    def _mend(self, part: Part, layout: ElevationLayout, panel: Panel) -> tuple[str, str]:
        """Where the narrowest leg lies, and the least change that avoids it."""
        leg = find_leg(layout, panel)
        if leg is None:
            return "", ""
        place = f", in {panel.mark} between {leg.low.name} and {leg.high.name}"
        if layout.proposal == "stopped" or len(layout.panels) > _MOST_SHIFTED:
            return place, "Obtain the architect's consent to it, or shift what it lies between."
        shift = find_shift(part.described.face, part.described.wishes, layout, leg, level_held=self._held)
        if shift is None:
            return place, "No shift by the minimum side or less avoids it; obtain the architect's consent."
        way = ("to the left", "to the right") if shift.upright else ("down", "up")
        return place, f"Least change: shift {shift.mark} {self._long(abs(shift.by))} {way[shift.by > 0]} to avoid it."

    def _missed(self, part: Part, layout: ElevationLayout) -> Iterator[str]:
        """Each wish without a line, and what a line there would do; the first few."""
        face, wishes = part.described.face, part.described.wishes
        for upright, wanted in ((True, wishes.upright), (False, wishes.level)):
            lines = layout.vertical_lines if upright else layout.horizontal_lines
            cut = {joint.at for joint in (face.upright if upright else face.level)}
            missed = [at for at, _ in wanted if at not in cut and face.meters(at) not in lines]
            named = _NAMED if self._search.is_small else 1
            for at in missed[:named]:
                where = f"{self._long(face.meters(at))} {'from the left' if upright else 'up'}"
                effect = self._effect(upright, at + (part.left if upright else part.low))
                yield f"No line at the {_feature(face, upright, at)}, {where}: {effect}."
            if len(missed) > named:
                more = _count(len(missed) - named, "more place")
                yield f"{more} without a wanted line."

    def _effect(self, upright: bool, at: int) -> str:
        found = self._found
        forced = self._search.force(upright, at, found) if self._search.is_small else None
        if forced:
            digits, least = forced
            more = [new - old for new, old in zip(digits[:2], found.key[:2], strict=True)]
        else:
            # Of a large wall, and of places beside the corners that others hold, the line is told as one more.
            *more, least = self._search.add(upright, at, (found.upright, found.level))
        if more[0] > 0:
            return f"a line there would leave {_count(more[0], 'more panel')} past a panel limit"
        if more[1] > 0:
            side = self._long(self._search.problem.face.meters(least))
            return (
                f"a line there{self._carried(upright)} would leave {_count(more[1], 'more panel')} too narrow; least "
                f"change: a minimum side of {side}"
            )
        return "other lines that are wished for stand against it"

    def _carried(self, upright: bool) -> str:
        """Where a line counts besides its own elevation: a level one goes on round the corner."""
        return "" if upright or len(self._marks) < 2 else f", carried over {' and '.join(self._marks)},"

    def _gap(self) -> Iterator[str]:
        """How far the lines found may be from the best there are, where that is not proved."""
        found, face = self._found, self._search.problem.face
        if found.is_proved:
            return
        of = f" of {', '.join(self._marks)} together" if len(self._marks) > 1 else ""
        key, bound = found.key, found.bound
        if key[:4] == bound[:4]:
            length, least = (self._far(face.meters(each)) for each in (key.length, bound[4]))
            yield f"At least {least} of aesthetic joints{of} cannot be avoided; lines that run through have {length}."
        elif key[0] > bound[0] or not bound[1]:
            yield "Not every choice of lines was compared; others may do better."
        else:
            few = _count(bound[1], "narrow panel")
            yield f"At least {few}{of} cannot be avoided; lines that run through leave {key.slivers}."

    def _long(self, meters: Fraction) -> str:
        return format_first(Quantity(meters, "length", "m"), "ft", "m", self._system)

    def _far(self, meters: Fraction) -> str:
        """A length of many joints, to a whole foot or a tenth of a meter."""
        if self._system == "ip":
            return f"{format_decimal(Quantity(meters, 'length', 'm').to('ft'), 9, 0)} ft"
        return f"{format_decimal(meters, 9, 1)} m"


def find_narrow_places(face: Face) -> Iterator[tuple[int, str, str]]:
    """Wall narrower than the least side between openings, or between one and an end or a joint: width and names."""
    least = face.limits.least_side
    for one in face.openings:
        ends = [(0, "the left end"), (face.width, "the right end"), *((j.at, j.mark) for j in face.upright)]
        for at, name in ends:
            for gap in (one.left - at, at - one.right):
                if 0 < gap < least:
                    yield gap, one.mark, name
        for at, name in [(0, "the lower edge"), (face.height, "the upper edge"), *((j.at, j.mark) for j in face.level)]:
            for gap in (one.low - at, at - one.high):
                if 0 < gap < least:
                    yield gap, one.mark, name
        for other in face.near(one.left - least, one.right + least):
            level = other.low < one.high and other.high > one.low
            plumb = other.left < one.right and other.right > one.left
            if level and 0 < other.left - one.right < least:
                yield other.left - one.right, one.mark, other.mark
            if plumb and 0 < other.low - one.high < least:
                yield other.low - one.high, one.mark, other.mark


def _feature(face: Face, upright: bool, at: int) -> str:
    """What a line is wished for at."""
    if not upright and at in face.floors:
        return "floor line"
    for one in face.openings:
        sides = (
            ((one.left, "left jamb"), (one.right, "right jamb")) if upright else ((one.low, "sill"), (one.high, "head"))
        )
        for side, name in sides:
            if side == at:
                return f"{name} of {one.mark}"
    return f"middle of {next((o.mark for o in face.openings if o.left + o.right == 2 * at), 'an opening')}"


def _shape_price(through: ElevationLayout, stopped: ElevationLayout) -> str:
    """How many more panels are no rectangles where lines stop."""
    few, many = (sum(not panel.is_rectangle for panel in one.panels) for one in (through, stopped))
    return f"; {_count(many - few, 'more panel')} cut to a shape other than a rectangle" if many > few else ""


def _missed_price(through: ElevationLayout, stopped: ElevationLayout) -> str:
    """How many more wanted places have no whole line where lines stop."""
    more = stopped.score.missed - through.score.missed
    return f"; {_count(more, 'more wanted line')} missing or broken" if more > 0 else ""


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}{'s' * (number != 1)}"


def _name(panels: list[Panel]) -> str:
    """The marks of the first panels, the others counted."""
    more = f" and {len(panels) - _NAMED} more" if len(panels) > _NAMED else ""
    return ", ".join(panel.mark for panel in panels[:_NAMED]) + more
