"""What a template sees of a project: sections, members and collections whose fields print themselves."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.field import Node, Path


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

    @property
    def open(self) -> bool:
        """Whether nothing at all is given below this section."""
        depth = len(self._path)
        return not any(path[:depth] == self._path for path in self._context.project.values)


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

    @property
    def open(self) -> bool:
        """Whether the collection is absent."""
        return self._path not in self._context.project.members
