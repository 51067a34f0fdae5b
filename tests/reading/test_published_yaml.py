"""Invalid YAML of the YAML specification 1.2.2 (2021), what a processor must refuse; retyped `from memory`.

Each ends in a clear error with its line. So does every valid file that describes no project, and every file of the test
data of PyYAML 6.0.4 (its source package of the registry; MIT license, kept in `published_yaml.json` beside the files).
"""

import base64
import json
from pathlib import Path

import pytest

from specgen import pipeline
from specgen.model.problem import Refused

INVALID = {
    "5.2 byte order mark inside a document": "- Invalid use of BOM\n\ufeff\n- Inside a document.\n",
    "5.10 reserved indicator @": "commercial-at: @text\n",
    "5.10 reserved indicator `": "grave-accent: `text\n",
    "5.14 escaped characters": 'Bad escapes:\n  "\\c\n  \\xq-"\n',
    "6.15 repeated YAML directive": "%YAML 1.2\n%YAML 1.1\n---\nfoo: bar\n",
    "6.17 repeated TAG directive": "%TAG ! !foo\n%TAG ! !foo\n---\nbar: x\n",
    "6.25 verbatim tags": "a: !<!> foo\nb: !<$:?> bar\n",
    "6.27 tag shorthands": "%TAG !e! tag:example,2000:app/\n---\na: !e! foo\nb: !h!bar baz\n",
    "7.1 alias that is not known": "First: *unknown\n",
    "7.22 implicit key over two lines": "a: [ foo\n bar: invalid,\n 1 ]\n",
    "8.3 block scalar, a leading line too deep": "a: |\n    \n  text\n",
    "8.3 block scalar, less indented than told": "a: |2\n text\n",
    "9.2 directive behind a document": "a: 1\n%YAML 1.2\nb: 2\n",
    "two keys in one line": "a: b: c\n",
    "a flow mapping that does not end": "a: {b: c\n",
    "a list entry below a mapping": "a: 1\n- b\n",
    "a scalar beside a mapping": "a: 1\nb\nc: 2\n",
    "an anchor on an alias": "a: &x 1\nb: &y *x\n",
    "a comma too many": "a: [1,,2]\n",
    "indentation that leads nowhere": "a:\n    b: 1\n  c: 2\n",
}
VALID = {
    "2.1 sequence of scalars": "- one\n- other\n- third\n",
    "2.2 mapping scalars to scalars": "hr:  65    # Home runs\navg: 0.278 # Batting average\nrbi: 147\n",
    "2.3 mapping scalars to sequences": "american:\n- Boston\nnational:\n- New York\n",
    "2.11 mapping between sequences": "? - Detroit\n  - Chicago\n: - 2001-07-23\n",
    "2.25 unordered sets": "--- !!set\n? one\n? other\n",
    "2.26 ordered mappings": "--- !!omap\n- one: 65\n- other: 63\n",
    "7.3 completely empty flow nodes": "{\n  ? foo :,\n  : bar,\n}\n",
    "8.19 compact block mappings": "- sun: yellow\n- ? earth: blue\n  : moon: white\n",
    "9.4 explicit documents": "---\n{ matches\n% : 20 }\n...\n---\n# Empty\n...\n",
}


@pytest.mark.parametrize("text", [*INVALID.values(), *VALID.values()], ids=[*INVALID, *VALID])
def test_what_is_no_project_ends_in_clear_errors(text: str, tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_text(text, "utf-8")
    with pytest.raises(Refused) as refused:
        pipeline.check(tmp_path / "project.yaml")
    assert all(p.message and 0 < p.line <= text.count("\n") + 1 for p in refused.value.problems)
    assert all(p.hint or "must be plain text" in p.message for p in refused.value.problems)


CORPUS = json.loads((Path(__file__).parent / "published_yaml.json").read_text("utf-8"))
FILES = {name: base64.b64decode(content) for name, content in CORPUS["files"].items()}


def test_the_corpus_is_there_with_its_license() -> None:
    assert "Permission is hereby granted, free of charge" in CORPUS["license"]
    assert sum(name.endswith("loader-error") for name in FILES) > 80
    assert len(FILES) > 250


@pytest.mark.parametrize("name", FILES)
def test_a_file_of_the_corpus_ends_in_clear_errors(name: str, tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_bytes(FILES[name])
    with pytest.raises(Refused) as refused:
        pipeline.check(tmp_path / "project.yaml")
    assert all(p.message and 0 < p.line <= FILES[name].count(b"\n") + 2 for p in refused.value.problems)
