"""The libraries of the PDF, which the extra `pdf` installs."""

from importlib.util import find_spec

from specgen.model.problem import refuse

_NEEDED = ("typst", "pikepdf")


def can_write() -> bool:
    """Whether the libraries are installed; none of them is loaded."""
    return all(find_spec(name) is not None for name in _NEEDED)


def require_libraries() -> None:
    """Raise Refused where the libraries are not installed."""
    if not can_write():
        raise refuse("the PDF needs libraries that are not installed", "install specgen with its extra pdf")
