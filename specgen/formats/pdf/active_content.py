"""What acts in a PDF that is bound in: named, so that it can be told, and taken out."""

from collections.abc import Iterator
from typing import Any

import pikepdf
from pikepdf import Pdf
from pikepdf.sanitize import Sanitizer

# What an action of this kind, or an annotation of that one, is to a reader.
_ACTIONS = {
    "/JavaScript": "scripts",
    "/Launch": "launch actions",
    "/SubmitForm": "form actions",
    "/ImportData": "form actions",
    "/ResetForm": "form actions",
    "/GoToE": "embedded files",
    "/Rendition": "sound and film",
    "/Movie": "sound and film",
    "/Sound": "sound and film",
    "/RichMediaExecute": "sound and film",
}
_ANNOTATIONS = {
    "/FileAttachment": "embedded files",
    "/Movie": "sound and film",
    "/Sound": "sound and film",
    "/Screen": "sound and film",
    "/RichMedia": "sound and film",
    "/3D": "3D models",
}
_NAMES = {"/JavaScript": "scripts", "/EmbeddedFiles": "embedded files", "/Renditions": "sound and film"}
_MOST_CHAINED = 50
_MOST_FIELDS = 100_000


def list_active(paper: Pdf) -> tuple[str, ...]:
    """What acts in a PDF, in words, each once: `scripts`, `embedded files`."""
    return tuple(dict.fromkeys(word for word in _find_all(paper) if word))


def disarm(paper: Pdf) -> None:
    """Take out what acts, and draw what annotations and filled fields show into the pages that bear them."""
    clean = Sanitizer().remove_javascript().remove_external_access().remove_attachments().remove_multimedia()
    clean.remove_private_app_data().remove_thumbnails().apply(paper)
    if any("/Annots" in page.obj for page in paper.pages):
        form = _as_dictionary(paper.Root.get("/AcroForm"))
        if form.get("/NeedAppearances"):
            paper.generate_appearance_streams()
        paper.flatten_annotations("all")


def _find_all(paper: Pdf) -> Iterator[str]:
    root = paper.Root
    yield from _find_actions(root)
    names = _as_dictionary(root.get("/Names"))
    yield from (word for name, word in _NAMES.items() if name in names)
    yield from _find_in_form(_as_dictionary(root.get("/AcroForm")))
    for page in paper.pages:
        yield from _find_actions(page.obj)
        for annotation in _as_list(page.obj.get("/Annots")):
            found = _as_dictionary(annotation)
            yield _ANNOTATIONS.get(str(found.get("/Subtype")), "")
            yield from _find_actions(found)


def _find_in_form(form: Any) -> Iterator[str]:
    """What acts in the fields of a form, and the signature it bears."""
    waiting, seen = _as_list(form.get("/Fields")), 0
    while waiting and seen < _MOST_FIELDS:
        entry = _as_dictionary(waiting.pop())
        seen += 1
        yield from _find_actions(entry)
        if entry.get("/FT") == "/Sig" and "/V" in entry:
            yield "a digital signature"
        waiting += _as_list(entry.get("/Kids"))
    if "/XFA" in form:
        yield "a form of another kind (XFA)"


def _find_actions(holder: Any) -> Iterator[str]:
    """The actions of a dictionary: on opening, on being pressed, and on other events, with those that follow them."""
    events = _as_dictionary(holder.get("/AA"))
    waiting = [holder.get("/OpenAction"), holder.get("/A"), *(events[name] for name in events)]
    for _ in range(_MOST_CHAINED):
        if not waiting:
            return
        action = _as_dictionary(waiting.pop())
        yield _ACTIONS.get(str(action.get("/S")), "")
        following = action.get("/Next")
        waiting += [following] if _is_dictionary(following) else _as_list(following)


def _is_dictionary(value: Any) -> bool:
    return isinstance(value, pikepdf.Dictionary)


def _as_dictionary(value: Any) -> Any:
    """The value where it is a dictionary, as it should be, else an empty one."""
    return value if _is_dictionary(value) else {}


def _as_list(value: Any) -> list[Any]:
    return list(value) if isinstance(value, pikepdf.Array) else []
