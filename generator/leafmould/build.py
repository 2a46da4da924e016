"""The whole run, in order: notes, garden, pictures, reckoning, pages, HTML, files.

The only module that knows every stage. Each file lies aside as soon as it is made, and nothing of the site
changes before all of them do: a fault in a layout or the surroundings keeps the old site, whole. Says what
happened; how that is worded is `report`'s.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path

from leafmould.garden.load import Loaded, collector_paused, load
from leafmould.garden.pictures import developed, pictured
from leafmould.output.schemas import schema_files
from leafmould.output.write import Writing, check_folder
from leafmould.pages.addresses import FIND_INDEX, photo_address
from leafmould.pages.calendar import CALENDAR, calendar
from leafmould.pages.data import data_files
from leafmould.pages.feed import FEED, feed
from leafmould.pages.find_index import find_index
from leafmould.pages.moved import Trail, by_name, moved_pages
from leafmould.pages.site import reckon, site_of
from leafmould.pages.tables import table_files
from leafmould.photos.darkroom import Darkroom, Picture, PictureFile
from leafmould.reckon.almanac import almanac
from leafmould.render.html import Renderer
from leafmould.report import BuildReport, Made
from leafmould.values.problems import WrongUse

LOOK = "look"
"""Where a garden keeps templates and styles of its own."""

OUR_ROOMS = ("notes", "plans", "pages", "photos", "records", "to-sort", LOOK, ".leafmould")
"""Folders of a garden that hold the gardener's things, where no site may be put."""

AS_NAMED = "as named"
"""The mark of files whose name tells what is in them: once whole, they need never be made again."""


@collector_paused()
def build(folder: Path, *, to: Path, on: date, household: bool, workers: int | None = None) -> BuildReport:
    """Build the site of a garden folder.

    Args:
        to: the output folder; made if need be.
        on: "today".
        household: keep what is private, and say so on every page.
        workers: how many processes may share the work, or None for one a core; the site is the same for any
            number.
    Raises:
        UnreadableGarden: if garden.yaml cannot be read at all.
        WrongUse: if the output folder holds something else.
        LeafmouldError: if a layout cannot be used, or the disk refuses. The old site stays.
    """
    _check_place(folder, to)
    check_folder(to)
    loaded = load(folder, on=on, household=household)
    darkroom = Darkroom(folder, loaded.settings.photo_widths)
    loaded, pictures = developed(pictured(loaded, darkroom), darkroom, workers=workers)
    with Writing(to) as writing:
        pages = _write(writing, loaded, look=folder / LOOK)
        for name, picture in picture_files(pictures):
            if not writing.keep(name, AS_NAMED):
                writing.add(name, picture.read(), AS_NAMED)
        written = writing.finish()
    made = Made(
        on=on,
        household=household,
        notes=loaded.files,
        plantings=len(loaded.garden.plantings),
        pages=pages,
        changed=len(written.changed),
        removed=len(written.removed),
        left_out=loaded.left_out,
    )
    return BuildReport(
        made=made,
        stamps=written.stamps,
        changed=written.changed,
        removed=written.removed,
        problems=loaded.problems,
        dates=loaded.dates,
    )


def _write(writing: Writing, loaded: Loaded, *, look: Path) -> int:
    """Give every file but the pictures to be written, as soon as it is made; the number of pages."""
    household = loaded.view.household
    problems = loaded.problems if household else loaded.garden.problems
    is_open = "problems" in loaded.view.show
    reckoned = reckon(loaded.garden, almanac(loaded.shown, loaded.garden))
    site = site_of(
        loaded.garden,
        reckoned,
        loaded.vocabulary,
        household=household,
        problems=problems,
        open_problems=is_open,
    )
    renderer = Renderer(site, look)
    trail = Trail(household=household, on=loaded.garden.on)
    titles: dict[str, str] = {}
    for page in site.pages:
        writing.add(page.address, renderer.page(page).encode("utf-8"), trail.mark(page))
        titles[page.address] = page.title
    for name, text in renderer.files():
        writing.add(name, text.encode("utf-8"))
    writing.add(FIND_INDEX, find_index(site.ledger).encode("utf-8"))
    data = data_files(loaded.garden, reckoned.forecasts, problems if household or is_open else None)
    data |= schema_files(data)
    data |= {**table_files(site.ledger), FEED: feed(site.ledger)}
    if days := calendar(site.ledger):
        data[CALENDAR] = days
    for name, content in data.items():
        writing.add(name, content)
    find = by_name(site.ledger, loaded.vocabulary)
    moved = trail.follow(
        writing.marks_before,
        writing.marks,
        by_name=find,
        may_stay=lambda name: writing.is_there(name) and not loaded.tells_hidden(name),
    )
    for old, page in moved_pages(moved, titles):
        writing.add(old.address, renderer.page(page).encode("utf-8"), trail.mark_moved(old))
    return len(titles)


def picture_files(pictures: Mapping[str, Picture]) -> Iterator[tuple[str, PictureFile]]:
    """Every picture file of the site; its name tells what is in it, so that it never changes."""
    for key, made in pictures.items():
        for file in made.files:
            yield photo_address(key, file.size[0]), file


def _check_place(folder: Path, to: Path) -> None:
    """Refuse to put the site among the notes, or in place of the garden."""
    garden, out = folder.resolve(), to.resolve()
    if out == garden or out in garden.parents or any(out.is_relative_to(garden / room) for room in OUR_ROOMS):
        raise WrongUse(
            f'"{to}" holds the garden\'s own files, so no site can be put there. Choose a folder with --to.'
        )
