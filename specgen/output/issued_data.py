"""The state of a project as the manifest of its package keeps it, and read from it again, whatever stands there."""

from collections.abc import Callable, Iterator
from typing import Any, TypeVar

from specgen.model.finding import Severity, Verdict
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.state import ArticlePrint, DocumentPrint, Figure, OpenField, OwedDocument, Said, State
from specgen.reading.attached_file import USE_OF_ATTACHMENT

Entry = TypeVar("Entry")


class NoState(Exception):
    """The data are none that a state was kept in; says at which place, and what should stand there."""


def write_state(state: State) -> dict[str, Any]:
    """The data of a state, findings aside: they stand in the manifest as a check tells them."""
    return {
        "revision": state.revision,
        "date": state.date,
        "whole": state.whole,
        "walls": [{"wall": mark, "verdict": verdict} for mark, verdict in state.verdicts.items()],
        "fields": {path: _write_said(said) for path, said in state.fields.items()},
        "limits": {row: {**said._asdict(), "source": source} for row, (said, source) in state.limits.items()},
        "results": [
            {"calculation": name, "member": member, "title": title, **said._asdict()}
            for (name, member), (said, title) in state.results.items()
        ],
        "times": [
            {"what": what, "member": member, "title": title, **said._asdict()}
            for (what, member), (said, title) in state.times.items()
        ],
        "open": [{"path": path, **item._asdict()} for path, item in state.open.items()],
        "owed": [{"document": one.name, "owed_by": one.owed_by, "subjects": list(one.subjects)} for one in state.owed],
        "documents": {
            name: {"title": title, "articles": [{**a._asdict(), "blocks": list(a.blocks)} for a in articles]}
            for name, (title, articles) in state.documents.items()
        },
    }


def _write_said(said: Said) -> Any:
    """A value in both systems; one text where they are the same."""
    return said.ip if said.ip == said.si else said._asdict()


def read_state(data: dict[str, Any]) -> State:
    """The state kept in the data of a manifest; raises NoState."""
    top = _Place(data, "")
    return State(
        project=top.text("project"),
        revision=top.text("revision"),
        date=top.text("date"),
        whole=top.flag("whole"),
        draft=top.flag("draft"),
        fields={path: _read_said(place) for path, place in top.members("fields")},
        limits={row: Figure(_read_pair(place), place.text("source")) for row, place in top.members("limits")},
        findings=dict(_read_findings(top)),
        verdicts={wall.text("wall"): str(wall.choice("verdict", Verdict)) for wall in top.entries("walls")},
        results={
            (one.text("calculation"), one.text("member")): Figure(_read_pair(one), one.text("title"))
            for one in top.entries("results")
        },
        times={
            (one.text("what"), one.text("member")): Figure(_read_pair(one), one.text("title"))
            for one in (top.entries("times") if "times" in data else ())
        },
        open={one.text("path"): OpenField(one.text("label"), one.text("owed_by")) for one in top.entries("open")},
        owed=tuple(
            OwedDocument(one.text("document"), one.text("owed_by"), one.texts("subjects"))
            for one in top.entries("owed")
        ),
        documents={name: _read_document(place) for name, place in top.members("documents")},
        attached={
            one.text("use"): one.text("sha256")
            for one in top.entries("input")
            if one.text("use").startswith(USE_OF_ATTACHMENT)
        },
    )


def _read_findings(top: "_Place") -> Iterator[tuple[tuple[str, str], tuple[Severity, str]]]:
    """What each clause tells of each subject; a package of an earlier kind tells the same of all of them."""
    apart = {
        (one.text("code"), subject): one.text("message")
        for one in (top.entries("told_apart") if "told_apart" in top.value else ())
        for subject in one.texts("subjects")
    }
    for finding in top.entries("findings"):
        code, severity = finding.text("rule") + finding.text("clause"), finding.choice("severity", Severity)
        for subject in finding.texts("subjects"):
            yield (code, subject), (severity, apart.get((code, subject), finding.text("message")))


def _read_said(place: "_Place") -> Said:
    return Said(place.value, place.value) if isinstance(place.value, str) else _read_pair(place)


def _read_pair(place: "_Place") -> Said:
    return Said(place.text("ip"), place.text("si"))


def _read_document(place: "_Place") -> DocumentPrint:
    articles = (
        ArticlePrint(one.text("number"), one.text("title"), one.texts("blocks")) for one in place.entries("articles")
    )
    return DocumentPrint(place.text("title"), tuple(articles))


class _Place:
    """A value of the data and its path; what is asked of it is there and of its kind, or NoState is raised."""

    def __init__(self, value: Any, path: str) -> None:
        self.value, self.path = value, path
        if isinstance(value, str) and find_forbidden(value):
            raise NoState(f"{path} holds a character that cannot be printed")

    def text(self, name: str) -> str:
        """The text of an entry."""
        return self._of(name, str, "text")

    def flag(self, name: str) -> bool:
        """Yes or no."""
        return self._of(name, bool, "yes or no")

    def texts(self, name: str) -> tuple[str, ...]:
        """A list of texts."""
        entries = self._of(name, list, "list")
        return tuple(_Place({"entry": one}, f"{self.path}{name}.").text("entry") for one in entries)

    def choice(self, name: str, choices: Callable[[str], Entry]) -> Entry:
        """A text that is one of a few."""
        try:
            return choices(self.text(name))
        except ValueError:
            raise NoState(f"{self.path}{name} is no word known there") from None

    def entries(self, name: str) -> list["_Place"]:
        """The entries of a list."""
        return [_Place(entry, f"{self.path}{name}[{n}].") for n, entry in enumerate(self._of(name, list, "list"))]

    def members(self, name: str) -> Iterator[tuple[str, "_Place"]]:
        """The entries of a mapping by name."""
        for key, entry in self._of(name, dict, "mapping").items():
            yield _Place(key, f"{self.path}{name}").value, _Place(entry, f"{self.path}{name}.{key}.")

    def _of(self, name: str, kind: type[Entry], said: str) -> Entry:
        if not isinstance(self.value, dict):
            raise NoState(f"{self.path.rstrip('.') or 'it'} is no mapping")
        value = _Place(self.value.get(name), f"{self.path}{name}").value
        if not isinstance(value, kind):
            raise NoState(f"{self.path}{name} is no {said}")
        return value
