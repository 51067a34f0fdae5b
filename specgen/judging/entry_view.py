"""Views of an entry of the site record: one that reads it at once, and one that notes what is read of it."""

from typing import TYPE_CHECKING, Any

from specgen.model.field import Path
from specgen.model.project import Project, View
from specgen.model.record import Entry

# What a value is that may name a member of another collection: a mark, or a list of them.
_MAY_NAME = (str, tuple)


class EntryView(View):
    """The view of one entry: what the project's own view of its path gives, without the way there."""

    __slots__ = ("entry",)

    def __init__(self, project: Project, entry: Entry) -> None:
        # The path is made where it is asked for: of a long record that is seldom.
        node = project.schema.root.children[entry.collection].star
        assert node is not None
        self.project, self.node, self.entry = project, node, entry

    @property
    def path(self) -> Path:  # type: ignore[override]
        """Its path in the project."""
        return self.entry.path

    def __getitem__(self, name: str) -> Any:
        """The value of a field; raises Absent where it was left blank."""
        value = self.entry.values.get(name)
        if value is not None and value.__class__ not in _MAY_NAME:
            return value
        child = self.node.children.get(name)
        if child is None or child.field is None:
            raise AttributeError(f"{self.entry.collection} has no field {name!r}")
        if value is None:
            return self.project.value_of(child.field, (*self.entry.path, name))
        return self.project.link(child.field, value)

    if not TYPE_CHECKING:
        __getattr__ = __getitem__

    def get(self, name: str) -> Any:
        """The value of a field below this view by dotted name, or None if it is absent."""
        return self.project.get(self.entry.path + tuple(name.split(".")))


class WatchedEntry(EntryView):
    """The view of an entry that notes which of its fields are read, in their order.

    `by_itself` tells that the entry was asked which one it is: then another with the same values may come to another
    end, as where the one before it is sought.
    """

    __slots__ = ("by_itself", "led_by", "read")

    def __init__(self, project: Project, entry: Entry) -> None:
        super().__init__(project, entry)
        self.read: dict[str, None] = {}
        self.by_itself = False
        self.led_by: tuple[str, ...] = ()  # what had been read when it was asked which entry it is

    def __getitem__(self, name: str) -> Any:
        """As of any entry."""
        self.read[name] = None
        return super().__getitem__(name)

    if not TYPE_CHECKING:
        __getattr__ = __getitem__

    def get(self, name: str) -> Any:
        """As of any entry."""
        self.read[name.partition(".")[0]] = None
        return super().get(name)

    @property
    def path(self) -> Path:  # type: ignore[override]
        """Its path in the project: whoever asks for it, asks which entry this is."""
        if not self.by_itself:
            self.by_itself, self.led_by = True, tuple(self.read)
        return self.entry.path
