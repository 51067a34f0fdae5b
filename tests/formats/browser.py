"""Pages opened in Chromium without a window: what it says, what it asks for, and what an accessibility checker finds.

The checker is axe-core (MPL-2.0), as the package `axe-core-python` of the registry holds it; it is part of no product.
"""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.resources import files
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, sync_playwright

PHONE, DESK = 375, 1280
AXE = files("axe_core_python").joinpath("axe.min.js").read_text("utf-8")


@contextmanager
def chromium() -> Iterator[Browser]:
    """The browser of the system, which `.ci/run` installs."""
    program = shutil.which("chromium")
    assert program, "these tests need Chromium on the path: apt-get install chromium"
    with sync_playwright() as playwright:
        # The kernel gives root no sandbox.
        words = ["--no-sandbox"] if os.geteuid() == 0 else []
        browser = playwright.chromium.launch(executable_path=program, args=words)
        yield browser
        browser.close()


class Opened:
    """A page of a file: `page` itself, what was `said` on its console, and what it `asked` for beside its file."""

    def __init__(self, browser: Browser, file: Path, width: int, script: bool) -> None:
        self.context = browser.new_context(viewport={"width": width, "height": 900}, java_script_enabled=script)
        self.page: Page = self.context.new_page()
        self.said: list[str] = []
        self.asked: list[str] = []
        self.page.on("console", lambda message: self.said.append(message.text))
        self.page.on("pageerror", lambda error: self.said.append(str(error)))
        self.page.on("dialog", lambda dialog: (self.said.append(dialog.message), dialog.dismiss()))
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.goto(file.as_uri())
        self.asked.remove(file.as_uri())

    def find_faults(self) -> list[str]:
        """What the checker finds serious or critical."""
        self.page.evaluate(AXE)
        found: list[dict[str, Any]] = self.page.evaluate("axe.run().then(found => found.violations)")
        grave = [one for one in found if one["impact"] in ("serious", "critical")]
        return [f"{one['id']}: {one['nodes'][0]['html'][:200]}" for one in grave]

    def is_wider_than_its_window(self) -> bool:
        """Whether it moves from side to side."""
        return bool(self.page.evaluate("document.documentElement.scrollWidth > window.innerWidth"))


@contextmanager
def opened(browser: Browser, file: Path, width: int = DESK, *, script: bool = True) -> Iterator[Opened]:
    """A file in a window of this width, in pixels."""
    made = Opened(browser, file, width, script)
    try:
        yield made
    finally:
        made.context.close()
