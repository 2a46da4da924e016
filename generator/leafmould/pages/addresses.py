"""Every address in the site, in one place. Chosen before any page is made; nothing else makes one up.

Addresses name their file, are seen from the top of the site, can be written on every disk, and differ even
where a disk takes capitals and small letters for the same. Names of beds, crops and notes are cut down by
`slug`; where two would meet, the one that differs from its own slug gets a suffix made from the whole name. So
do names some system keeps for itself, and what is cut because it is too long.
"""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Callable, Iterable

from leafmould.values.file_names import disk_name, is_device, length
from leafmould.values.names import slug

NOW = "index.html"
BEDS = "beds/index.html"
BED_YEARS = "years.html"
MAP = "map/index.html"
CROPS = "crops/index.html"
FAMILIES = "families.html"
ROTATION = "rotation.html"
WHEN_TO_SOW = "when-to-sow.html"
TURNED_OUT = "turned-out.html"
SEED_TIN = "seed-tin.html"
SEASONS = "seasons/index.html"
BY_DATE = "by-date/index.html"
LESSONS = "lessons.html"
PROBLEMS = "problems.html"
SOURCES = "sources.html"
FIND = "find.html"
WALK = "walk/index.html"
WEATHER = "weather.html"
MAP_SCRIPT = "look/map-years.js"
DATA = "data.html"
STYLE = "look/leafmould.css"
SCRIPT = "look/day-counts.js"
FINDER = "look/find.js"
FIND_INDEX = "look/find-index.js"
ICON = "look/leafmould.svg"

TAKEN = frozenset({"index"})
"""Names of our own in every folder."""

LONGEST_STEP = 200
"""Leaves room for a suffix, a part's number and an ending within what disks take. [bytes]"""

LONGEST_PATH = 900
"""Leaves room for the output folder's own path within what systems take. [bytes]"""


def bed_addresses(keys: Iterable[str]) -> dict[str, str]:
    """Bed key to the page of the bed."""
    return _unique(keys, "beds")


def crop_addresses(keys: Iterable[str]) -> dict[str, str]:
    """Crop key to the page of the crop."""
    return _unique(keys, "crops")


def note_addresses(ids: Iterable[str]) -> dict[str, str]:
    """Entry id to the page of the note: its path under notes/, further dated parts numbered."""
    return _unique(ids, "notes")


def free_page_addresses(ids: Iterable[str]) -> dict[str, str]:
    """Id of a free page to its page: its path under pages/."""
    return _unique(ids, "pages", lambda key: key.lstrip("/"))


def stop_addresses(names: Iterable[str]) -> dict[str, str]:
    """The name of each stop of the walk to its page."""
    return _unique(names, "walk")


def season_address(name: str) -> str:
    """The page of a season: "2026", or "2026/27" in the south."""
    return f"seasons/{_season_slug(name)}.html"


def map_address(name: str) -> str:
    """The map of an earlier season."""
    return f"map/{_season_slug(name)}.html"


def by_date_address(name: str, month: int | None = None) -> str:
    """The list of a year's notes, or of one month of it where a year is too long."""
    tail = "" if month is None else f"-{month:02}"
    return f"by-date/{_season_slug(name)}{tail}.html"


def chapter_address(whole: str, name: str) -> str:
    """A further page of a long history: "beds/long-border.html" and "2019" give "beds/long-border/2019.html"."""
    return f"{whole.removesuffix('.html')}/{_season_slug(name)}.html"


def photo_address(key: str, width: int) -> str:
    """A picture in one width. Its name tells nothing but what bytes it holds."""
    return f"photos/{key}-{width}.jpg"


def family_anchor(family: str) -> str:
    """Where a family stands on the page of families."""
    return slug(family)


def source_anchor(key: str) -> str:
    """The id of a source on its page."""
    return f"source-{slug(key)}"


def _season_slug(name: str) -> str:
    return slug(name.replace("/", " "))


def _unique(
    keys: Iterable[str], folder: str, path_of: Callable[[str], str] = lambda key: key
) -> dict[str, str]:
    wanted = {key: _path(path_of(key)) for key in sorted(keys)}
    meetings = Counter(map(disk_name, wanted.values()))
    return {
        key: f"{folder}/{_kept_apart(key, path, is_shared=meetings[disk_name(path)] > 1)}.html"
        for key, path in wanted.items()
    }


def _path(key: str) -> str:
    whole, _, number = key.rpartition("#")
    if whole and number.isdecimal():  # a further dated part of a file; no slug holds a full stop
        return f"{_path(whole)}.{number}"
    path = "/".join(_step(step) for step in key.split("/"))
    return path if length(path) <= LONGEST_PATH else f"{_cut(path, LONGEST_PATH)}-{_mark(key)}"


def _step(text: str) -> str:
    """A slug that every disk takes as the name of a file or folder."""
    step = slug(text)
    if length(step) > LONGEST_STEP:
        return f"{_cut(step, LONGEST_STEP)}-{_mark(text)}"
    return f"{step}-{_mark(text)}" if is_device(step) else step


def _cut(text: str, longest: int) -> str:
    """The beginning of a text, of whole letters, no longer than so many bytes on any disk."""
    while length(text) > longest:
        text = text[: -max(1, (length(text) - longest) // 9)]  # no letter takes more than nine bytes
    return text.rstrip("-/")


def _mark(key: str) -> str:
    return hashlib.blake2b(key.encode("utf-8", "surrogatepass"), digest_size=3).hexdigest()


def _kept_apart(key: str, path: str, *, is_shared: bool) -> str:
    return f"{path}-{_mark(key)}" if path in TAKEN or (is_shared and path != key) else path


def anchor(address: str) -> tuple[str, str]:
    """The page and the id of an address."""
    page, _, name = address.partition("#")
    return page, name


def root_of(address: str) -> str:
    """The way from a page to the top of the site: "", "../", "../../"."""
    return "../" * address.count("/")
