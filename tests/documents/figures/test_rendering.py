"""What a template of a figure prints is text, whatever stands in it."""

import jinja2
import pytest

from specgen.documents.figures import rendering


@pytest.fixture
def templates(monkeypatch, tmp_path):
    (tmp_path / "figures").mkdir()
    monkeypatch.setattr(rendering, "templates_folder", lambda: tmp_path)
    rendering._environment.cache_clear()
    yield tmp_path / "figures"
    rendering._environment.cache_clear()


def test_words_of_the_project_are_escaped(templates):
    (templates / "a.svg.j2").write_text("<text>{{ name }}</text>", "utf-8")
    assert rendering.render_figure("a", {"name": 'A & <b> "c"'}) == "<text>A &amp; &lt;b&gt; &#34;c&#34;</text>"


def test_a_value_that_is_not_given_is_an_error(templates):
    (templates / "a.svg.j2").write_text("<text>{{ name }}</text>", "utf-8")
    with pytest.raises(jinja2.UndefinedError, match="name"):
        rendering.render_figure("a", {})


@pytest.mark.parametrize(
    ("length", "written"), [(12.5, "12.5"), (3, "3"), (0.0004, "0"), (-0.0004, "0"), (1 / 3, "0.333"), (100, "100")]
)
def test_a_length_on_paper_is_written_to_a_thousandth_of_a_millimeter(length, written):
    assert rendering.write_mm(length) == written
