"""Headers and footers of a letterhead: kept with their pictures, cleared of what belongs to another document."""

import posixpath
from collections.abc import Callable

from docx.oxml.ns import qn
from lxml import etree

from specgen.formats.docx.elements import Element, remove_element
from specgen.formats.docx.letterhead.opc import OFFICE, WORD, Link, NewPackage, Package, serialize_part

_MCE = "http://schemas.openxmlformats.org/markup-compatibility/2006"
_MC = f"{{{_MCE}}}AlternateContent"
_ALTERNATIVES = (f"{{{_MCE}}}Choice", f"{{{_MCE}}}Fallback")
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


def _qualify_names(*words: str) -> frozenset[str]:
    return frozenset(qn(f"w:{word}") for word in words)


# Tracked changes are accepted: the first keep their content, the second go with it.
_UNWRAPPED = _qualify_names("ins", "moveTo", "smartTag", "customXml")
_GONE = _qualify_names("del", "moveFrom", "cellDel")
_MARKS = _qualify_names(
    *("cellIns", "cellMerge", "moveFromRangeStart", "moveFromRangeEnd", "moveToRangeStart", "moveToRangeEnd"),
    *("customXmlInsRangeStart", "customXmlInsRangeEnd", "customXmlDelRangeStart", "customXmlDelRangeEnd"),
    *("customXmlMoveFromRangeStart", "customXmlMoveFromRangeEnd", "customXmlMoveToRangeStart"),
    *("customXmlMoveToRangeEnd", "numberingChange"),
)
_COMMENTS = _qualify_names("commentRangeStart", "commentRangeEnd", "commentReference")
# What refers to parts that are left out: lists, notes, data bound to a control, ids that the body counts itself.
_FOREIGN = _qualify_names("numPr", "footnoteReference", "endnoteReference", "subDoc", "dataBinding", "placeholder")


def accept_changes(root: Element) -> bool:
    """Accept tracked changes; whether there were any."""
    found = False
    for element in list(root.iter(etree.Element)):
        if element.getparent() is None:
            continue
        if str(element.tag).endswith("PrChange") or element.tag in _MARKS | _GONE:
            found = True
            remove_element(_find_row(element) if element.tag == qn("w:del") else element)
        elif element.tag in _UNWRAPPED:
            found = found or element.tag in _qualify_names("ins", "moveTo")
            _unwrap(element)
    return found


def _find_row(element: Element) -> Element:
    """The table row that a deletion mark stands for, or the element itself."""
    properties = element.getparent()
    row = properties.getparent() if properties is not None and properties.tag == qn("w:trPr") else None
    return element if row is None else row


def _unwrap(element: Element) -> None:
    parent = element.getparent()
    if parent is None:
        return
    place = parent.index(element)
    properties = _qualify_names("smartTagPr", "customXmlPr")
    parent[place : place + 1] = [child for child in element if child.tag not in properties]


def carry_part(package: Package, name: str, to: NewPackage, new_name: str, drop: Callable[[str], None]) -> None:
    """Copy a header or footer with its pictures; `drop` is called with the name of each thing left out."""
    root = package.parse(name)
    if accept_changes(root):
        drop("tracked changes")
    for element in list(root.iter(*_COMMENTS)):
        drop("comments")
        remove_element(element)
    for element in [*root.iter(*_FOREIGN), *root.iterfind(f".//{qn('w:sdtPr')}/{qn('w:id')}")]:
        remove_element(element)
    for element in list(root.iter(qn("w:object"))):
        drop("embedded objects")
        _turn_into_picture(element)
    relink_part(root, package, name, to, new_name, drop)
    _describe_pictures(root)
    kind = "header" if root.tag == qn("w:hdr") else "footer"
    to.add(new_name, f"{WORD}.{kind}+xml", serialize_part(root))


def _turn_into_picture(element: Element) -> None:
    """Replace an embedded object with the picture it shows."""
    for child in list(element):
        if child.tag == _OLE or child.tag in _qualify_names("control", "objectEmbed", "objectLink", "movie"):
            element.remove(child)
    element.tag = qn("w:pict")
    element.attrib.clear()
    if not len(element):
        remove_element(element)


def relink_part(
    root: Element, package: Package, name: str, to: NewPackage, new_name: str, drop: Callable[[str], None]
) -> None:
    """Copy the pictures of a part and link to them; remove what shows a part that is left out."""
    links = package.find_links(name)
    for element in list(root.iter(etree.Element)):
        for key in [key for key in element.attrib if key.startswith(f"{{{OFFICE}}}")]:
            if element is not root and not any(parent is root for parent in element.iterancestors()):
                break  # it went with what was taken out before
            link = links.get(element.get(key, ""))
            if link is not None and _is_kept(link):
                element.set(key, _add_picture(package, link, to, new_name))
            else:
                _unlink(element, key, link, drop)


def _unlink(element: Element, key: str, link: Link | None, drop: Callable[[str], None]) -> None:
    """Remove a dead link, and the element it stands on where nothing else is left to show."""
    others = [k for k in element.attrib if k.startswith(f"{{{OFFICE}}}") and k != key]
    word = etree.QName(element).localname
    if word.startswith("hlink"):
        remove_element(element)
    elif word == "hyperlink" or others and not key.endswith("}embed"):
        del element.attrib[key]
    else:
        drop(_WORDS.get(link.kind if link else "image", "embedded objects"))
        _take_out(element)


def _is_kept(link: Link) -> bool:
    return link.kind == "image" and not link.external or link.kind == "hyperlink" and link.external


def _take_out(element: Element) -> None:
    """Remove the picture a reader sees, with all its alternatives, and nothing around it."""
    shown = next(element.iterancestors(_MC, *_qualify_names("drawing", "pict", "object")), element)
    around = shown.getparent()
    # A choice without its picture would be an empty one.
    alternatives = around.getparent() if around is not None and around.tag in _ALTERNATIVES else None
    remove_element(shown if alternatives is None else alternatives)


def _add_picture(package: Package, link: Link, to: NewPackage, source: str) -> str:
    """The id by which the new header links to a picture or an address."""
    known = to.links.setdefault(source, [])
    if link.external:
        known.append(Link(f"rId{len(known) + 1}", link.type, link.target, True))
        return known[-1].id
    name = f"word/media/{posixpath.basename(link.target)}"
    others = {part: content for part, content in to.parts.items() if part.startswith("word/media/")}
    content = package.parts[link.target]
    while others.get(name, content) != content:
        name = name.replace("media/", "media/x")
    to.add(name, package.find_type(link.target) or _guess_type(name), content)
    return next((entry.id for entry in known if entry.target == name), "") or to.link(source, "image", name)


def _guess_type(name: str) -> str:
    """The content type of a picture by its file extension."""
    ending = name.rpartition(".")[2]
    return f"image/{ {'jpg': 'jpeg', 'svg': 'svg+xml', 'emf': 'x-emf', 'wmf': 'x-wmf'}.get(ending, ending) }"


def _describe_pictures(root: Element) -> None:
    """Give every picture alternative text for screen readers."""
    for element in root.iter(_PROPERTIES):
        if not element.get("descr"):
            element.set("descr", ALT)
    for element in root.iter(_SHAPE_PICTURE):
        shape = element.getparent()
        if shape is not None and not shape.get("alt"):
            shape.set("alt", ALT)
