"""Headers and footers of a letterhead: kept with their pictures, cleared of what belongs to another document."""

from docx.oxml.ns import qn
from lxml import etree

from specgen.formats.docx.elements import Element, remove_element
from specgen.formats.docx.letterhead import vocabulary as known
from specgen.formats.docx.letterhead.cleaning import Drop, clean_page_part, is_address
from specgen.formats.docx.letterhead.fields import freeze_fields
from specgen.formats.docx.letterhead.opc import WORD, Link, NewPackage, Package, serialize_part
from specgen.formats.docx.letterhead.pictures import add_picture

_MC = f"{{{known.MC}}}AlternateContent"
_ALTERNATIVES = (f"{{{known.MC}}}Choice", f"{{{known.MC}}}Fallback")
_SHAPE_PICTURE = f"{{{known.V}}}imagedata"
_GRAPHIC = f"{{{known.A}}}graphicData"
_PROPERTIES = f"{{{known.WP}}}docPr"
_LINKING = f"{{{known.R}}}"
ALT = "Letterhead"
_WORDS = {
    "chart": "charts",
    "diagramData": "diagrams",
    "diagram": "diagrams",
    "image": "linked pictures",
    "oleObject": "embedded objects",
    "package": "embedded objects",
    "control": "form controls",
}


def carry_part(package: Package, name: str, to: NewPackage, new_name: str, drop: Drop, freeze: Drop) -> None:
    """Copy a header or footer with its pictures.

    `drop` is called with the name of each thing left out, `freeze` with that of each field that became words.
    """
    root = package.parse(name)
    clean_page_part(root, drop)
    for field in freeze_fields(root):
        freeze(field)
    for element in list(root.iter(qn("w:object"))):
        drop("embedded objects")
        _turn_into_picture(element)
    relink_part(root, package, name, to, new_name, drop)
    _describe_pictures(root)
    kind = "header" if root.tag == qn("w:hdr") else "footer"
    to.add(new_name, f"{WORD}.{kind}+xml", serialize_part(root))


def _turn_into_picture(element: Element) -> None:
    """Replace an embedded object with the picture it shows."""
    element.tag = qn("w:pict")
    element.attrib.clear()
    if not len(element):
        remove_element(element)


def relink_part(root: Element, package: Package, name: str, to: NewPackage, new_name: str, drop: Drop) -> None:
    """Copy the pictures of a part and link to them; remove what shows a part that is left out."""
    links = package.find_links(name)

    def renew(element: Element, key: str) -> str:
        """The id of the link in the new part; empty where it is not kept."""
        link, use = links.get(element.get(key, "")), (str(element.tag), key)
        if link is None:
            return ""
        if use in known.ADDRESSES and link.kind == "hyperlink" and link.external and is_address(link.target):
            return to.link_address(new_name, link.target)
        if use in known.PICTURES and link.kind == "image" and not link.external:
            return add_picture(package.parts[link.target], to, new_name)
        return ""

    for element in list(root.iter(etree.Element)):
        if element.tag == _GRAPHIC and element.get("uri") not in known.GRAPHICS:
            _refuse_graphic(root, element, links, drop)
        for key in [key for key in element.attrib if key.startswith(_LINKING)]:
            if not _is_inside(root, element):
                break  # it went with what was taken out before
            id_ = renew(element, key)
            if id_:
                element.set(key, id_)
            else:
                _unlink(element, key, links.get(element.get(key, "")), drop)
        if element.tag == _SHAPE_PICTURE and _is_inside(root, element) and not _is_linked(element):
            drop("linked pictures")
            _take_out(element)


def _is_inside(root: Element, element: Element) -> bool:
    return element is root or any(above is root for above in element.iterancestors())


def _is_linked(element: Element) -> bool:
    return any(key.startswith(_LINKING) for key in element.attrib)


def _refuse_graphic(root: Element, element: Element, links: dict[str, Link], drop: Drop) -> None:
    """Take out a drawing of a kind that is left out."""
    if _is_inside(root, element):
        kind = (element.get("uri") or "").rpartition("/")[2]
        drop(_WORDS.get(kind, "contents of an unknown kind"))
        _take_out(element)


def _unlink(element: Element, key: str, link: Link | None, drop: Drop) -> None:
    """Remove a dead link, and the element it stands on where nothing else is left to show."""
    others = [k for k in element.attrib if k.startswith(_LINKING) and k != key]
    word = etree.QName(element).localname
    if link is not None and link.kind == "hyperlink":
        drop("links to files or programs")
    if word.startswith("hlink"):
        remove_element(element)
    elif word == "hyperlink" or others and not key.endswith("}embed"):
        del element.attrib[key]
    else:
        drop(_name_left_out(link))
        _take_out(element)


def _name_left_out(link: Link | None) -> str:
    if link is not None and link.kind == "image" and not link.external:
        return "pictures of an unknown kind"
    return _WORDS.get(link.kind if link else "image", "embedded objects")


def _take_out(element: Element) -> None:
    """Remove the picture a reader sees, with all its alternatives, and nothing around it."""
    shown = next(element.iterancestors(_MC, *(qn(f"w:{word}") for word in ("drawing", "pict", "object"))), element)
    around = shown.getparent()
    # A choice without its picture would be an empty one.
    alternatives = around.getparent() if around is not None and around.tag in _ALTERNATIVES else None
    remove_element(shown if alternatives is None else alternatives)


def _describe_pictures(root: Element) -> None:
    """Give every picture alternative text for screen readers."""
    for element in root.iter(_PROPERTIES):
        if not element.get("descr"):
            element.set("descr", ALT)
    for element in root.iter(_SHAPE_PICTURE):
        shape = element.getparent()
        if shape is not None and not shape.get("alt"):
            shape.set("alt", ALT)
