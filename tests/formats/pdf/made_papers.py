"""Papers to bind in, as others write them: odd boxes, turned pages, scripts, locks, damage."""

from collections.abc import Callable
from io import BytesIO
from typing import Any

import pikepdf
from pikepdf import Array, Dictionary, Name, Stream, String

LETTER = (0, 0, 612, 792)


def make_paper(
    pages: int = 1,
    words: str = "Test report",
    box: tuple[float, ...] = LETTER,
    turned: int = 0,
    change: Callable[[pikepdf.Pdf], Any] | None = None,
    **saved: Any,
) -> bytes:
    """A PDF whose pages say `words` and their number; `change` has its way with it before it is saved."""
    with pikepdf.new() as made:
        font = made.make_indirect(Dictionary(Type=Name.Font, Subtype=Name.Type1, BaseFont=Name.Helvetica))
        for number in range(1, pages + 1):
            text = f"BT /F1 12 Tf {box[0] + 72} {box[1] + 400} Td ({words} {number}) Tj ET"
            page = Dictionary(
                Type=Name.Page,
                MediaBox=Array(box),
                Resources=Dictionary(Font=Dictionary(F1=font)),
                Contents=made.make_indirect(Stream(made, text.encode())),
            )
            if turned:
                page.Rotate = turned
            made.pages.append(pikepdf.Page(page))
        if change is not None:
            change(made)
        written = BytesIO()
        made.save(written, deterministic_id="encryption" not in saved, **saved)
        return written.getvalue()


def add_script(made: pikepdf.Pdf) -> None:
    made.Root.OpenAction = Dictionary(S=Name.JavaScript, JS=String("app.alert(1)"))


def add_page_script(made: pikepdf.Pdf) -> None:
    made.pages[0].obj.AA = Dictionary(O=Dictionary(S=Name.JavaScript, JS=String("app.alert(2)")))


def add_launch_link(made: pikepdf.Pdf) -> None:
    _add_annotation(made, Subtype=Name.Link, A=Dictionary(S=Name.Launch, F=String("run.exe")))


def add_chained_launch(made: pikepdf.Pdf) -> None:
    after = Dictionary(S=Name.Launch, F=String("run.exe"))
    _add_annotation(made, Subtype=Name.Link, A=Dictionary(S=Name.GoTo, D=String("top"), Next=Array([after])))


def add_embedded_file(made: pikepdf.Pdf) -> None:
    made.attachments["inside.txt"] = b"a file within"


def add_web_link(made: pikepdf.Pdf) -> None:
    _add_annotation(made, Subtype=Name.Link, A=Dictionary(S=Name.URI, URI=String("https://example.com")))


def add_film(made: pikepdf.Pdf) -> None:
    _add_annotation(made, Subtype=Name.RichMedia, RichMediaContent=Dictionary())


def add_filled_field(made: pikepdf.Pdf) -> None:
    """A field that says `filled in`, which its viewer is to draw, and which runs a script when it is left."""
    font = made.pages[0].obj.Resources.Font.F1
    field = _add_annotation(
        made, Subtype=Name.Widget, FT=Name.Tx, T=String("name"), V=String("filled in"), DA=String("/F1 12 Tf 0 g")
    )
    field.AA = Dictionary(Bl=Dictionary(S=Name.JavaScript, JS=String("app.alert(3)")))
    made.Root.AcroForm = Dictionary(
        Fields=Array([field]), NeedAppearances=True, DR=Dictionary(Font=Dictionary(F1=font)), DA=String("/F1 12 Tf 0 g")
    )


def add_signature(made: pikepdf.Pdf) -> None:
    field = _add_annotation(made, Subtype=Name.Widget, FT=Name.Sig, T=String("seal"), V=Dictionary(Type=Name.Sig))
    made.Root.AcroForm = Dictionary(Fields=Array([field]), SigFlags=3)


def add_other_form(made: pikepdf.Pdf) -> None:
    """A form in the language of another standard beside its fields: ISO 32000-1, 12.7.8."""
    made.Root.AcroForm = Dictionary(Fields=Array(), XFA=made.make_indirect(Stream(made, b"<xdp/>")))


def add_name(made: pikepdf.Pdf) -> None:
    """A place by a name that the set may have as well."""
    places = pikepdf.NameTree.new(made)
    places["first-0"] = Array([made.pages[0].obj, Name.Fit])
    made.Root.Names = Dictionary(Dests=places.obj)


def add_hidden_layer(made: pikepdf.Pdf) -> None:
    """Words on a layer that is off, as drawings have them."""
    layer = made.make_indirect(Dictionary(Type=Name.OCG, Name=String("Notes of the drafter")))
    made.Root.OCProperties = Dictionary(OCGs=Array([layer]), D=Dictionary(OFF=Array([layer]), Order=Array([layer])))
    page = made.pages[0]
    page.obj.Resources.Properties = Dictionary(L1=layer)
    page.contents_add(b"/OC /L1 BDC BT /F1 12 Tf 72 300 Td (not for others) Tj ET EMC")


def leave_open(made: pikepdf.Pdf) -> None:
    """Content that turns and shrinks what is drawn behind it, as writers do that forget to close."""
    made.pages[0].contents_add(b"q q 0 0.1 -0.1 0 300 300 cm", prepend=True)


def part_content(made: pikepdf.Pdf) -> None:
    """Content in two streams, on a page that is trimmed in print."""
    made.pages[0].contents_add(b"0 g", prepend=True)
    made.pages[0].trimbox = Array([200, 0, 400, 100])


def misplace_resources(made: pikepdf.Pdf) -> None:
    """A page that opens, and whose resources are no list of resources."""
    made.pages[0].obj.Resources = made.make_indirect(Stream(made, b"none"))


def _add_annotation(made: pikepdf.Pdf, **entries: Any) -> Any:
    found = made.make_indirect(Dictionary(Type=Name.Annot, Rect=Array([72, 500, 300, 530]), **entries))
    page = made.pages[0].obj
    page.Annots = Array([*page.get("/Annots", ()), found])
    return found


def flip_stream(content: bytes) -> bytes:
    """A PDF whose first packed stream has a byte changed in its midst."""
    start = content.index(b"stream\n") + 7
    end = content.index(b"endstream", start)
    middle = (start + end) // 2
    return content[:middle] + bytes([content[middle] ^ 0xFF]) + content[middle + 1 :]
