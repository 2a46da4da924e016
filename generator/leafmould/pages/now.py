"""The first page: what can be picked, begun and looked at today, what stands where, and this week in earlier years.

Due lines lapse by themselves: nothing stays on the list because nobody ticked it off.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from leafmould.garden.model import Entry, Planting
from leafmould.garden.queries import DAYS_BACK, DAYS_ON
from leafmould.pages.addresses import NOW, WHEN_TO_SOW, by_date_address
from leafmould.pages.at_hand import ToBegin, overdue, soon, to_begin, to_pick, waits
from leafmould.pages.beds import BedSummary, bed_summary
from leafmould.pages.doings import lessons_of, note_line
from leafmould.pages.figures import day_figure, how_long
from leafmould.pages.labels import planting_line
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Figure, Lesson, Link, NoteLine, Page, PlantingLine
from leafmould.values.wording import day_range

MOST_DUE = 7
"""Lines of what is due: a list longer than a week's evenings is not read."""
MOST_TO_PICK = 14
"""Lines of what can be picked: one round of the garden with a basket."""
MOST_TO_BEGIN = 12
"""Crops that may be begun, named; the page of sowing has them all."""
QUIET_DAYS = 14
"""After so many days without a note the page says so."""
MOST_THIS_WEEK = 120
"""Notes shown from this week in earlier years."""
MOST_NOTES = 6
MOST_LESSONS = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlierYear:
    """This week in one earlier year."""

    name: str
    notes: tuple[NoteLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NowPage:
    """The values of the first page."""

    tables: tuple[Link, ...]  # beds by years
    pick: tuple[PlantingLine, ...]  # picked lately, or ripe by what is expected
    more_to_pick: int
    due: tuple[PlantingLine, ...]  # near
    more_due: int  # how many more would be due
    begin: tuple[ToBegin, ...]  # what may be begun today
    more_to_begin: int
    to_sowing: Link  # the page of all that
    overdue: tuple[PlantingLine, ...]  # expected before now, and no picking noted
    waits: tuple[PlantingLine, ...]  # picked or near, and not to be picked yet
    look: tuple[PlantingLine, ...]  # sown, and not seen up in the time it takes
    beds: tuple[BedSummary, ...]
    unused: tuple[BedSummary, ...]  # nothing recorded as standing
    earlier: tuple[EarlierYear, ...]
    long_ago: tuple[Link, ...]  # the notes of years still earlier
    week: str  # "12–18 July"
    latest: tuple[NoteLine, ...]
    lessons: tuple[Lesson, ...]
    quiet_since: Figure | None  # the last note's day, if long ago
    quiet_for: str
    is_new: bool  # no note at all yet


def now_page(ledger: Ledger) -> Page:
    """The first page."""
    pick, due, begin = to_pick(ledger), soon(ledger), to_begin(ledger)
    waiting = waits(ledger)
    empty = {bed.bed for bed in ledger.empty_beds(ledger.garden.on)}
    beds = ledger.beds_on(ledger.garden.on)
    dated = [e for e in ledger.garden.entries if e.when]
    last = max((e.when.last for e in dated if e.when), default=None)
    quiet = (ledger.garden.on - last).days if last else 0
    earlier, long_ago = _earlier(ledger)
    values = NowPage(
        tables=_tables(ledger),
        pick=_lines(pick, MOST_TO_PICK, ledger),
        more_to_pick=max(0, len(pick) - MOST_TO_PICK),
        due=_lines(due, MOST_DUE, ledger),
        more_due=max(0, len(due) - MOST_DUE),
        begin=begin[:MOST_TO_BEGIN],
        more_to_begin=max(0, len(begin) - MOST_TO_BEGIN),
        to_sowing=Link(text="When to sow", to=WHEN_TO_SOW),
        overdue=_lines([p for p in overdue(ledger) if p not in waiting], MOST_DUE, ledger),
        waits=_lines(waiting, MOST_TO_PICK, ledger),
        look=_lines(_to_look_at(ledger), MOST_DUE, ledger),
        beds=tuple(bed_summary(b, ledger) for b in beds if b.key not in empty),
        unused=tuple(bed_summary(b, ledger) for b in beds if b.key in empty),
        earlier=earlier,
        long_ago=long_ago,
        week=_week(ledger),
        latest=tuple(note_line(e, ledger) for e in dated[: -MOST_NOTES - 1 : -1]),
        lessons=_lessons_in_season(ledger),
        quiet_since=day_figure(last) if last and quiet > QUIET_DAYS else None,
        quiet_for=how_long(quiet),
        is_new=not ledger.garden.entries,
    )
    return Page(address=NOW, template="now.html", title="Now", section="now", values=values)


def _tables(ledger: Ledger) -> tuple[Link, ...]:
    """Every table of beds and years, so that each year of each bed is two links away."""
    first, *others = ledger.year_tables
    whole = "Every bed in every year" if not others else f"Every bed, {first.name}"
    return (Link(text=whole, to=first.address), *(Link(text=c.name, to=c.address) for c in others))


def _lines(plantings: Sequence[Planting], most: int, ledger: Ledger) -> tuple[PlantingLine, ...]:
    return tuple(planting_line(p, ledger) for p in plantings[:most])


def _to_look_at(ledger: Ledger) -> list[Planting]:
    """Sowings of which no seedling was noted in the time they take, the latest to be missed first."""
    up, on = ledger.reckoned.coming_up, ledger.garden.on
    late = [p for p in ledger.garden.plantings if p.id in up and up[p.id].is_overdue(on)]
    return sorted(late, key=lambda p: (up[p.id].last, p.id), reverse=True)


def _earlier(ledger: Ledger) -> tuple[tuple[EarlierYear, ...], tuple[Link, ...]]:
    """This week year by year, the latest first; where that grows long, links to the notes of the rest."""
    by_year: dict[int, list[Entry]] = {}
    for entry in ledger.this_week_earlier():
        assert entry.when is not None
        by_year.setdefault(entry.when.first.year, []).append(entry)
    shown: list[EarlierYear] = []
    long_ago: list[Link] = []
    told = 0
    for year, entries in sorted(by_year.items(), reverse=True):
        told += len(entries)
        if shown and told > MOST_THIS_WEEK:
            season = ledger.year_name(ledger.year_of(_first_day(entries)))
            long_ago.append(Link(text=str(year), to=by_date_address(season)))
        else:
            notes = tuple(note_line(entry, ledger, short=True) for entry in entries)
            shown.append(EarlierYear(name=str(year), notes=notes))
    return tuple(shown), tuple(long_ago)


def _first_day(entries: list[Entry]) -> date:
    return min(entry.when.first for entry in entries if entry.when)


def _week(ledger: Ledger) -> str:
    on = ledger.garden.on
    return day_range(on - timedelta(days=DAYS_BACK), on + timedelta(days=DAYS_ON))


def _lessons_in_season(ledger: Ledger) -> tuple[Lesson, ...]:
    """The newest lessons from earlier seasons: they were written to be met again."""
    return lessons_of(ledger.lessons(before=ledger.this_year)[:MOST_LESSONS], ledger)[:MOST_LESSONS]
