"""The views of sections and members by name: `Wall`, `Joint`, and `Description`, the whole project.

Their fields and types are declared in the generated stub beside this file, for editors and the type checker. At run
time each of them is View, which looks its fields up in the schema.
"""

from specgen.model.project import View


def __getattr__(name: str) -> type[View]:
    if not name[:1].isupper():
        raise AttributeError(f"there is no typed view {name!r}")
    return View


def root_of(view: View) -> View:
    """The description of the whole project that a view belongs to."""
    return view.project.root()
