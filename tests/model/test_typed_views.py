"""The typed views in the tree are those of the schema."""

from tests.typed_views import STUB, stub


def test_the_stub_in_the_tree_is_the_one_the_schema_gives() -> None:
    assert STUB.read_text("utf-8") == stub()
