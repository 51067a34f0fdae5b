"""A firm's own frame and looks of the web page reach nothing outside it. What a page may have is ours to say."""

from pathlib import Path

import html5lib
import pytest

from specgen import building
from specgen.documents.catalogue import templates_folder
from specgen.model.problem import Problem, Refused
from tests.support import SMALL, written

FRAME = (templates_folder() / "page.html").read_text("utf-8")
# W3C, Content Security Policy Level 3: nothing is fetched save what the page holds itself.
POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
# A picture of one pixel.
PIXEL = "data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA="


def page(folder: Path, name: str = "", text: str = "") -> str:
    own = folder / "words"
    own.mkdir()
    (own / (name or "style.css")).write_text(text, "utf-8")
    building.build(written(folder, SMALL), folder / "out", ("html",), ("D10",), templates=own if name else None)
    return next((folder / "out").glob("D10-*.html")).read_text("utf-8")


def refused(folder: Path, name: str, text: str) -> Problem:
    with pytest.raises(Refused) as told:
        page(folder, name, text)
    assert not (folder / "out").exists()
    (problem,) = told.value.problems
    assert problem.file == f"words/{name}"
    assert problem.hint
    return problem


BODY = [
    "<script>alert(1)</script>",
    "<SCRIPT SRC=//x></SCRIPT>",
    "<p onclick=alert(1)>x</p>",
    "<p/onclick=alert(1)>x</p>",
    "<img src=x onerror=alert(1)>",
    "<img srcset='https://x.example/a.png 1x'>",
    "<img src=https://x.example/a.png>",
    "<img src='data:image/svg+xml;base64,PHN2Zz48L3N2Zz4='>",
    "<img src='data:image/png;base64,TVqQAAMAAAA='>",
    "<iframe srcdoc='<script>1</script>'></iframe>",
    "<svg onload=alert(1)></svg>",
    "<svg><a xlink:href='javascript:1'>x</a></svg>",
    "<object data=x></object>",
    "<embed src=x>",
    "<form action=//x><input></form>",
    "<video poster=//x></video>",
    "<a href='javascript:alert(1)'>x</a>",
    "<a href='&#106;avascript:alert(1)'>x</a>",
    "<a href=' //x.example'>x</a>",
    "<a ping=//x href='#a'>x</a>",
    "<table background=//x></table>",
    "<p style='background: url(//x)'>x</p>",
    "<p style='background: \\75rl(//x)'>x</p>",
    '<p a"onclick=alert(1)>x</p>',
    '<p aria-"onclick=alert(1)>x</p>',
    "<noscript><p title='</noscript><img src=x onerror=1>'></noscript>",
    "<template><script>1</script></template>",
]
HEAD = [
    "<meta http-equiv=refresh content='0;url=//x'>",
    "<meta http-equiv=Content-Security-Policy content='img-src *'>",
    "<link rel=stylesheet href=//x>",
    "<base href=//x>",
    "<meta name=referrer content=unsafe-url>",
]


@pytest.mark.parametrize("piece", BODY)
def test_a_frame_that_reaches_out_of_the_page_is_refused_with_its_line(piece: str, tmp_path: Path) -> None:
    assert refused(tmp_path, "page.html", FRAME.replace("$body", f"{piece}\n$body")).line == 18


@pytest.mark.parametrize("piece", HEAD)
def test_a_head_that_reaches_out_of_the_page_is_refused_with_its_line(piece: str, tmp_path: Path) -> None:
    assert refused(tmp_path, "page.html", FRAME.replace("<title>", f"{piece}<title>")).line == 6


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("$body", "<p title=$body></p>$body", "cannot stand in title"),
        ("$body", "<p>$body</p>", "$body cannot stand in <p>"),
        ("$body", "<p>${body}</p>", "$body cannot stand in <p>"),
        ("$body", "$style $body", "$style cannot stand in <main>"),
        ("$title", "$title $body", "$body cannot stand in <title>"),
        ("$style", "$style a { color: red }", "<style> holds more than $style"),
        ("$style", "$style</style><style>@import 'x';", "<style> once"),
    ],
)
def test_parts_stand_only_where_they_can_be_filled_in(old: str, new: str, said: str, tmp_path: Path) -> None:
    assert said in refused(tmp_path, "page.html", FRAME.replace(old, new)).message


LOOKS = [
    "@import 'x.css';",
    "@\\69mport 'x.css';",
    "@font-face { src: url(x) }",
    "@namespace url(//x);",
    "a { background: url(https://x.example/a.png) }",
    "a { background: URL( '//x' ) }",
    "a { background: u\\72l(//x) }",
    "a { background: url(/**/ //x) }",
    "a { background: url(data:text/html,x) }",
    "a { background: url('data:image/svg+xml;base64,PHN2Zz4=') }",
    "a { background: image-set('//x' 1x) }",
    "a { background: -webkit-image-set(url(//x) 1x) }",
    "a { background: cross-fade(url(//x), red) }",
    "a { background: src('//x') }",
    "a { width: calc(url(//x)) }",
    "a { width: expression(alert(1)) }",
    "a { -moz-binding: url(//x) }",
    "</style><svg onload=alert(1)>",
    "<!-- a { } -->",
]


@pytest.mark.parametrize("looks", LOOKS)
def test_looks_that_reach_out_of_the_page_are_refused_with_their_line(looks: str, tmp_path: Path) -> None:
    assert refused(tmp_path, "style.css", f"a {{ color: red }}\n{looks}\n").line == 2


def policies(text: str) -> list[str]:
    """The policies of a page that stand before anything it could ask for."""
    head = html5lib.parse(text, namespaceHTMLElements=False).find("head")
    assert head is not None
    return [str(tag.get("content")) for tag in head[:1] if tag.get("http-equiv") == "Content-Security-Policy"]


def test_every_page_asks_for_nothing_outside_itself(tmp_path: Path) -> None:
    assert policies(page(tmp_path)) == [POLICY]


def test_a_frame_cannot_drop_the_policy(tmp_path: Path) -> None:
    frame = FRAME.replace("<head>", "<!-- <head> --><head lang='en'>")
    assert policies(page(tmp_path, "page.html", frame)) == [POLICY]


def test_our_own_files_serve_as_those_of_a_firm(tmp_path: Path) -> None:
    style = (templates_folder() / "style.css").read_text("utf-8")
    assert style in page(tmp_path, "style.css", style)
    (tmp_path / "frame").mkdir()
    (tmp_path / "built").mkdir()
    own, ours = page(tmp_path / "frame", "page.html", FRAME), page(tmp_path / "built")
    assert own == ours


def test_a_frame_may_hold_a_picture_a_list_and_a_link_within(tmp_path: Path) -> None:
    piece = f"<p>$$5 &amp; <b>more</b></p><img src='{PIXEL}' alt='Us'><ul><li><a href='#content'>Up</a></li></ul>"
    text = page(tmp_path, "page.html", FRAME.replace("$body", f"{piece}$body"))
    assert "<p>$5 &amp; <b>more</b></p>" in text
    assert PIXEL in text
