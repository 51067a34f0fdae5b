"""What a header or footer may hold: the elements and attributes that a letterhead needs, by namespace.

What stands in none of these lists is not carried over, so that nothing of it can act. WordprocessingML, DrawingML and
VML by ECMA-376 parts 1 and 4; the later namespaces by their published schemas.
"""

from docx.oxml.ns import qn

_MS = "http://schemas.microsoft.com/office/word/2010"
_DRAWINGML = "http://schemas.openxmlformats.org/drawingml/2006"
W, R = qn("w:p")[1:-2], qn("r:id")[1:-3]
V, O, W10 = (f"urn:schemas-microsoft-com:{name}" for name in ("vml", "office:office", "office:word"))  # noqa: E741
MC, XML = "http://schemas.openxmlformats.org/markup-compatibility/2006", "http://www.w3.org/XML/1998/namespace"
A, WP = f"{_DRAWINGML}/main", f"{_DRAWINGML}/wordprocessingDrawing"
_MATH = "http://schemas.openxmlformats.org/officeDocument/2006/math"
LATER = frozenset(f"http://schemas.microsoft.com/office/word/{name}/wordml" for name in ("2010", "2012"))
# Held whole: shapes and signs, where nothing leads outside but a link to another part.
WHOLE = LATER | {A, WP, f"{_DRAWINGML}/picture", _MATH}
WHOLE |= {f"{_MS}/{name}" for name in ("wordprocessing" + kind for kind in ("Shape", "Group", "Canvas", "Drawing"))}
# What a drawing may show; charts, diagrams and embedded objects are parts of their own.
GRAPHICS = {f"{_DRAWINGML}/picture", *(f"{_MS}/wordprocessing{kind}" for kind in ("Shape", "Group", "Canvas"))}


def _name(space: str, words: str) -> frozenset[str]:
    return frozenset(f"{{{space}}}{word}" if space else word for word in words.split())


_BORDERS = "top left start bottom right end between bar insideH insideV tl2br tr2bl"
_PARAGRAPH = """
    p pPr pStyle keepNext keepLines pageBreakBefore framePr widowControl suppressLineNumbers pBdr shd tabs tab
    suppressAutoHyphens kinsoku wordWrap overflowPunct topLinePunct autoSpaceDE autoSpaceDN bidi adjustRightInd
    snapToGrid spacing ind contextualSpacing mirrorIndents suppressOverlap jc textDirection textAlignment
    textboxTightWrap outlineLvl cnfStyle"""
_RUN = """
    r rPr rStyle rFonts b bCs i iCs caps smallCaps strike dstrike outline shadow emboss imprint noProof vanish
    webHidden color w kern position sz szCs highlight u effect bdr fitText vertAlign rtl cs em lang eastAsianLayout
    specVanish oMath t br cr sym ptab noBreakHyphen softHyphen pgNum drawing pict object fldChar instrText fldSimple
    hyperlink bdo dir ruby rubyPr rubyAlign hps hpsRaise hpsBaseText lid rt rubyBase txbxContent hdr ftr"""
_TABLE = """
    tbl tblPr tblPrEx tblStyle tblpPr tblOverlap bidiVisual tblStyleRowBandSize tblStyleColBandSize tblW tblCellSpacing
    tblInd tblBorders tblLayout tblCellMar tblLook tblCaption tblDescription tblGrid gridCol tr trPr gridBefore
    gridAfter wBefore wAfter cantSplit trHeight tblHeader hidden tc tcPr tcW gridSpan hMerge vMerge tcBorders noWrap
    tcMar tcFitText vAlign hideMark headers"""
_VML = """
    shapetype shape rect roundrect oval line polyline curve arc group formulas f handles h path fill stroke shadow
    textbox textpath imagedata"""
_BORDERS_VML = "bordertop borderleft borderbottom borderright wrap anchorlock"
KEPT = (
    _name(W, " ".join((_BORDERS, _PARAGRAPH, _RUN, _TABLE)))
    | _name(MC, "AlternateContent Choice Fallback")
    | _name(V, _VML)
    | _name(O, "lock")
    | _name(W10, _BORDERS_VML)
)
# Only what stands inside goes along.
UNWRAPPED = _name(W, "ins moveTo smartTag customXml sdt sdtContent")
# Accepted changes: what was taken out, and the marks of what was changed.
CHANGED = _name(W, "ins moveTo")
GONE = _name(
    W,
    """del moveFrom cellDel cellIns cellMerge moveFromRangeStart moveFromRangeEnd moveToRangeStart moveToRangeEnd
    customXmlInsRangeStart customXmlInsRangeEnd customXmlDelRangeStart customXmlDelRangeEnd numberingChange
    customXmlMoveFromRangeStart customXmlMoveFromRangeEnd customXmlMoveToRangeStart customXmlMoveToRangeEnd""",
)
# Left out without a word: nothing of them shows on paper.
UNSEEN = _name(
    W,
    """sdtPr sdtEndPr smartTagPr customXmlPr numPr sectPr divId proofErr bookmarkStart bookmarkEnd permStart permEnd
    lastRenderedPageBreak annotationRef footnoteRef endnoteRef footnoteReference endnoteReference separator
    continuationSeparator delText delInstrText subDoc ffData fldData""",
) | _name(A, "extLst")
# Left out with a word for the user.
SAID = {
    **dict.fromkeys(_name(W, "commentRangeStart commentRangeEnd commentReference"), "comments"),
    **dict.fromkeys(_name(W, "objectEmbed objectLink movie altChunk") | _name(O, "OLEObject"), "embedded objects"),
    **dict.fromkeys(_name(W, "control"), "form controls"),
    **dict.fromkeys(_name(W, "dayShort dayLong monthShort monthLong yearShort yearLong"), "dates that move"),
}
# Attributes of VML that say how a shape looks and where it stands; none of them names a place outside.
VML_ATTRIBUTES = _name(
    "",
    """id type style alt title coordsize coordorigin path adj wrapcoords print filled fillcolor opacity stroked
    strokecolor strokeweight insetpen chromakey from to control1 control2 points arcsize startangle endangle size
    position xrange yrange polar radiusrange invx invy switch map eqn textpathok gradientshapeok arrowok fillok
    strokeok shadowok limo insetpenok on string fitshape fitpath trim xscale color color2 colors method angle focus
    focussize focusposition origin aspect alignshape rotate recolor weight endcap joinstyle dashstyle linestyle
    miterlimit filltype imageaspect imagesize imagealignshape startarrow startarrowwidth startarrowlength endarrow
    endarrowwidth endarrowlength offset offset2 opacity2 obscured matrix inset cropleft croptop cropright cropbottom
    gain blacklevel gamma grayscale bilevel embosscolor side anchorx anchory width shadow""",
)
OFFICE_ATTRIBUTES = _name(
    O,
    """spid spt preferrelative allowincell allowoverlap connecttype connectortype hr hrstd hrnoshade hralign hrpct
    insetmode title bwmode bordertopcolor borderleftcolor borderbottomcolor borderrightcolor opacity2""",
) | _name(V, "ext")
LOCK_ATTRIBUTES = _name(
    "",
    "aspectratio rotation grouping ungrouping text verticies cropping selection position adjusthandles shapetype",
)
# Attributes of elements that lead elsewhere or act; every other attribute of their namespace is left out.
NARROW = {
    f"{{{W}}}hyperlink": _name(W, "tooltip history"),
    f"{{{W}}}fldSimple": _name(W, "instr"),
    f"{{{W}}}fldChar": _name(W, "fldCharType"),
    f"{{{W}}}instrText": frozenset[str](),
    f"{{{A}}}hlinkClick": frozenset({"tooltip"}),
    f"{{{A}}}hlinkHover": frozenset({"tooltip"}),
    f"{{{A}}}hlinkMouseOver": frozenset({"tooltip"}),
    f"{{{MC}}}AlternateContent": frozenset[str](),
    f"{{{MC}}}Choice": frozenset({"Requires"}),
}
# Attributes that link to another part: to a picture, or to an address.
PICTURES = {
    (f"{{{A}}}blip", f"{{{R}}}embed"),
    (f"{{{V}}}imagedata", f"{{{R}}}id"),
    (f"{{{V}}}fill", f"{{{R}}}id"),
}
ADDRESSES = {(tag, f"{{{R}}}id") for tag in NARROW if "link" in tag}
