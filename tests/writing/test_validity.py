"""Every document of every example is valid, whole and readable to people who cannot see it.

Word documents are held against the published WordprocessingML schemas by the validator `openxml-audit`; pages are
parsed by `html5lib` as the HTML standard says, its parse errors being faults.
"""

import re
import shutil
import subprocess
import sys
import zipfile
from functools import cache
from pathlib import Path

import html5lib
import pytest
from lxml import etree, html
from openxml_audit import FileFormat, OpenXmlValidator

from specgen.writing.catalogue import templates_folder

EXAMPLES = Path(__file__).parents[2] / "project_examples"
NAMES = sorted(folder.name for folder in EXAMPLES.iterdir() if (folder / "project.yaml").is_file())
OUTSIDE = re.compile(r"""(?:src|href|action|poster)\s*=\s*["']?(?!#|data:|["'])|@import|url\(\s*["']?(?!data:)""")
W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"


def built(name: str, out: Path) -> Path:
    """The package of an example, written by the command."""
    command = [sys.executable, "-m", "specgen", "--quiet", "build", str(EXAMPLES / name / "project.yaml")]
    done = subprocess.run(
        [*command, "--out", str(out), "--draft", "--formats", "docx,html,txt"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode in (0, 1), done.stderr
    return out


@pytest.fixture(scope="module")
def packages(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The packages of all examples."""
    return {name: built(name, tmp_path_factory.mktemp("built") / name) for name in NAMES}


@pytest.mark.parametrize("name", NAMES)
def test_word_documents_fit_the_published_schemas(name: str, packages: dict[str, Path]) -> None:
    for file in packages[name].glob("*.docx"):
        found = OpenXmlValidator(FileFormat.MICROSOFT_365).validate(file)
        assert [str(error) for error in found.errors] == [], file.name


def test_the_validator_finds_what_does_not_fit(packages: dict[str, Path], tmp_path: Path) -> None:
    sound = next(packages["clean"].glob("D05*.docx"))
    with zipfile.ZipFile(sound) as parts, zipfile.ZipFile(tmp_path / "spoiled.docx", "w") as spoiled:
        for part in parts.namelist():
            text = parts.read(part)
            spoiled.writestr(
                part, text.replace(b"<w:tblPr>", b"<w:tblWrong/><w:tblPr>") if "document" in part else text
            )
    assert OpenXmlValidator(FileFormat.MICROSOFT_365).validate(tmp_path / "spoiled.docx").errors


@pytest.mark.skipif(shutil.which("soffice") is None, reason="no office program is installed here")
def test_an_office_program_opens_a_word_document(packages: dict[str, Path], tmp_path: Path) -> None:
    file = next(packages["clean"].glob("D10*.docx"))
    profile = f"-env:UserInstallation=file://{tmp_path}/profile"
    subprocess.run(
        ["soffice", profile, "--headless", "--convert-to", "pdf", "--outdir", str(tmp_path), str(file)],
        check=True,
        capture_output=True,
    )
    assert (tmp_path / file.with_suffix(".pdf").name).read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize("name", NAMES)
def test_word_tables_name_their_columns_on_every_page(name: str, packages: dict[str, Path]) -> None:
    for file in packages[name].glob("*.docx"):
        body = etree.fromstring(zipfile.ZipFile(file).read("word/document.xml"))
        for table in body.iter(f"{W}tbl"):
            rows = table.findall(f"{W}tr")
            marked = [row.find(f"{W}trPr/{W}tblHeader") is not None for row in rows]
            assert not any(marked[1:])
            assert all(row.find(f"{W}trPr/{W}cantSplit") is not None for row in rows if marked[0])


@pytest.mark.parametrize("name", NAMES)
def test_pages_are_valid_and_ask_for_nothing_outside(name: str, packages: dict[str, Path]) -> None:
    for file in packages[name].glob("*.html"):
        text = file.read_text("utf-8")
        html5lib.HTMLParser(strict=True).parse(text)
        assert not re.search(
            r"""(?:src|href|action|poster)\s*=\s*["']?(?!#|data:|["'])|@import|url\(\s*["']?(?!data:)""", text
        )


@pytest.mark.parametrize("name", NAMES)
def test_pages_can_be_read_without_seeing_them(name: str, packages: dict[str, Path]) -> None:
    for file in packages[name].glob("*.html"):
        page = html.fromstring(file.read_text("utf-8"))
        assert page.get("lang") == "en-US"
        levels = [int(heading.tag[1]) for heading in page.iter("h1", "h2", "h3", "h4")]
        assert levels[0] == 1
        assert levels.count(1) == 1
        assert all(later <= earlier + 1 for earlier, later in zip(levels, levels[1:], strict=False))
        assert page.xpath("//main")
        assert all(cell.get("scope") for cell in page.iter("th"))
        assert all(picture.get("alt") for picture in page.iter("img"))
        assert page.xpath("//meta[@name='viewport']")
        known = {element.get("id") for element in page.xpath("//*[@id]")}
        assert {link.removeprefix("#") for link in page.xpath("//a/@href")} <= known


# Contrast of two colors and the least of it for text: WCAG 2.1 (W3C, 2018), 1.4.3; from memory.
LEAST_CONTRAST = 4.5


@cache
def luminance(color: str) -> float:
    parts = [int(color[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.03928 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_contrast_is_reckoned_as_published() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)


def test_text_stands_out_from_its_ground() -> None:
    style = (templates_folder() / "style.css").read_text("utf-8")
    named = dict(re.findall(r"--(\w+): (#[0-9a-f]{3,6})", style))

    def color(text: str) -> str:
        found = named.get(text.removeprefix("var(--").removesuffix(")"), text)
        return found if len(found) == 7 else "#" + "".join(2 * letter for letter in found[1:])

    inks = {color(found) for found in re.findall(r"[{;] ?color: ([^;}]+)", style) if found != "inherit"}
    grounds = {color(found) for found in re.findall(r"background: ([^;}]+)", style)}
    dark = {one for one in inks | grounds if luminance(one) < 0.4}
    assert len(dark) >= 3
    assert len(grounds - dark) >= 3
    for ink in dark:
        for ground in {"#ffffff", *grounds} - dark:
            assert contrast(ink, ground) >= LEAST_CONTRAST, (ink, ground)
