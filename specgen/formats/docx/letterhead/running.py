"""Headers and footers of a firm's paper: kept with their pictures, freed of what belongs to another document."""

import posixpath
from collections.abc import Callable
from typing import Any

from docx.oxml.ns import qn
from lxml import etree

from specgen.formats.docx.letterhead.opc import OFFICE, WORD, Link, NewPackage, Package, text_of

_MCE = "http://schemas.openxmlformats.org/markup-compatibility/2006"
_MC = f"{{{_MCE}}}AlternateContent"
_OLE = "{urn:schemas-microsoft-com:office:office}OLEObject"
_SHAPE_PICTURE = "{urn:schemas-microsoft-com:vml}imagedata"
_PROPERTIES = "{http://schemas.openxmlformats.org/drawingml/2006/wordprocessingDrawing}docPr"
ALT = "Letterhead"
_WORDS = {
    "chart": "charts",
    "diagramData": "diagrams",
    "image": "linked pictures",
    "oleObject": "embedded objects",
    "package": "embedded objects",
    "control": "form controls",
}


def _names(*words: str) -> frozenset[str]:
    return frozenset(qn(f"w:{word}") for word in words)


# Tracked changes are taken as made: these keep what they hold, those go with it.
_UNWRAPPED = _names("ins", "moveTo", "smartTag", "customXml")
_GONE = _names("del", "moveFrom", "cellDel")
_MARKS = _names(
    *("cellIns", "cellMerge", "moveFromRangeStart", "moveFromRangeEnd", "moveToRangeStart", "moveToRangeEnd"),
    *("customXmlInsRangeStart", "customXmlInsRangeEnd", "customXmlDelRangeStart", "customXmlDelRangeEnd"),
    *("customXmlMoveFromRangeStart", "customXmlMoveFromRangeEnd", "customXmlMoveToRangeStart"),
    *("customXmlMoveToRangeEnd", "numberingChange"),
)
_COMMENTS = _names("commentRangeStart", "commentRangeEnd", "commentReference")
# What leads to parts that stay behind: lists, notes, data bound to a control, ids that the body counts itself.
_FOREIGN = _names("numPr", "footnoteReference", "endnoteReference", "subDoc", "dataBinding", "placeholder")


def settled(root: Any) -> bool:
    """Take tracked changes as made; whether there were any."""
    found = False
    for element in list(root.iter(etree.Element)):
        if element.getparent() is None:
            continue
        if str(element.tag).endswith("PrChange") or element.tag in _MARKS | _GONE:
            found = True
            _remove(_row(element) if element.tag == qn("w:del") else element)
        elif element.tag in _UNWRAPPED:
            found = found or element.tag in _names("ins", "moveTo")
            _unwrap(element)
    return found


def _row(element: Any) -> Any:
    """The table row that a mark of deletion stands for, or the element itself."""
    parent = element.getparent()
    return parent.getparent() if parent.tag == qn("w:trPr") and parent.getparent() is not None else element


def _remove(element: Any) -> None:
    parent = element.getparent()
    if parent is not None:
        parent.remove(element)


def _unwrap(element: Any) -> None:
    parent = element.getparent()
    place = parent.index(element)
    properties = _names("smartTagPr", "customXmlPr")
    parent[place : place + 1] = [child for child in element if child.tag not in properties]


def carried(package: Package, name: str, to: NewPackage, new_name: str, drop: Callable[[str], None]) -> None:
    """Carry a header or footer over with its pictures; `drop` is told what is left behind."""
    root = package.xml(name)
    if settled(root):
        drop("tracked changes")
    for element in list(root.iter(*_COMMENTS)):
        drop("comments")
        _remove(element)
    for element in [*root.iter(*_FOREIGN), *root.iterfind(f".//{qn('w:sdtPr')}/{qn('w:id')}")]:
        _remove(element)
    for element in list(root.iter(qn("w:object"))):
        drop("embedded objects")
        _as_picture(element)
    relinked(root, package, name, to, new_name, drop)
    _described(root)
    kind = "header" if root.tag == qn("w:hdr") else "footer"
    to.add(new_name, f"{WORD}.{kind}+xml", text_of(root))


def _as_picture(element: Any) -> None:
    """An embedded object as the picture it shows."""
    for child in list(element):
        if child.tag == _OLE or child.tag in _names("control", "objectEmbed", "objectLink", "movie"):
            element.remove(child)
    element.tag = qn("w:pict")
    element.attrib.clear()
    if not len(element):
        _remove(element)


def relinked(
    root: Any, package: Package, name: str, to: NewPackage, new_name: str, drop: Callable[[str], None]
) -> None:
    """Carry the pictures of a part over and lead to them; what shows a part that stays behind is taken out."""
    links = package.links(name)
    for element in list(root.iter(etree.Element)):
        for key in [key for key in element.attrib if key.startswith(f"{{{OFFICE}}}")]:
            if element is not root and not any(parent is root for parent in element.iterancestors()):
                break  # it went with what was taken out before
            link = links.get(element.get(key))
            if link is not None and _kept(link):
                element.set(key, _picture(package, link, to, new_name))
            else:
                _unlink(element, key, link, drop)


def _unlink(element: Any, key: str, link: Link | None, drop: Callable[[str], None]) -> None:
    """Take out a link that leads nowhere, and what it shows where it is all there is to show."""
    others = [k for k in element.attrib if k.startswith(f"{{{OFFICE}}}") and k != key]
    word = etree.QName(element).localname
    if word.startswith("hlink"):
        _remove(element)
    elif word == "hyperlink" or others and not key.endswith("}embed"):
        del element.attrib[key]
    else:
        drop(_WORDS.get(link.kind if link else "image", "embedded objects"))
        _take_out(element)


def _kept(link: Link) -> bool:
    return link.kind == "image" and not link.external or link.kind == "hyperlink" and link.external


def _take_out(element: Any) -> None:
    """Remove what a reader sees of a part: the picture, in every way it is told, and nothing around it."""
    shown = next(element.iterancestors(_MC, *_names("drawing", "pict", "object")), element)
    around = shown.getparent()
    # A choice without its picture would be an empty one.
    _remove(around.getparent() if around.tag in (f"{{{_MCE}}}Choice", f"{{{_MCE}}}Fallback") else shown)


def _picture(package: Package, link: Link, to: NewPackage, source: str) -> str:
    """The id under which the new header leads to a picture or an address."""
    known = to.links.setdefault(source, [])
    if link.external:
        known.append(Link(f"rId{len(known) + 1}", link.type, link.target, True))
        return known[-1].id
    name = f"word/media/{posixpath.basename(link.target)}"
    others = {part: content for part, content in to.parts.items() if part.startswith("word/media/")}
    content = package.parts[link.target]
    while others.get(name, content) != content:
        name = name.replace("media/", "media/x")
    to.add(name, package.type_of(link.target) or _guessed(name), content)
    return next((one.id for one in known if one.target == name), "") or to.link(source, "image", name)


def _guessed(name: str) -> str:
    """The content type of a picture by its ending."""
    ending = name.rpartition(".")[2]
    return f"image/{ {'jpg': 'jpeg', 'svg': 'svg+xml', 'emf': 'x-emf', 'wmf': 'x-wmf'}.get(ending, ending) }"


def _described(root: Any) -> None:
    """Give every picture words for those who do not see it."""
    for element in root.iter(_PROPERTIES):
        if not element.get("descr"):
            element.set("descr", ALT)
    for element in root.iter(_SHAPE_PICTURE):
        shape = element.getparent()
        if shape is not None and not shape.get("alt"):
            shape.set("alt", ALT)
