"""The views of sections and members by name: `Wall`, `Joint`, and `Description`, the whole project.

What each holds, and of which type, stands in the generated stub beside this file, for editors and for the type checker.
At run time each of them is the one View, which looks its fields up in the schema.
"""

from specgen.model.project import View


def __getattr__(name: str) -> type[View]:
    if not name[:1].isupper():
        raise AttributeError(f"there is no typed view {name!r}")
    return View


def root_of(view: View) -> View:
    """The description of the whole project that a view belongs to."""
    return view.project.root()
