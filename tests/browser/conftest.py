"""A real browser for the tests of the sheet: Debian's chromium, without a window."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright
from sheets import Files, page_of

ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"]
NAMES = ("chromium", "chromium-browser", "google-chrome")

Lay = Callable[[Files, str], str]


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    found = next((path for name in NAMES if (path := shutil.which(name))), None)
    if found is None:
        told = f"no browser was found ({', '.join(NAMES)}); on Debian: apt-get install chromium"
        if os.environ.get("CI") == "true":
            pytest.fail(told)
        pytest.skip(told)
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=found, args=ARGUMENTS)
        yield chromium
        chromium.close()


@pytest.fixture
def lay(tmp_path: Path) -> Lay:
    """Puts the sheet of a project where a browser finds it: always in the same file."""

    def put(files: Files, name: str) -> str:
        file = tmp_path / "sheet.html"
        file.write_text(page_of(files, name), encoding="utf-8")
        return file.as_uri()

    return put


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A fresh browser page; faults of its script fail the test, and so does any request."""
    context = browser.new_context()
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda fault: faults.append(str(fault)))
    page.on("console", lambda said: faults.append(said.text) if said.type == "error" else None)
    page.on(
        "request", lambda asked: faults.append(asked.url) if "sheet.html" not in asked.url else None
    )
    yield page
    context.close()
    assert faults == []
