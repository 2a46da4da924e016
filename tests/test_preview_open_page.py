"""An open preview page follows the notes by itself, and keeps the list of problems as it was left."""

from __future__ import annotations

import shutil
import signal
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect, sync_playwright

from previews import preview_command

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
GARDEN = "garden: Tansy Hill\ndates: day first\nbeds:\n  - {name: Arch}\n"
SLIP = "---\ndate: 2026-06-18\nwork:\n  - sowed peas <b>'Nroth'</b> in Acrh\n---\n"

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(CHROMIUM is None, reason="no Chromium on this machine"),
]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "notes").mkdir()
    (tmp_path / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    return tmp_path


@pytest.fixture
def address(folder: Path) -> Iterator[str]:
    with subprocess.Popen(
        preview_command("2026-06-20"), cwd=folder, stdout=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        try:
            yield process.stdout.readline().split()[4]
            process.send_signal(signal.SIGINT)
            assert process.wait(timeout=15) == 0
        finally:
            process.kill()  # one that was started with Ctrl-C switched off would be waited for for ever


@pytest.fixture
def page() -> Iterator[Page]:
    with sync_playwright() as player:
        browser = player.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        page = browser.new_page()
        page.set_default_timeout(15_000)
        yield page
        browser.close()


def test_the_open_page_follows_the_notes(folder: Path, address: str, page: Page) -> None:
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.goto(address)
    strip = page.locator("#leafmould-preview")
    expect(strip).to_have_count(0)

    (folder / "notes" / "2026-06-18.md").write_text(SLIP, encoding="utf-8")
    expect(strip.locator("summary")).to_have_text("1 question.", timeout=15_000)
    expect(strip.locator("li")).to_be_hidden()
    strip.locator("summary").click()
    expect(strip.locator("li")).to_be_visible()

    (folder / "notes" / "2026-06-19.md").write_text(SLIP.replace("18", "19"), encoding="utf-8")
    expect(strip.locator("summary")).to_have_text("2 questions.", timeout=15_000)
    expect(strip.locator("li").first).to_be_visible()

    for note in (folder / "notes").iterdir():
        note.unlink()
    expect(strip).to_have_count(0, timeout=15_000)
    assert faults == []
