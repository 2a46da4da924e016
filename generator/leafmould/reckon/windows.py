"""When each crop may be sown here: raised indoors, sown or set out, the last sowing and setting out of use, and in autumn.

Reckoned from the average frosts of garden.yaml and the published figures; of several sources the middle one is
taken, and where there is none, common practice, which is said. In autumn all grows more slowly, so a fortnight is added (common practice). For tender crops the first
frost closes the season; hardy ones are given four weeks more (common practice), but should be three quarters
grown before the days fall under ten hours (Vegetable Growers News, May 2019, reporting the student farm of
Michigan State University: a rule of thumb). Under cover both frosts are shifted by what garden.yaml says the cover
gains, the light is not. What goes in around the first frost for the year after is common practice, and only where the
coldest month is usually mild enough for it. Days of the month hold for any year. Pure.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta
from statistics import median_low

from leafmould.facts import tables
from leafmould.facts.published import Fact, published
from leafmould.facts.tables import CropFact, UsualDays
from leafmould.facts.usual_starts import UsualStart, usual_start
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.daylight import ShortDays, midwinter, short_days
from leafmould.reckon.days import start_of
from leafmould.reckon.known_words import from_frost_words
from leafmould.values.wording import MONTHS, number_words

GROWN_BY_THE_DARK = 0.75
"""How far a hardy crop should have come by the last ten-hour day."""
SLOW_AUTUMN = 14
"""Days more that a crop takes in autumn."""
HARDY = timedelta(weeks=4)
"""How long a hardy crop goes on after the first frost."""
BY_DAY_LENGTH = frozenset({"onion", "shallot", "celery", "celeriac", "oca", "mashua", "ulluco"})
"""What a late sowing makes nothing of."""
LAST = {"last useful sowing": "sowing", "last setting out": "planting out"}
"""What ends a season, and from what its days are counted."""
TOO_SHORT = "the season is too short"
TOO_COLD = "the winter is too cold in the open"
COMMON = "common practice, no source"
IN_AUTUMN = "in autumn, for next year"
WEEK = timedelta(days=7)


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderCover:
    """What a window becomes under a cover."""

    cover: str  # "fleece"
    words: str
    first: date
    last: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """One stretch of days, in the year it was reckoned for."""

    kind: str  # "start indoors", "sow or set out", "last useful sowing", "last setting out", "in autumn, for next year"
    first: date
    last: date
    words: str  # "11–25 April", "until 20 July", "about 3–9 August"
    why: str  # one sentence
    sources: tuple[str, ...]  # source ids; empty for packet days and common practice, which `why` says
    how: str = ""  # "sow", "set out", "plant": how the crop is begun then, where the kind does not say
    covered: tuple[UnderCover, ...] = ()  # the same under each cover that changes it, the least first


def windows(crop: str, almanac: Almanac, year: int) -> tuple[Window, ...]:
    """The windows of a crop in a year; empty without frost dates, or where nothing is published of it.

    Args:
        year: of the spring it is for.
    """
    bare = _windows(crop, almanac, year)
    covered = [
        (cover.name, _windows(crop, almanac, year, gain=timedelta(days=cover.days)))
        for cover in almanac.cover
        if bare
    ]
    return tuple(replace(window, covered=_covered(window, covered)) for window in bare)


def _windows(crop: str, almanac: Almanac, year: int, gain: timedelta = timedelta(0)) -> tuple[Window, ...]:
    """The windows where the last frost comes sooner by a gain, and the first one later."""
    fact = almanac.fact(crop)
    if fact is None or fact.grown_as == "perennial" or almanac.last_frost is None:
        return ()
    frost = _safe(year, *almanac.last_frost)
    out = _put_out(fact, frost - gain)
    indoors = _indoors(fact, out) if out else None
    last = [_last(kind, crop, fact, almanac, year, gain) for kind in LAST]
    ends = [_too_short(window) if out and window.last < out.first else window for window in last if window]
    return tuple(window for window in (indoors, out, *ends, _in_autumn(fact, almanac, year)) if window)


def _too_short(window: Window) -> Window:
    """An end of the season that comes before its beginning."""
    return replace(window, words=TOO_SHORT, why=f"{window.why}: that would be {window.words}")


def _covered(window: Window, found: list[tuple[str, tuple[Window, ...]]]) -> tuple[UnderCover, ...]:
    """A window under each cover, as far as it is another than in the open."""
    return tuple(
        UnderCover(cover=name, words=same.words, first=same.first, last=same.last)
        for name, others in found
        for same in others
        if same.kind == window.kind and same.words != window.words
    )


def _put_out(fact: CropFact, frost: date) -> Window | None:
    found = _rows(fact.key, "put out from the last frost")
    usual = None if found else usual_start(fact, "put out")
    if not found and not usual:
        return None
    low, high = (usual.low, usual.high) if usual else _middle(found)
    first, last = frost + timedelta(days=low), frost + timedelta(days=max(low, high))
    return Window(
        kind="sow or set out",
        first=first,
        last=last,
        words=f"from {_day(first)}" if low == high else _span(first, last),
        why=_or_common(f"{from_frost_words(low, high)} ({_day(frost)})", usual),
        sources=_sources(found),
        how=(usual.how if usual else "") or _how(fact),
    )


def _how(fact: CropFact) -> str:
    """How a crop is begun outside; of seed that is often raised first the tables do not say which they mean."""
    if fact.starts_as == "seed":
        return "sow or set out" if _rows(fact.key, "raised indoors") else "sow"
    return "plant" if fact.starts_as == "sets" else "set out"


def _indoors(fact: CropFact, out: Window) -> Window | None:
    found = _rows(fact.key, "raised indoors")
    usual = None if found else usual_start(fact, "raised indoors")
    if not found and not usual:
        return None
    low, high = (usual.low, usual.high) if usual else _middle(found)
    first, last = out.first - high * WEEK, out.first - low * WEEK
    weeks = f"{low}–{high}" if low != high else f"{low}"
    return Window(
        kind="start indoors",
        first=first,
        last=last,
        words=_span(first, last),
        why=_or_common(f"{weeks} weeks before they may go out", usual),
        sources=_sources(found),
    )


def _or_common(why: str, usual: UsualStart | None) -> str:
    return f"{why}; {COMMON}" if usual else why


def _in_autumn(fact: CropFact, almanac: Almanac, year: int) -> Window | None:
    """What is begun around the first frost and picked in the year after; a cover spares it the cold, and moves no day."""
    usual = usual_start(fact, "in autumn")
    if usual is None or almanac.first_frost is None or not almanac.has_winter:
        return None
    frost = _autumn(almanac.last_frost, almanac.first_frost, year)
    first, last = frost + timedelta(days=usual.low), frost + timedelta(days=usual.high)
    coldest = min((month.low for month in almanac.warmth.months), default=None)
    is_lost = usual.coldest is not None and coldest is not None and coldest < usual.coldest
    where = "" if coldest is not None or usual.coldest is None else ", where winters are mild"
    return Window(
        kind=IN_AUTUMN,
        first=first,
        last=last,
        words=TOO_COLD if is_lost else _span(first, last),
        why=f"lows of the coldest month are usually under {_celsius(usual.coldest)} here: under cover only; {COMMON}"
        if is_lost and usual.coldest is not None
        else f"{from_frost_words(usual.low, usual.high, 'first frost')} ({_day(frost)}){where}; {COMMON}",
        sources=(),
        how=usual.how,
    )


def _celsius(warmth: float) -> str:
    return f"{number_words(warmth)} °C".replace("-", "−")


def _last(
    kind: str, crop: str, fact: CropFact, almanac: Almanac, year: int, gain: timedelta
) -> Window | None:
    """The last day on which one may begin a crop in a way, and still see it ripe."""
    days, sources, usual = _days_from(LAST[kind], crop, fact, almanac)
    if not days or almanac.first_frost is None or fact.grown_as != "annual" or fact.key in BY_DAY_LENGTH:
        return None
    frost = _autumn(almanac.last_frost, almanac.first_frost, year) + gain
    slow = timedelta(days=days + SLOW_AUTUMN)
    said = f"{days} days{' (common practice, no source)' if usual else ''}, and 14 more in autumn,"
    if fact.is_tender:
        why = f"{said} before the first frost ({_day(frost)})"
        return _until(kind, frost - slow, why, sources)
    last = frost + HARDY - slow
    why = f"{said} before four weeks of frost are over (first frost {_day(frost)})"
    dark = _dark(almanac, year)
    if dark and (by_light := dark.first - timedelta(days=round(days * GROWN_BY_THE_DARK))) < last:
        why = "three quarters of its days before the days fall under ten hours"
        return _until(kind, by_light, why, sources, is_rough=True)
    return _until(kind, last, why, sources)


def _dark(almanac: Almanac, year: int) -> ShortDays | None:
    if almanac.latitude is None:
        return None
    return short_days(
        almanac.latitude, midwinter(year + almanac.is_southern, is_southern=almanac.is_southern)
    )


def _until(kind: str, last: date, why: str, sources: tuple[str, ...], *, is_rough: bool = False) -> Window:
    """Until a day; what was reckoned from the latitude is told by its week."""
    first = last - timedelta(days=last.weekday()) if is_rough else last
    last = first + timedelta(days=6) if is_rough else last
    words = f"until about {_span(first, last)}" if is_rough else f"until {_day(last)}"
    return Window(kind=kind, first=first, last=last, words=words, why=why, sources=sources)


def _days_from(
    start: str, crop: str, fact: CropFact, almanac: Almanac
) -> tuple[int, tuple[str, ...], UsualDays | None]:
    """The longer end of the days from a start to the first harvest, packet first; 0 if nobody says.

    Of what is common practice the middle, as its ranges are wide.
    """
    packet = almanac.packet(crop, None)
    if packet and packet.counts_from == start:
        return packet.high, (), None
    if found := [d for d in tables.days_facts(fact.key) if start_of(d, fact) == start]:
        return median_low([d.high for d in found]), tuple(dict.fromkeys(d.source for d in found)), None
    for usual in tables.usual_days(fact.key):
        if usual.counts_from == start and usual.season in ("", "spring"):
            return (usual.low + usual.high) // 2, (), usual
    return 0, (), None


def _rows(crop: str, subject: str) -> list[Fact]:
    return [fact for fact in published(crop) if fact.subject == subject and fact.low is not None]


def _middle(found: list[Fact]) -> tuple[int, int]:
    lows = [round(fact.low) for fact in found if fact.low is not None]
    highs = [round(fact.high) for fact in found if fact.high is not None]
    return median_low(lows), median_low(highs)


def _sources(found: list[Fact]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(fact.source for fact in found))


def _autumn(last: tuple[int, int] | None, first: tuple[int, int], year: int) -> date:
    """The first frost that comes after the spring of a year: in the south, or late in the winter, in the year after."""
    day = _safe(year, *first)
    return day if last is None or day > _safe(year, *last) else _safe(year + 1, *first)


def _safe(year: int, month: int, number: int) -> date:
    return date(year, month, min(number, 28) if month == 2 else number)


def _span(first: date, last: date) -> str:
    if first == last:
        return _day(first)
    if first.month == last.month:
        return f"{first.day}–{_day(last)}"
    return f"{_day(first)} – {_day(last)}"


def _day(day: date) -> str:
    return f"{day.day} {MONTHS[day.month - 1]}"
