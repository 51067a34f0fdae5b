"""What a template sees of a project: sections, members and collections whose fields print themselves."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.documents.context import DocumentContext, TableView
from specgen.model.field import Node, Path, dotted_path


class Page:
    """A section or member as a template sees it: `wall.insulation.thickness` prints itself."""

    def __init__(self, context: DocumentContext, node: Node, path: Path) -> None:
        self._context, self._node, self._path = context, node, path

    @property
    def mark(self) -> str:
        """The key on the drawings."""
        return self._path[-1] if self._path else ""

    def __getattr__(self, name: str) -> Any:
        node = self._node.children.get(name)
        if node is None:
            raise AttributeError(f"there is no field {'.'.join((*self._path, name))}")
        path = self._path + (name,)
        if node.field is None:
            return Pages(self._context, node, path) if node.star is not None else Page(self._context, node, path)
        if node.field.kind == "reference":
            linked = self._context.project.get(path)
            if linked is not None:
                return Page(self._context, linked.node, linked.path)
        return self._context.display(path)

    def __str__(self) -> str:
        return self.mark

    def names_within(self) -> list[str]:
        """The names of its fields and sections."""
        return [*(["mark"] if self.is_member() else []), *self._node.children]

    def has(self, name: Any) -> bool:
        """Whether there is a field or section of this name, or the mark is asked for."""
        return name in self._node.children or (name == "mark" and self.is_member())

    def is_member(self) -> bool:
        """Whether this is a member of a collection, such as a wall, and no section."""
        return len(self._path) > 1 and self._path[:-1] in self._context.project.members

    def dotted(self) -> str:
        """Its path as project files write it."""
        return dotted_path(self._path)

    @property
    def open(self) -> bool:
        """Whether nothing at all is given below this section."""
        return self._path not in self._context.given_sections


class Pages:
    """A collection as a template sees it; an absent one is empty."""

    def __init__(self, context: DocumentContext, node: Node, path: Path) -> None:
        self._context, self._node, self._path = context, node, path

    def __iter__(self) -> Iterator[Any]:
        star = self._node.star
        assert star is not None
        for mark in self._context.project.members.get(self._path, ()):
            path = self._path + (mark,)
            yield self._context.display(path) if star.field is not None else Page(self._context, star, path)

    def __len__(self) -> int:
        return len(self._context.project.members.get(self._path, ()))

    def __getitem__(self, mark: str) -> Any:
        star = self._node.star
        assert star is not None
        return Page(self._context, star, self._path + (str(mark),))

    def get(self, mark: str) -> Any:
        """The member of a mark, or None."""
        return next((entry for entry, name in zip(self, self.names_within(), strict=True) if name == mark), None)

    def names_within(self) -> list[str]:
        """The marks of its members."""
        return list(self._context.project.members.get(self._path, ()))

    @property
    def open(self) -> bool:
        """Whether the collection is absent."""
        return self._path not in self._context.project.members


class Views:
    """The table views by name; `find` builds one, or answers None for a name that no view has.

    Each is built once, when a template first asks for it.
    """

    def __init__(self, names: Callable[[], list[str]], find: Callable[[str], TableView | None]) -> None:
        self._names, self._find = names, find
        self._built: dict[str, TableView | None] = {}

    def names_within(self) -> list[str]:
        """The names of all views."""
        return self._names()

    def get(self, name: str) -> TableView | None:
        """The view of a name, or None."""
        if name not in self._built:
            self._built[name] = self._find(name)
        return self._built[name]
