"""All pages of a garden's site, in the order of its masthead.

Called by the build once the garden is assembled and what may be shown has been decided. Adding a kind of
page means a function and a line in `make_pages`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from leafmould.facts import tables
from leafmould.garden.model import Garden, Planting
from leafmould.garden.seasons import first_month, season_of
from leafmould.garden.waits import Waits
from leafmould.pages import addresses
from leafmould.pages.a_to_z import find_page
from leafmould.pages.bed import bed_pages
from leafmould.pages.beds import bed_years_pages, beds_page
from leafmould.pages.by_date import by_date_pages
from leafmould.pages.crop import crop_pages, crops_page
from leafmould.pages.data_page import data_page
from leafmould.pages.families import families_page
from leafmould.pages.figures import day_figure
from leafmould.pages.free import free_pages, free_title
from leafmould.pages.ledger import Ledger, Reckoned
from leafmould.pages.lists import lessons_pages
from leafmould.pages.map import map_pages
from leafmould.pages.mentions import Mentions
from leafmould.pages.next_in_beds import rotation_page
from leafmould.pages.note import note_pages
from leafmould.pages.now import now_page
from leafmould.pages.page import Figure, Link, Page
from leafmould.pages.problems import problems_page
from leafmould.pages.season import season_pages, seasons_page
from leafmould.pages.seed_tin import seed_tin_page
from leafmould.pages.sources import sources_page
from leafmould.pages.turned_out import turned_out_page
from leafmould.pages.walk import walk_pages
from leafmould.pages.ways import is_there, near
from leafmould.pages.weather import weather_page
from leafmould.pages.when_to_sow import when_to_sow_page
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.amounts import amounts_by_crop
from leafmould.reckon.badges import badges
from leafmould.reckon.coming_up import coming_up
from leafmould.reckon.heat_needs import heat_needs
from leafmould.reckon.here import forecasts_here
from leafmould.reckon.known import KnownLine, known_of
from leafmould.reckon.season_here import cover_words, dark_by_month, dark_weeks, frost_lines
from leafmould.reckon.seed_tin import lots_by_crop, seed_tin
from leafmould.reckon.windows import windows
from leafmould.values.names import Vocabulary
from leafmould.values.problems import Problem

MASTHEAD = (
    ("now", "Now", addresses.NOW),
    ("beds", "Beds", addresses.BEDS),
    ("map", "Map", addresses.MAP),
    ("years", "Beds by years", addresses.BED_YEARS),
    ("crops", "Crops", addresses.CROPS),
    ("families", "Families", addresses.FAMILIES),
    ("seasons", "Seasons", addresses.SEASONS),
    ("notes", "Notes", addresses.BY_DATE),
    ("lessons", "Lessons", addresses.LESSONS),
    ("walk", "Walk", addresses.WALK),
    ("problems", "Problems", addresses.PROBLEMS),
    ("find", "Find", addresses.FIND),
)
"""Section, word and address, in order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """A word of the masthead."""

    section: str
    text: str
    to: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """What all pages of a build share, and the way to the pages."""

    name: str
    on: Figure  # the day it speaks for
    household: bool
    ways: tuple[Way, ...]
    free: tuple[Way, ...]  # the gardener's own pages
    months: tuple[str, ...]  # twelve letters, in the order of a season
    mentions: Mentions
    note_by_file: dict[str, str]  # a note's path inside the garden folder to its page
    ledger: Ledger

    def near(self, page: Page) -> tuple[str, tuple[Link, ...]]:
        """The pages that stand together with one, and what they are about; none for most."""
        return near(page.address, self.ledger)

    @property
    def pages(self) -> Iterator[Page]:
        """Every page, made when it is asked for: a large garden's pages need not be held at once."""
        return make_pages(self.ledger, self.mentions)


def make_site(
    garden: Garden,
    almanac: Almanac,
    *,
    vocabulary: Vocabulary,
    household: bool,
    problems: tuple[Problem, ...],
) -> Site:
    """The whole site as values; `problems` are shown in a household build only."""
    return site_of(garden, reckon(garden, almanac), vocabulary, household=household, problems=problems)


def site_of(
    garden: Garden,
    reckoned: Reckoned,
    vocabulary: Vocabulary,
    *,
    household: bool,
    problems: tuple[Problem, ...],
    open_problems: bool = False,
) -> Site:
    """The site of a garden with what was reckoned for it.

    Args:
        problems: shown in a household build only.
        open_problems: show them in a public build too.
    """
    ledger = Ledger(garden, reckoned, household=household, problems=problems, open_problems=open_problems)
    told = (*reversed(garden.entries), *garden.free_pages)
    notes = {entry.at.file: to for entry in told if (to := ledger.to_note(entry.id))}
    return Site(
        name=garden.name,
        on=day_figure(garden.on),
        household=household,
        ways=tuple(
            Way(section=section, text=text, to=to) for section, text, to in MASTHEAD if is_there(to, ledger)
        ),
        free=tuple(
            Way(section="free", text=free_title(page), to=ledger.free_addresses[page.id])
            for page in garden.free_pages
            if page.id in ledger.free_addresses
        ),
        months=tuple("JASONDJFMAMJ" if garden.is_southern else "JFMAMJJASOND"),
        mentions=Mentions(vocabulary, ledger),
        note_by_file=notes,
        ledger=ledger,
    )


def make_pages(ledger: Ledger, mentions: Mentions) -> Iterator[Page]:
    """Every page, each address once."""
    yield now_page(ledger)
    yield beds_page(ledger)
    yield from bed_pages(ledger)
    yield from map_pages(ledger)
    yield from bed_years_pages(ledger)
    yield crops_page(ledger)
    yield from crop_pages(ledger, mentions)
    yield families_page(ledger)
    yield rotation_page(ledger)
    yield when_to_sow_page(ledger)
    if ledger.reckoned.tin:
        yield seed_tin_page(ledger)
    if is_there(addresses.WEATHER, ledger):
        yield weather_page(ledger)
    yield turned_out_page(ledger)
    yield seasons_page(ledger)
    yield from season_pages(ledger)
    yield from by_date_pages(ledger)
    yield from note_pages(ledger)
    yield from lessons_pages(ledger)
    yield from walk_pages(ledger, mentions)
    yield from free_pages(ledger)
    if ledger.shows_problems:
        yield problems_page(ledger)
    yield data_page(ledger)
    yield sources_page(ledger)
    yield find_page(ledger)


def reckon(garden: Garden, almanac: Almanac) -> Reckoned:
    """Expectations and labels of every planting, and the tables behind them."""
    here = forecasts_here(garden, almanac)
    forecasts = here.forecasts
    waits, up = Waits(garden), coming_up(garden, almanac, almanac.warmth.mean)
    tin = seed_tin(garden, almanac)
    season = season_of(garden.on, first_month(is_southern=garden.is_southern))
    return Reckoned(
        forecasts=forecasts,
        badges={
            p.id: badges(p, garden, forecasts.get(p.id), waits.safe_day(p), up.get(p.id), waits.unrecorded(p))
            for p in garden.plantings
        },
        families=tables.families(),
        sources=tables.sources(),
        known=_known(garden, almanac),
        windows={key: windows(key, almanac, season + 1) for key in garden.crops},
        windows_now={key: windows(key, almanac, season) for key in garden.crops},
        turned_out=here.turned,
        uses_record=here.uses_record,
        uses_warmth=here.uses_warmth,
        frosts=frost_lines(garden, almanac),
        dark=dark_weeks(almanac),
        dark_by_month=dark_by_month(almanac),
        cover=cover_words(almanac),
        coming_up=up,
        heat=heat_needs(garden, almanac),
        amounts=amounts_by_crop(garden, almanac, lots_by_crop(tin)),
        own_words=almanac.own_words,
        tin=tin,
        warmth=almanac.warmth,
    )


def _known(garden: Garden, almanac: Almanac) -> dict[str, tuple[KnownLine, ...]]:
    plantings: dict[str, list[Planting]] = {key: [] for key in garden.crops}
    for planting in garden.plantings:
        for crop in dict.fromkeys(planting.crops):
            plantings[crop].append(planting)
    return {key: known_of(key, crop.family, plantings[key], almanac) for key, crop in garden.crops.items()}
