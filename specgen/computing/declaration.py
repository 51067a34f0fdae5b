"""What is known of one input of a calculation: its key, its line in the working, its field, and what it must be."""

from collections.abc import Callable
from dataclasses import MISSING
from fractions import Fraction
from typing import Any, NamedTuple

from specgen.computing.guards import (
    require_in_range,
    require_no_negative_percent,
    require_not_negative,
    require_percentage,
    require_positive,
)
from specgen.model.absence import Absent
from specgen.model.field import Path, bind_path
from specgen.model.project import Project, View
from specgen.model.source import Source
from specgen.model.working import METHOD
from specgen.quantities.number import tell_number
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Argument, Ask

# The units a quantity is computed in, inches and pounds first; an input may name others.
UNITS = {
    "angle": ("deg", "deg"),
    "area": ("ft2", "m2"),
    "area_rate": ("ft2/h", "m2/h"),
    "derate": ("%/1000 ft", "%/300 m"),
    "distance": ("ft", "m"),
    "expansion": ("/F", "/C"),
    "film": ("mil", "um"),
    "flow": ("scfm", "L/s"),
    "heat_transfer": ("W/(m2.K)", "W/(m2.K)"),
    "irradiance": ("W/m2", "W/m2"),
    "length": ("in", "mm"),
    "percent": ("%", "%"),
    "pressure": ("psi", "kPa"),
    "speed": ("mph", "m/s"),
    "temperature": ("F", "C"),
    "temperature_difference": ("F apart", "C apart"),
    "thermal_resistance": ("R", "RSI"),
    "time": ("h", "h"),
    "viscosity": ("mm2/s", "mm2/s"),
    "voltage": ("kV", "kV"),
    "volume": ("gal", "L"),
}
# The origin of what is taken from an elevation and its openings.
MEASURED = "measured on the elevation"
# Lengths by what they measure; a key takes any length for them.
LENGTHS = ("distance", "film")


class Declaration(NamedTuple):
    """What is known of one input; the attribute it declares is its key."""

    default: Any  # MISSING for a key that must be given
    symbol: str = ""  # in the working; empty for an input that is no line of it
    title: str = ""  # the words of its line
    dimension: str = ""  # as of a Key
    field: str = ""  # the field that gives it in a project, stars for the member; it may lead through references
    about: str = ""  # what `calc` says of the key; its title if empty
    units: tuple[str, str] = ("", "")
    key: bool = True  # whether `calc` asks for it
    preferred: str = ""  # the field that goes before it where a project gives that one
    optional: bool = False  # a project may do without it
    computed: str = ""  # the calculation that gives it in a project
    measured: str = ""  # what is measured on the elevation where a project does not give the field
    limit: str = ""  # the row of the limits that gives it, or its default
    says: str = ""  # what the source of the limit says; limits of the calculation in braces
    origin: str = METHOD  # of the line: the field or the calculation, words where neither tells it
    source: Source | None = None  # of the default
    default_text: str = ""  # the default of the key, where it is no plain figure
    choices: tuple[str, ...] = ()
    read: Callable[[str], Any] | None = None
    bare: str = ""
    least: Any = None  # 0 for what is not negative
    above: Any = None  # 0 for what is divided by; a percentage is then 100 at most
    within: tuple[Any, Any] | None = None  # the range of the method, ends included
    span: tuple[str, str] | str = ""  # what `calc` takes, ends included, or the field of that range; that of `field`
    also: tuple[str, ...] = ()  # names that `calc` takes besides its own and that of the field

    def key_named(self, name: str) -> Argument:
        """The key of `calc`."""
        about, default = self.about or self.title, self.default_text or self._default_text("ip")
        si = self._default_text("si") or "" if self.limit else ""
        span = self.within or self.span or self.field
        fields = (path for path in (self.field, self.span) if isinstance(path, str))
        also = (*self.also, *(path.rpartition(".")[2] for path in fields))
        names = tuple(dict.fromkeys(other for other in also if other.isidentifier() and other != name))
        return Argument(name, self.dimension, about, default, self.choices, self.read, self.bare, si, span, names)

    def _default_text(self, system: str) -> str | None:
        default = find_limit(self.limit, system=system).value if self.limit else self.default
        if default is MISSING:
            return None
        if isinstance(default, Quantity):
            return f"{tell_number(default.to(default.unit))} {default.unit.removesuffix(' apart')}"
        if isinstance(default, bool):
            return "yes" if default else "no"
        if not isinstance(default, int | Fraction):
            return default or ""
        return f"{tell_number(Fraction(default))}{'%' if self.dimension == 'percent' else ''}"

    def check(self, name: str, value: Any) -> None:
        """Raises Refused where a value is not what the input may be."""
        if self.above is not None:
            (require_percentage if self.dimension == "percent" else require_positive)(name, value)
        elif self.within is not None:
            require_in_range(name, value, *self.within)
        elif self.least is not None:
            (require_no_negative_percent if self.dimension == "percent" else require_not_negative)(name, value)

    def value_in(self, view: View, ask: Ask) -> Any:
        """The value for a member of a project; raises Absent where the project does not give it."""
        if self.computed:
            return ask(self.computed).quantity
        field = self.preferred if self.is_preferred(view.path, view.project) else self.field
        *links, name = bind_path(field, view.path)
        section: Any = view.project.root()
        for link in links:
            section = section[link]
        try:
            return section[name]
        except Absent as absent:
            if absent.path != (*section.path, name):
                raise
            return self._value_without_field(absent, ask)

    def origin_in(self, path: Path, project: Project) -> str:
        """Where its value for a member comes from."""
        if self.is_measured(path, project):
            return MEASURED
        return self.preferred if self.is_preferred(path, project) else self.origin

    def is_preferred(self, path: Path, project: Project) -> bool:
        """Whether the project gives the field that goes before its own."""
        return bool(self.preferred) and project.is_given(bind_path(self.preferred, path))

    def is_measured(self, path: Path, project: Project) -> bool:
        """Whether its value for a member is measured, as the project gives no field for it."""
        return bool(self.measured) and project.get(bind_path(self.field, path)) is None

    def _value_without_field(self, absent: Absent, ask: Ask) -> Any:
        """What stands in for a field that a project does not give; raises Absent."""
        if self.measured:
            try:
                return ask(self.measured)
            except Absent as other:
                raise Absent(*absent.paths, *other.paths) from None
        if self.optional:
            return None
        raise absent
