"""The closed set of blocks a document is made of; writers handle these and nothing else."""

from dataclasses import dataclass
from typing import Literal

from specgen.model.source import Source

# The words of the paragraph that closes a section of a specification.
END_OF_SECTION = "END OF SECTION"


@dataclass(frozen=True, slots=True)
class Text:
    """Plain words."""

    text: str


@dataclass(frozen=True, slots=True)
class Value:
    """A value of the project or of the trade; `open` is one still to be given, `about` says what it is when printed
    on its own, `asks` is the dotted path of the field that an open one waits for.

    `row` is the row of the limits it is of, `full` the text with its unit where the page prints the unit apart.
    `lettered` has the letter of its source right behind it: one of a list of figures.
    """

    text: str
    source: Source | None = None
    open: bool = False
    about: str = ""
    asks: str = ""
    row: str = ""
    full: str = ""
    lettered: bool = False


@dataclass(frozen=True, slots=True)
class Strong:
    """Words in bold."""

    children: tuple["Inline", ...]


@dataclass(frozen=True, slots=True)
class Emphasis:
    """Words in italics."""

    children: tuple["Inline", ...]


@dataclass(frozen=True, slots=True)
class Blank:
    """A blank to fill in; `kind` is text or date, `label` names it for a screen reader.

    `field` is what a record calls that which is written into it, and the row of the form: `log.air.c3`. One that no
    record holds begins with `form`; each is unique in its document.
    """

    label: str
    kind: Literal["text", "date"] = "text"
    field: str = ""

    @property
    def name(self) -> str:
        """Its name in the document, `log.air.c3`; empty where it has none."""
        return self.field


@dataclass(frozen=True, slots=True)
class CheckBox:
    """A check box with its label: one choice, `value`, of its `field`, as `E1` of `log.elevation.a1`."""

    label: str
    field: str = ""
    value: str = ""
    ticked: bool = False  # as a record says

    @property
    def name(self) -> str:
        """Its name in the document, `log.elevation.a1.E1`; empty where it has none."""
        return f"{self.field}.{self.value}" if self.field else ""


@dataclass(frozen=True, slots=True)
class Ref:
    """A reference to a part or article by its title; `number` is filled in when the tree is numbered.

    With `else_named` its title stands where the document has no such part or article.
    """

    target: str
    number: str = ""
    else_named: bool = False


@dataclass(frozen=True, slots=True)
class Formula:
    """A symbol or an expression of a working within a line: `T_a`, `2 * S_e`."""

    text: str


@dataclass(frozen=True, slots=True)
class Letters:
    """The letters of the sources of a sentence or cell, `a, c`; they stand at its end, each once."""

    text: str


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead to another file of the package, `target`; `block` is the place of a block in the document there.

    Formats that are printed show the words alone.
    """

    text: str
    target: str
    block: int | None = None


Inline = Text | Value | Strong | Emphasis | Blank | CheckBox | Ref | Formula | Letters | Link
Inlines = tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """A heading of the first level; in a three-part document `number` is `PART 1`."""

    title: Inlines
    number: str = ""


@dataclass(frozen=True, slots=True)
class Article:
    """A heading of the second level; in a three-part document `number` is `1.01`."""

    title: Inlines
    number: str = ""


@dataclass(frozen=True, slots=True)
class Item:
    """A numbered item: `level` counts from 0, `run` is the number of the list, as each list starts over."""

    content: Inlines
    level: int
    run: int
    number: str = ""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running text."""

    content: Inlines


@dataclass(frozen=True, slots=True)
class Note:
    """A framed paragraph, such as a warning; a `hold` stops the work until someone releases it."""

    content: Inlines
    hold: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """A table with one header row; `widths` are shares of the page width that add up to 100, `figures` the places of
    columns that stand to the right. A row of one cell stands across all columns, and heads the rows below it."""

    header: tuple[Inlines, ...]
    rows: tuple[tuple[Inlines, ...], ...]
    widths: tuple[int, ...]
    caption: Inlines = ()
    number: str = ""
    figures: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Equation:
    """One step of a working: name, formula, formula with figures, and result with unit."""

    name: str
    symbol: str
    expression: str
    substitution: str
    result: str
    unit: str = ""

    @property
    def title(self) -> str:
        """The name as the head of its lines."""
        return self.name[:1].upper() + self.name[1:]

    @property
    def plain(self) -> str:
        """The line in plain signs, `W_c = D_c / S_c = 0.16 / 0.5 = 0.32 in`: as a screen reader reads it."""
        figures = () if self.substitution == self.result else (self.substitution,)
        return " = ".join((self.symbol, self.expression, *figures, f"{self.result} {self.unit}".strip()))


@dataclass(frozen=True, slots=True)
class Signature:
    """Lines for the signatures of parties: role and, where known, name."""

    parties: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Box:
    """A ruled box: its title, and lines or a table within it."""

    title: str
    lines: tuple[Inlines, ...] = ()
    table: Table | None = None


@dataclass(frozen=True, slots=True)
class ReviewBoxes:
    """Boxes with what the contractor states, beside one of 3 by 3 in that stays free for the reviewer's stamp."""

    stated: tuple[Box, ...]
    stamp: Box


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing: SVG 1.1 as text, its size on paper in millimeters, and what it shows in words and numbers."""

    name: str  # of its template; with the marks of its members unique in the document
    caption: Inlines
    svg: str
    alt: str
    width: float
    height: float
    number: str = ""


@dataclass(frozen=True, slots=True)
class Contents:
    """The table of contents: parts and articles."""


@dataclass(frozen=True, slots=True)
class Break:
    """A new page."""


Block = (
    Part | Article | Item | Paragraph | Note | Table | Equation | Figure | Signature | ReviewBoxes | Contents | Break
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """A document ready to be written."""

    id: str  # such as D08
    title: str  # as it prints
    project: str  # name of the project
    facts: tuple[tuple[str, str], ...]  # the entries of its title block: label and text
    blocks: tuple[Block, ...]  # the content, numbered
    legend: tuple[tuple[str, str], ...]  # source marks and what they stand for
    firm: str = ""  # who prepares it
    running: tuple[str, str] = ("", "")  # the line every page repeats above: left and right
    foot: str = ""  # the line every page repeats below, beside the count of pages
    numbering: Literal["three_part", "plain"] = "plain"  # of headings and items
    draft: bool = False  # whether it is marked as a draft
    date: str = ""  # of the package, as it prints; empty if not given
    landscape: bool = False  # whether its pages lie on their side
    used_for: str = ""  # what a reader does by it
    digests: tuple[str, ...] = ()  # kind and digest of each block, taken before numbers were filled in
    changed: frozenset[int] = frozenset()  # places of the blocks that differ from the issued set

    @property
    def file_name(self) -> str:
        """The name of its files without ending: id and title in lower case."""
        return f"{self.id}-{self.title.lower().replace(' ', '-').replace(',', '')}"
