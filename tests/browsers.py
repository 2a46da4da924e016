"""The system's Chromium for tests, and what a page asks for and complains of while it is looked at."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, Page, Request, sync_playwright

QUIET = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run"]
"""Root needs the first; the others keep the browser from asking anything of its makers."""


LEFT = "net::ERR_ABORTED"


@contextmanager
def chromium() -> Iterator[Browser]:
    """A browser, closed afterwards; without Chromium on the machine the test says that it was skipped."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if not found:
        pytest.skip("no Chromium on this machine: apt-get install chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=found, args=QUIET)
        yield browser
        browser.close()


class Overheard:
    """What a page asked for, and what it complained of, from now on."""

    def __init__(self, page: Page) -> None:
        self.asked: list[str] = []
        self.said: list[str] = []
        page.on("request", lambda request: self.asked.append(request.url))
        page.on("requestfailed", self._failed)
        page.on("console", lambda message: self.said.append(message.text))
        page.on("pageerror", lambda error: self.said.append(str(error)))

    def _failed(self, request: Request) -> None:
        """Take down what could not be had; what was on its way when the page was left is no loss."""
        if request.failure != LEFT:
            self.said.append(f"not found: {request.url}")
