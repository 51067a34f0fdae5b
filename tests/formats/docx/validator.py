"""The validator of Word files, which looks at each shape of an element once."""

import hashlib
import re
from pathlib import Path
from typing import Any

from lxml import etree
from openxml_audit import FileFormat, OpenXmlValidator
from openxml_audit.schema.validator import SchemaValidator

_TEXT = re.compile(rb">[^<]+<")


class ShapeValidator(SchemaValidator):
    """The schemas, without what they said nothing against before: the rows of a table differ in their text only.

    What the schemas say of an element depends on the element itself, on the two above it and on the namespaces that
    may be ignored, and never on its text.
    """

    def __init__(self) -> None:
        super().__init__()
        self._right: set[bytes] = set()

    def _validate_element(self, element: Any, context: Any, ignorable_ns: frozenset[str] = frozenset()) -> None:
        shape = _shape_of(element, ignorable_ns)
        if shape in self._right:
            return
        told = len(context.errors)
        super()._validate_element(element, context, ignorable_ns)
        if len(context.errors) == told:
            self._right.add(shape)


def _shape_of(element: Any, ignorable: frozenset[str]) -> bytes:
    """The element without its text, and where it stands."""
    above = [ancestor.tag for ancestor in element.iterancestors()][:2]
    written = _TEXT.sub(b"><", etree.tostring(element, with_tail=False))
    return hashlib.sha256(repr((above, sorted(ignorable))).encode() + written).digest()


def make_validator() -> OpenXmlValidator:
    """The validator of the current format, as it comes."""
    return OpenXmlValidator(file_format=FileFormat.MICROSOFT_365, max_errors=0)


# The schemas are read once for every file.
_BY_SHAPE = make_validator()
_BY_SHAPE._schema_validator = ShapeValidator()


def findings(file: Path, validator: OpenXmlValidator = _BY_SHAPE) -> list[str]:
    """What the validator has against a file, by the schemas (ECMA-376, with the additions of the current format)."""
    return [str(e) for e in validator.validate(file).errors]
