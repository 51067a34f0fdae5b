"""The inputs of a calculation, each declared once: its key, its line in the working, its field, and what it must be.

Keys, reading from a project, checks, the lines of the working and their origins all follow from the declaration.
"""

from collections.abc import Callable, Mapping
from dataclasses import MISSING
from functools import partial
from types import MappingProxyType
from typing import Any, ClassVar, Self, TypeVar, dataclass_transform

from specgen.computing.declaration import LENGTHS, UNITS, Declaration
from specgen.model.absence import read_all
from specgen.model.project import View
from specgen.model.source import InForce, Source
from specgen.model.working import METHOD, InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit, format_limit
from specgen.resolving.provider import Argument, Ask, Provider

NO_ORIGINS: Mapping[str, str] = MappingProxyType({})


def given_input(
    symbol: str, title: str, dimension: str, field: str = "", about: str = "", *, default: Any = MISSING, **more: Any
) -> Any:
    """Declares an input that keys or a project give; `more` as in Declaration, `units` those of its dimension."""
    units = more.pop("units", UNITS.get(dimension, ("", "")))
    dimension = "length" if dimension in LENGTHS else dimension
    more["origin"] = field or more.get("computed") or more.get("origin", METHOD)
    return Declaration(default, symbol, title, dimension, field, about, units, **more)


def option_input(about: str, choices: tuple[str, ...] = (), *, dimension: str = "word", **more: Any) -> Any:
    """Declares what is no line of the working: a word, a yes or no, a text of its own form (by `read`), a member."""
    return given_input("", "", dimension, about=about, choices=choices, **more)


def limit_input(
    limit: str,
    symbol: str = "",
    title: str = "",
    *,
    says: str = "",
    units: tuple[str, str] = UNITS["length"],
    init: bool = False,
) -> Any:
    """Declares a limit the calculation rests on, by its row: an InForce; `init` tells the type checker so."""
    return Declaration(symbol=symbol, title=title, units=units, limit=limit, says=says, key=False, default=MISSING)


@dataclass_transform(
    kw_only_default=True, frozen_default=True, field_specifiers=(given_input, option_input, limit_input)
)
class Declared:
    """Gathers what a class declares; the type checker takes the class for a frozen one given by keyword.

    No method is made for each class, as a dataclass would: that is paid for at every start.
    """

    declared: ClassVar[Mapping[str, Declaration]] = {}

    def __init_subclass__(cls) -> None:
        own = {name: one for name, one in vars(cls).items() if isinstance(one, Declaration)}
        cls.declared = {**cls.declared, **own}


class Inputs(Declared):
    """What a calculation is computed from; `system` is ip or si, `limits` hands out the limits in force by row."""

    system: str = "ip"
    limits: Callable[[str], InForce] = find_limit
    origins: Mapping[str, str] = NO_ORIGINS  # of the inputs of a project, as it gives them

    def __init__(
        self,
        *,
        system: str = "ip",
        limits: Callable[[str], InForce] | None = None,
        origins: Mapping[str, str] = NO_ORIGINS,
        **given: Any,
    ) -> None:
        """Raises Refused where a value is not what its input may be, TypeError where one is missing or not declared.

        Without `limits` they are those of the rows in the unit system.
        """
        vars(self).update(system=system, limits=limits or partial(find_limit, system=system), origins=origins)
        if unknown := given.keys() - self.declared.keys():
            raise TypeError(f"{type(self).__name__} has no input {', '.join(sorted(unknown))}")
        for name, one in self.declared.items():
            value = given.get(name, one.default)
            if value is None or value is MISSING:
                value = self._usual(name, one, value)
            else:
                one.check(name, value)
            setattr(self, name, value)

    def _usual(self, name: str, one: Declaration, value: Any) -> Any:
        """What stands for an input that is not given: the limit of its row, or none where it may be left out."""
        if one.limit and not one.field:
            limit = self.limits(one.limit)
            return limit.value if one.key else limit
        if value is MISSING and not one.limit:
            raise TypeError(f"{type(self).__name__} needs {name}")
        return None

    def change(self, **changed: Any) -> Self:
        """The same inputs with some changed."""
        return type(self)(**(vars(self) | changed))

    @classmethod
    def keys(cls, *first: str) -> tuple[Argument, ...]:
        """The keys of `calc`, some before the others."""
        names = dict.fromkeys((*first, *cls.declared))
        return tuple(cls.declared[name].key_named(name) for name in names if cls.declared[name].key)

    @classmethod
    def reads(cls) -> tuple[str, ...]:
        """The fields a project must give, section by section."""
        fields = dict.fromkeys(one.field for one in cls.declared.values() if one.field and not one.optional)
        sections = list(dict.fromkeys(field.partition(".")[0] for field in fields))
        return tuple(sorted(fields, key=lambda field: sections.index(field.partition(".")[0])))

    @classmethod
    def needs(cls) -> tuple[str, ...]:
        """The calculations that a project's inputs come from."""
        return tuple(one.computed for one in cls.declared.values() if one.computed)

    @classmethod
    def from_project(cls, view: View, ask: Ask, **more: Any) -> Self:
        """The inputs of a member of a project, with `more` that no field gives. Raises Absent, Refused."""
        wanted = {n: one for n, one in cls.declared.items() if n not in more and (one.field or one.computed)}
        # What another calculation waits for is told before what this one does.
        computed_first = sorted(wanted.items(), key=lambda item: not item[1].computed)
        read = read_all(*(partial(one.value_in, view, ask) for _, one in computed_first))
        values = dict(zip((name for name, _ in computed_first), read, strict=True))
        project = view.project
        origins = {name: one.origin_in(view.path, project) for name, one in wanted.items()}
        limits = partial(find_limit, project=project)
        return cls(system=project.system, limits=limits, origins=origins, **values, **more)

    def origin(self, name: str) -> str:
        """Where an input comes from in a project: a field, a calculation, or words."""
        return self.declared[name].origin

    def limit_source(self, name: str) -> Source:
        """The source in force of the limit behind an attribute, with what it says."""
        one = self.declared[name]
        if not one.says:
            return self.limits(one.limit).source
        # A paper of the project that states the figure says nothing of the method.
        return find_limit(one.limit, system=self.system).source.quote(one.says.format(**self._figures()))

    def _figures(self) -> dict[str, str]:
        """The limits as a sentence tells them, by attribute."""
        found = {name: one.limit for name, one in self.declared.items() if one.limit}
        return {name: format_limit(self.limits(limit).value) for name, limit in found.items()}

    def rows(self, *names: str) -> tuple[InputRow, ...]:
        """The lines of these inputs, or of all, in the unit system of the sum; none for one that is left out."""
        wanted = [name for name in names or self.declared if self.declared[name].symbol]
        return tuple(self.row(name) for name in wanted if getattr(self, name) is not None)

    def row(self, name: str) -> InputRow:
        """The line of one input."""
        one, value = self.declared[name], getattr(self, name)
        source = self._row_source(name, one, value) if one.limit or one.source else None
        value = value.value if isinstance(value, InForce) else value
        unit = one.units[0 if self.system == "ip" else 1]
        number = value.number(unit) if isinstance(value, Quantity) else float(value)
        origin = self.origins.get(name, one.origin)
        return InputRow(one.symbol, one.title, number, unit, origin, source, one.limit if source else "")

    def _row_source(self, name: str, one: Declaration, value: Any) -> Source | None:
        """The source of a limit or of a default; none for a figure of the project or of the user."""
        if not one.limit:
            return one.source if value == one.default else None
        usual = value if isinstance(value, InForce) else self.limits(one.limit).value
        return self.limit_source(name) if value == usual and not one.field else None


GivenInputs = TypeVar("GivenInputs", bound=Inputs)


def provide(
    title: str,
    inputs: type[GivenInputs],
    compute: Callable[[GivenInputs], Working],
    *,
    each: tuple[str, ...] = (),
    by_keys: bool = True,
    for_member: Callable[[Any, Ask], Any] | None = None,
    reads: tuple[str, ...] = (),
    keys_first: tuple[str, ...] = (),
    **more: Any,
) -> Provider:
    """A calculation from its declared inputs, named as its function; without fields it takes its figures from keys.

    `for_member` computes it where a project gives more than its fields, which `reads` names; `by_keys` is no for one
    that needs a project; `keys_first` are the keys that stand before the others.
    """
    reads = (*inputs.reads(), *reads)
    member = for_member or (lambda view, ask: compute(inputs.from_project(view, ask)))
    return Provider(
        name=compute.__name__.replace("_", "-"),
        title=title,
        each=each,
        compute=member if reads else None,
        needs=inputs.needs() if reads else (),
        reads=reads,
        direct=(lambda **keys: compute(inputs(**keys))) if by_keys else None,
        make_keys=partial(inputs.keys, *keys_first) if by_keys else tuple,
        **more,
    )
