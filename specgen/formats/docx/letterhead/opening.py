"""Opens a firm's file as a package; a file that cannot be a letterhead is refused with what would be right."""

from specgen.formats.docx.letterhead.opc import OFFICE, STRICT, Package
from specgen.model.problem import refuse

_SAVE = "open it in a word processor and save it as a Word document (.docx)"
_WORD = "wordprocessingml"
# First bytes of files that people take for a DOCX.
_OTHERS = (
    (b"%PDF", "is a PDF"),
    (b"{\\rtf", "is Rich Text"),
    (b"<?xml", "is plain XML"),
    (b"<", "is a web page"),
)
# The container of the old Word format, and the name of the stream it holds where a newer file is locked.
_OLD, _LOCKED = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "EncryptedPackage".encode("utf-16-le")


def open_package(content: bytes) -> tuple[Package, str]:
    """The package of a Word file and the name of its main part; raises Refused for anything else."""
    _refuse_others(content)
    package = Package(content)
    for link in package.find_links().values():
        if link.type == f"{STRICT}/officeDocument":
            raise refuse("the letterhead is a Strict Open XML document", _SAVE)
        if link.type == f"{OFFICE}/officeDocument" and not link.external:
            # A template, or a file with macros, is a document of another content type.
            if _WORD in package.find_type(link.target) or "ms-word" in package.find_type(link.target):
                return package, link.target
            raise refuse("the letterhead is not a Word document", _SAVE)
    raise refuse("the letterhead is not a Word document", _SAVE)


def _refuse_others(content: bytes) -> None:
    if not content:
        raise refuse("the letterhead is empty", "give the name of a .docx file")
    if content.startswith(_OLD):
        if _LOCKED in content:
            raise refuse("the letterhead is locked with a password", "save it without one")
        raise refuse("the letterhead is an old Word document (.doc)", _SAVE)
    for begin, description in _OTHERS:
        if content.lstrip(b"\xef\xbb\xbf \t\r\n").startswith(begin):
            raise refuse(f"the letterhead {description}", _SAVE)
    if not content.startswith(b"PK"):
        raise refuse("the letterhead is not a Word document", _SAVE)
