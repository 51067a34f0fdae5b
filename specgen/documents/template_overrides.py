"""A firm's own templates: a file in its folder overrides the built-in file of the same name."""

import os
import re
from itertools import islice
from pathlib import Path
from string import Template as Frame

from specgen.model.problem import Problem, Refused
from specgen.model.suggest import suggest
from specgen.reading.given_file import FileUse, read_given_file

# Nothing of a page may be fetched from elsewhere: it is one file.
_OUTSIDE = re.compile(
    r"""(?:src|href|action)\s*=\s*["']?(?!\#|data:|["'])|@import|url\(\s*["']?(?!data:)|<script""", re.I
)
_PARTS = {"title", "style", "kind", "head", "body", "legend"}
_PAGE = ("page.html", "style.css")
_USE = FileUse("the template", "put a text file in its place", 2_000_000)
_MOST_ENTRIES = 500


def check_folder(own: Path, ours: Path) -> None:
    """Check a folder of overrides; raises Refused if it is no folder or holds a file that overrides nothing."""
    if not own.is_dir():
        raise Refused(Problem("this is no folder of templates", "give a folder that holds `documents`", "", str(own)))
    known = [*_PAGE, *(f"documents/{file.name}" for file in sorted((ours / "documents").glob("*.md.j2")))]
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


def find_template(name: str, ours: Path, own: Path | None) -> Path:
    """The file of a template: the firm's if it has one, else the built-in one."""
    return own / name if own is not None and os.path.lexists(own / name) else ours / name


def words_of(file: Path, shown: str) -> str:
    """The text of a template; raises Refused if it cannot be read."""
    try:
        return read_given_file(file, _USE, shown).decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        raise Refused(Problem("the template is not UTF-8", "save it as UTF-8", "", shown)) from error


def page_of(name: str, ours: Path, own: Path | None) -> str:
    """The frame or style of a page; raises Refused if it would fetch anything from outside."""
    file = find_template(name, ours, own)
    text = words_of(file, f"{file.parent.name}/{name}")
    outside = _OUTSIDE.search(text) if file.parent == own else None
    if outside:
        line = text.count("\n", 0, outside.start()) + 1
        message = f"{outside[0].strip()} asks for something outside the page"
        raise Refused(Problem(message, "put it into the file itself", "", f"{file.parent.name}/{name}", line))
    return text


def frame_of(ours: Path, own: Path | None) -> Frame:
    """The frame of a page, with every required part in it; raises Refused."""
    text = page_of("page.html", ours, own)
    frame = Frame(text)
    shown = f"{find_template('page.html', ours, own).parent.name}/page.html"
    if not frame.is_valid():
        raise Refused(Problem("a $ stands alone", "write $$ for a dollar", "", shown))
    named = set(frame.get_identifiers())
    if unknown := sorted(named - _PARTS):
        line = text[: text.index(unknown[0])].count("\n") + 1
        raise Refused(Problem(f"there is no part ${unknown[0]}", suggest(unknown[0], _PARTS), "", shown, line))
    if lacking := sorted(_PARTS - named):
        raise Refused(Problem(f"the page lacks ${lacking[0]}", "every part must stand in it", "", shown))
    return frame
