"""The layers of drawings that are bound in: those that are off stay off."""

from typing import Any

from pikepdf import Array, Dictionary, Pdf


class Layers:
    """The layers of a set, to which those of papers are added."""

    def __init__(self, whole: Pdf) -> None:
        self._whole = whole
        self._taken: set[int] = set()

    def take_over(self, paper: Pdf | None) -> None:
        """Add the layers of a paper whose pages stand in the set by now; those of one paper are added once."""
        layers = None if paper is None else paper.Root.get("/OCProperties")
        if not isinstance(layers, Dictionary) or id(paper) in self._taken:
            return
        self._taken.add(id(paper))
        every = _list_of(layers, "/OCGs")
        usual = layers.get("/D")
        setup = usual if isinstance(usual, Dictionary) else Dictionary()
        off = every if setup.get("/BaseState") == "/OFF" else _list_of(setup, "/OFF")
        on = {layer.objgen for layer in _list_of(setup, "/ON")}
        ours = self._whole.Root.get("/OCProperties")
        if ours is None:
            ours = Dictionary(OCGs=Array(), D=Dictionary(OFF=Array(), Order=Array()))
            self._whole.Root["/OCProperties"] = ours
        self._add(ours, "/OCGs", every)
        self._add(ours.D, "/Order", every)
        self._add(ours.D, "/OFF", [layer for layer in off if layer.objgen not in on])

    def _add(self, holder: Any, name: str, layers: list[Any]) -> None:
        if name not in holder:
            holder[name] = Array()
        for layer in layers:
            holder[name].append(self._whole.copy_foreign(layer))


def _list_of(holder: Any, name: str) -> list[Any]:
    """The layers that a list names; only those that stand as objects of their own, as they must."""
    found = holder.get(name)
    return [layer for layer in found if layer.is_indirect] if isinstance(found, Array) else []
