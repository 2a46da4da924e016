"""Pages that stand elsewhere now: at the old address of each, a small page that leads on.

Worked out after all pages of a build are made, from what the last build left in the same folder: its own list
holds for every page a mark written here. Nothing is guessed from what a reader may not see. A page that is left
out, or became private, leads nowhere: it is gone.
"""

from __future__ import annotations

import hashlib
import re
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from difflib import get_close_matches

from leafmould.garden.model import Entry
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link, Page
from leafmould.values.file_names import disk_name
from leafmould.values.names import Kind, Vocabulary, fold

MOST = 300
"""So many old addresses lead on; the oldest of them go first."""

NEAR = 0.8
"""How alike two spellings of a name must be to count for one: by the share of letters in the same order."""

ENDING = ".html"
LEADS = " > "
"""In the mark of a page that leads on, before where to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedPage:
    """The values of a page that leads on."""

    to: Link


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """An old address, and where it leads since when."""

    address: str
    to: str
    since: str  # ISO


def same_words(entry: Entry) -> str:
    """A short name for what a note's page says in the gardener's own words; "" for one that says nothing.

    A note is told by it when its file has another name. Its day is left out, which often stands in the name.
    """
    lines = dict.fromkeys(action.text for action in entry.actions)
    said = [entry.title or "", entry.body, *lines, *(words.text for words in entry.words)]
    if not any(said):
        return ""
    return hashlib.blake2b("\n".join(said).encode("utf-8", "surrogatepass"), digest_size=8).hexdigest()


class Trail:
    """What one build writes down of its pages, and finds again in the list of the one before.

    A build for the household and one for everybody do not follow each other's traces.
    """

    def __init__(self, *, household: bool, on: date) -> None:
        """Take what kind of build it is, and "today"."""
        self._kind = "household" if household else "public"
        self._on = on.isoformat()

    def mark(self, page: Page) -> str:
        """What the next build is to be told of a page."""
        return f"{self._kind} {page.same}".rstrip()

    def mark_moved(self, moved: Moved) -> str:
        """What it is to be told of a page that leads on."""
        return f"{self._kind} {moved.since}{LEADS}{moved.to}"

    def follow(
        self,
        before: Mapping[str, str],
        now: Mapping[str, str],
        *,
        by_name: Callable[[str, frozenset[str]], str],
        may_stay: Callable[[str], bool],
    ) -> tuple[Moved, ...]:
        """The old addresses that lead on.

        Args:
            before: the names of the last build's files, with their marks.
            now: the same of this build.
            by_name: where a page may be found by its old address and the addresses that are new, or "".
            may_stay: whether an old address may go on standing there.
        """
        new = frozenset(now.keys() - {name for name, mark in before.items() if LEADS not in mark})
        taken = {disk_name(name) for name in now}
        gone = {
            name: mark
            for name, mark in before.items()
            if disk_name(name) not in taken and name[-5:] == ENDING
        }
        ours = {
            name: mark.partition(" ")[2]
            for name, mark in gone.items()
            if mark.partition(" ")[0] == self._kind
        }
        found = self._by_words({n: m for n, m in ours.items() if LEADS not in m}, now, new)

        def place(name: str) -> str:
            return name if name in now else found.get(name) or _chapter(name, now) or by_name(name, new)

        moved = [self._moved(name, said, place) for name, said in sorted(ours.items())]
        leading = [m for m in moved if m.to in now and may_stay(m.address)]
        newest = sorted(leading, key=lambda m: m.since, reverse=True)[:MOST]
        return tuple(sorted(newest, key=lambda m: m.address))

    def _moved(self, name: str, said: str, place: Callable[[str], str]) -> Moved:
        since, leads, to = said.partition(LEADS)
        if leads:
            return Moved(address=name, to=place(to), since=since)
        return Moved(address=name, to=place(name), since=self._on)

    def _by_words(
        self, gone: Mapping[str, str], now: Mapping[str, str], new: Iterable[str]
    ) -> dict[str, str]:
        """The new pages that say just what a page that is gone said, where there is one of each."""
        old, fresh = _by_said(gone.items()), _by_said((n, now[n].partition(" ")[2]) for n in new)
        return {
            names[0]: fresh[said][0]
            for said, names in old.items()
            if len(names) == 1 and len(fresh.get(said, ())) == 1
        }


def by_name(ledger: Ledger, vocabulary: Vocabulary) -> Callable[[str, frozenset[str]], str]:
    """Finds the page of a bed or crop by a name it is still known by, else by one spelt almost the same."""
    rooms = {
        "beds": (ledger.bed_pages, (Kind.BED,)),
        "crops": (ledger.crop_pages, (Kind.CROP, Kind.CROP_GROUP)),
    }

    def find(address: str, new: frozenset[str]) -> str:
        room, _, rest = address.removesuffix(ENDING).partition("/")
        name = rest.partition("/")[0]
        if room not in rooms:
            return ""
        pages, kinds = rooms[room]
        known = vocabulary.by_words.get(fold(name), ()) or vocabulary.with_public.get(fold(name), ())
        keys = [known.key for known in known if known.kind in kinds]
        return next((pages[key] for key in keys if key in pages), "") or _near(
            name, room, new & {*pages.values()}
        )

    return find


def moved_pages(moved: Iterable[Moved], titles: Mapping[str, str]) -> Iterator[tuple[Moved, Page]]:
    """The small pages that lead on."""
    for one in moved:
        yield (
            one,
            Page(
                address=one.address,
                template="moved.html",
                title="This page has moved",
                section="",
                values=MovedPage(to=Link(text=titles.get(one.to, "its new place"), to=one.to)),
            ),
        )


def _by_said(pages: Iterable[tuple[str, str]]) -> dict[str, list[str]]:
    found: defaultdict[str, list[str]] = defaultdict(list)
    for name, said in sorted(pages):
        if said:
            found[said].append(name)
    return found


def _chapter(name: str, now: Iterable[str]) -> str:
    """Where a year of a long history stands, now that the history is cut at other years; "" for no such page."""
    whole, _, year = name.removesuffix(ENDING).rpartition("/")
    if f"{whole}{ENDING}" not in now:
        whole, _, year = name.removesuffix(ENDING).rpartition("-")  # a month of a long year
        return f"{whole}{ENDING}" if year.isdecimal() and f"{whole}{ENDING}" in now else ""
    later = (page for page in now if page.startswith(f"{whole}/") and page >= f"{whole}/{year}")
    return min(later, default=f"{whole}{ENDING}")


def _near(name: str, room: str, new: Iterable[str]) -> str:
    """A new page whose name differs from the old one in a letter or two, and in no number."""
    names = {page.removeprefix(f"{room}/").removesuffix(ENDING): page for page in sorted(new)}
    alike = [other for other in names if re.findall(r"\d+", other) == re.findall(r"\d+", name)]
    found = get_close_matches(name, alike, n=1, cutoff=NEAR)
    return names[found[0]] if found else ""
