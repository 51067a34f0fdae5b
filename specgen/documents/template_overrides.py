"""A firm's own templates: a file in its folder overrides the built-in file of the same name."""

import os
import re
from collections.abc import Callable
from itertools import islice
from pathlib import Path
from string import Template as Frame
from typing import TypeVar

from specgen.documents.template_mistakes import Mistake
from specgen.model.problem import Problem, Refused
from specgen.model.suggest import suggest
from specgen.reading.given_file import FileUse, read_given_file

_PARTS = {"title", "style", "kind", "head", "body", "legend"}
# Filled in by the writer of a page: none of ours asks for anything outside itself, whatever a frame or a style says.
_POLICY = '<meta http-equiv="Content-Security-Policy" content="$policy">'
_PAGE = ("page.html", "style.css")
_FOLDERS = ("documents", "changes", "records")
_USE = FileUse("the template", "put a text file in its place", 2_000_000)
_MOST_ENTRIES = 500
Answer = TypeVar("Answer")


def check_folder(own: Path, ours: Path) -> None:
    """Check a folder of overrides; raises Refused if it is no folder or holds a file that overrides nothing."""
    if not own.is_dir():
        raise Refused(Problem("this is no folder of templates", "give a folder that holds `documents`", "", str(own)))
    known = [*_PAGE, *(f"{kind}/{f.name}" for kind in _FOLDERS for f in sorted((ours / kind).glob("*.md.j2")))]
    entries = list(islice(own.rglob("*"), _MOST_ENTRIES + 1))
    if len(entries) > _MOST_ENTRIES:
        message = f"the folder holds more than {_MOST_ENTRIES} files and folders"
        raise Refused(Problem(message, "give a folder that holds templates only", "", str(own)))
    names = [entry.relative_to(own).as_posix() for entry in sorted(entries) if not entry.is_dir()]
    home = own.resolve()
    faults = [
        Problem("this points outside the folder", "put the file itself here", "", f"{own.name}/{name}")
        for name in names
        if not (own / name).resolve().is_relative_to(home)
    ]
    faults += [
        Problem("this file matches no built-in template", suggest(name, known), "", f"{own.name}/{name}")
        for name in names
        if name not in known and not Path(name).name.startswith(".")
    ]
    if faults or not names:
        nothing = Problem("the folder holds no template", f"copy one of: {', '.join(known)}", "", str(own))
        raise Refused(*(faults or [nothing]))


def check_page(ours: Path, own: Path) -> None:
    """Check a firm's frame and looks of the page before a document is composed for it; raises Refused."""
    frame_of(ours, own)
    style_of(ours, own)


def find_template(name: str, ours: Path, own: Path | None) -> Path:
    """The file of a template: the firm's if it has one, else the built-in one."""
    return own / name if own is not None and os.path.lexists(own / name) else ours / name


def words_of(file: Path, shown: str) -> str:
    """The text of a template; raises Refused if it cannot be read."""
    try:
        return read_given_file(file, _USE, shown).decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        raise Refused(Problem("the template is not UTF-8", "save it as UTF-8", "", shown)) from error


def style_of(ours: Path, own: Path | None) -> str:
    """The looks of a page; raises Refused if a firm's own would ask for anything outside it."""
    file, text, shown = _words("style.css", ours, own)
    if file.parent == own:
        from specgen.documents.page_style import check_style

        _held(shown, lambda: check_style(text))
    return text


def frame_of(ours: Path, own: Path | None) -> Frame:
    """The frame of a page, with every required part in it and a place for its `policy`; raises Refused."""
    file, text, shown = _words("page.html", ours, own)
    _held(shown, lambda: _fill_in(text))
    if file.parent == own:
        from specgen.documents.page_frame import read_frame

        text = _held(shown, lambda: read_frame(text))
    return Frame(re.sub(r"<head\b[^>]*>", lambda head: f"{head[0]}\n{_POLICY}", text, count=1))


def _fill_in(text: str) -> None:
    """Raise Mistake for a part to be filled in that is unknown, missing or malformed."""
    frame = Frame(text)
    if not frame.is_valid():
        raise Mistake("a $ stands alone", "write $$ for a dollar", _line_of(text, r"\$(?![$\w{])"))
    named = set(frame.get_identifiers())
    if unknown := sorted(named - _PARTS):
        line = _line_of(text, r"\$\{?" + re.escape(unknown[0]))
        raise Mistake(f"there is no part ${unknown[0]}", suggest(unknown[0], _PARTS), line)
    if lacking := sorted(_PARTS - named):
        raise Mistake(f"the page lacks ${lacking[0]}", "every part must stand in it")


def _line_of(text: str, pattern: str) -> int:
    """The line on which a pattern first stands; 0 if it stands nowhere."""
    found = re.search(pattern, text)
    return text.count("\n", 0, found.start()) + 1 if found else 0


def _words(name: str, ours: Path, own: Path | None) -> tuple[Path, str, str]:
    """A file of the page, its text, and its name in messages."""
    file = find_template(name, ours, own)
    shown = f"{file.parent.name}/{name}"
    return file, words_of(file, shown), shown


def _held(shown: str, read: Callable[[], Answer]) -> Answer:
    """What a reading of a file answers; raises Refused with file and line for a mistake in it."""
    try:
        return read()
    except Mistake as mistake:
        raise Refused(Problem(str(mistake), mistake.hint, "", shown, mistake.line)) from None
