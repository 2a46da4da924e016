"""Pictures in a browser: they come, nothing moves when they do, and nothing is wider than a telephone."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browsers import chromium
from photo_garden import built, garden_with, jpeg

pytestmark = pytest.mark.browser

PAGES = ("notes/2026/06-20-peas.html", "beds/arch.html", "crops/pea.html", "seasons/2026.html")
NOTE = """\
    ---
    date: 2026-06-20
    bed: Arch
    crop: pea
    did: picked
    photo: [wide.jpg, IMG_2.jpg, tall.jpg]
    ---
    Before.

    ![First pods](IMG_1.jpg)

    Within ![a line](IMG_3.jpg) of text.
    """

WATCH_SHIFTS = """
window.moved = 0;
new PerformanceObserver(list => { for (const e of list.getEntries()) window.moved += e.value; })
  .observe({type: "layout-shift", buffered: true});
"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site with pictures of many shapes."""
    sizes = {
        "IMG_1": (900, 600),
        "IMG_2": (600, 900),
        "IMG_3": (300, 200),
        "wide": (1600, 200),
        "tall": (90, 900),
    }
    photos = {f"photos/{name}.jpg": jpeg(size, green=40 * n) for n, (name, size) in enumerate(sizes.items())}
    garden = garden_with(tmp_path_factory.mktemp("pictures"), {"2026/06-20-peas.md": NOTE}, photos)
    text = (garden / "garden.yaml").read_text("utf-8").replace("[40, 80, 160]", "[200, 480, 900]")
    (garden / "garden.yaml").write_text(text, "utf-8")
    built(garden)
    return garden.parent / "site"


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


def opened(browser: Browser, path: Path, width: int) -> tuple[Page, list[str]]:
    """A page at some width, scrolled to its end so that every picture is asked for; and what went wrong."""
    page = browser.new_context(viewport={"width": width, "height": 800}).new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("requestfailed", lambda request: said.append(request.url))
    page.add_init_script(WATCH_SHIFTS)
    page.goto(path.as_uri())
    for way in range(0, page.evaluate("document.body.scrollHeight"), 300):
        page.evaluate(f"window.scrollTo({{top: {way}, behavior: 'instant'}})")
        page.wait_for_timeout(30)
    page.wait_for_function("[...document.images].every(image => image.complete)")
    return page, said


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("name", PAGES)
def test_pictures_come_without_moving_anything(browser: Browser, site: Path, name: str, width: int) -> None:
    page, said = opened(browser, site / name, width)
    shown = page.evaluate(
        "[...document.images].map(i => [i.naturalWidth > 0, i.clientWidth, i.clientHeight])"
    )
    assert len(shown) >= 4 and all(came and wide and tall for came, wide, tall in shown)
    assert page.evaluate("window.moved") < 0.01
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert said == []
    page.context.close()


@pytest.mark.parametrize("width", [390, 1280])
def test_pictures_keep_their_proportions_and_are_never_blown_up(
    browser: Browser, site: Path, width: int
) -> None:
    page, _ = opened(browser, site / PAGES[0], width)
    images = page.evaluate(
        "[...document.images].map(i => [i.clientWidth, i.clientHeight, +i.getAttribute('width'), +i.getAttribute('height')])"
    )
    assert len(images) == 5
    for wide, tall, own_wide, own_tall in images:
        assert wide <= own_wide
        assert abs(wide / tall - own_wide / own_tall) < 0.03 * own_wide / own_tall + 0.02
    page.context.close()
