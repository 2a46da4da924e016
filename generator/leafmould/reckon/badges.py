"""The short labels a planting wears wherever it appears: "sown 23 days ago".

A badge holds its words as of the garden's day, and what a reader's browser needs to move a day count on:
the words are `before`, then the count ("1 day", "12 days"), then `after`, which follows a space unless it
opens with a comma. Where nothing was counted, `counted_from` is None and the text stands as it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from leafmould.facts import tables
from leafmould.garden.model import Event, Garden, Planting, Season
from leafmould.garden.waits import SafeDay, Wait
from leafmould.reckon.ages import days_since
from leafmould.reckon.coming_up import ComingUp
from leafmould.reckon.first_crop import first_crop
from leafmould.reckon.forecast import Forecast
from leafmould.values.when import When
from leafmould.values.wording import amount_words, counted, day, day_range, weight, when_words

STILL_PICKING = 30
"""Days since the last picking after which a planting is no longer said to be picked. Common practice."""

FIRST_YEAR = 365
"""Days for which a perennial's planting is counted; later it is told by its date."""

NOTED_BY = {
    "started": ("started",),
    "sown": ("sowed", "resowed"),
    "planted": ("planted", "moved"),
    "found": ("saw",),
    "cleared": ("cleared", "finished", "lost"),
    "lost": ("lost", "resowed"),
}
"""The actions that can have set each date of a planting, most likely first."""

STANDING = {"started": "started indoors", "sown": "sown", "planted": "planted out", "found": "found"}
"""The dates of a planting that open it, in order, and their words."""

WHY = {
    "manure": "raw manure, as far as is known, on",
    "animals": "animals in the bed until",
    "treatment": "treated on",
}
ASK = {
    "manure": "your local rules come first",
    "animals": "your local rules come first",
    "treatment": "the label comes first",
}
"""What a wait is for, and whom to defer to."""

LASTING = {
    "planted": "planted",
    "found": "found",
    "sown": "sown",
    "started": "started indoors",
    "moved": "moved here",
}
"""The same of a lasting plant, of which only one is told."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Badge:
    """One label. `text` is right as of the garden's day; `counted_from` lets script move it on."""

    kind: str  # "sown", "planted", "started", "found", "expected", "picking", "picked", "ended", "unknown", "wait", "coming up", "look"
    text: str  # "sown 23 days ago"
    counted_from: date | None = None  # the day the count starts; None: nothing to move on
    before: str = ""  # words before the count: "sown"
    after: str = ""  # words after "23 days": "ago"
    entry: str | None = None  # entry id the date was noted in
    basis: str | None = None  # the reason, for an expectation or an estimate


def badges(
    planting: Planting,
    garden: Garden,
    forecast: Forecast | None,
    safe: SafeDay | None = None,
    up: ComingUp | None = None,
    unrecorded: Wait | None = None,
) -> tuple[Badge, ...]:
    """The labels of a planting in the order they are shown: how it began, how it goes or ended, what to wait for.

    Args:
        safe: the first day it may be picked again, where raw manure, animals or a treatment were noted.
        up: when its seedlings should show, where they are waited for.
        unrecorded: a treatment whose days to wait nobody wrote down.
    """
    story = _story(planting, garden, forecast)
    if up:
        place = next((n for n, badge in enumerate(story) if badge.kind == "expected"), len(story))
        story = (*story[:place], _coming_up(up, garden), *story[place:])
    waits = (*((_wait(safe, garden),) if safe else ()), *((_label(unrecorded),) if unrecorded else ()))
    return (*story, *waits)


def _label(wait: Wait) -> Badge:
    basis = f"{WHY[wait.cause]} {day(wait.last)}; {ASK[wait.cause]}"
    text = "days to wait not recorded: see the label"
    return Badge(kind="wait", text=text, entry=wait.event.entry, basis=basis)


def _coming_up(up: ComingUp, garden: Garden) -> Badge:
    """ "seedlings about 20–27 April", "not seen up by 27 April: look"."""
    on = garden.on
    entry = garden.event_by_id[up.event].entry if up.event else None
    if on > up.last:
        text = f"not seen up by {day(up.last, on.year)}: look"
        return Badge(kind="look", text=text, entry=entry, basis=up.basis)
    span = day_range(up.first, up.last, on.year)
    return Badge(kind="coming up", text=f"seedlings about {span}", entry=entry, basis=up.basis)


def _wait(safe: SafeDay, garden: Garden) -> Badge:
    """ "not to be picked before 13 August"."""
    until = day_range(safe.day, safe.day, garden.on.year)
    wait = safe.wait
    if wait.is_going_on:
        text = f"not to be picked for {safe.days} days after the animals leave"
    else:
        text = f"not to be picked before {until}"
    basis = f"{WHY[wait.cause]} {day(wait.last)}: {counted(safe.days, 'day')} to wait; {ASK[wait.cause]}"
    return Badge(kind="wait", text=text, entry=wait.event.entry, basis=basis)


def _story(planting: Planting, garden: Garden, forecast: Forecast | None) -> tuple[Badge, ...]:
    if planting.origin == "year only":
        return (_by_year(planting, garden),)
    if planting.ended_on is not None:
        return (_ended(planting, garden),)
    if planting.is_perennial:
        return tuple(_perennial(planting, garden, forecast))
    going = _picking(planting, garden) or _expected(planting, garden, forecast)
    found = (*_begun(planting, garden), *((going,) if going else ()))
    return found or (Badge(kind="unknown", text="start not known"),)


def _begun(planting: Planting, garden: Garden) -> Iterator[Badge]:
    """How it began; once it stands in its bed, the raising before is the planting's story, not a badge."""
    known = [kind for kind in STANDING if getattr(planting, kind) is not None]
    if known and known[0] == "started" and len(known) > 1:
        known = known[1:]
    for kind in known:
        yield _since(kind, getattr(planting, kind), planting, garden)
    if not known and planting.started_between:
        first, last = planting.started_between
        span = day_range(first, last, garden.on.year)
        yield Badge(kind="started", text=f"started indoors between {span}", basis="one of several sowings")
    elif not known and planting.moved:
        yield _since("moved", planting.moved, planting, garden)


def _since(kind: str, when: When, planting: Planting, garden: Garden) -> Badge:
    """ "sown 23 days ago", or for a coarse date "sown spring 2024"."""
    words = _opening(kind, planting)
    entry = _entry(kind, planting, garden)
    days = days_since(when, garden.on)
    if days is None:
        return Badge(kind=_shown_as(kind), text=f"{words} {when_words(when)}", entry=entry)
    return _counting(kind, words, when, days, entry)


def _shown_as(kind: str) -> str:
    """Plants moved here look like plants set out here."""
    return "planted" if kind == "moved" else kind


def _counting(kind: str, words: str, when: When, days: int, entry: str | None) -> Badge:
    return Badge(
        kind=_shown_as(kind),
        text=f"{words} today" if days == 0 else f"{words} {counted(days, 'day')} ago",
        counted_from=when.day,
        before=words,
        after="ago",
        entry=entry,
    )


def _opening(kind: str, planting: Planting) -> str:
    """ "planted out" for plants that were raised, "planted" for sets, tubers and what may be seed."""
    facts = (tables.crops().get(crop) for crop in planting.crops)
    raised = planting.started or planting.sown or any(f and f.starts_as == "plants" for f in facts)
    return "planted" if kind == "planted" and not raised else STANDING.get(kind, "moved here")


def _expected(planting: Planting, garden: Garden, forecast: Forecast | None) -> Badge | None:
    if forecast is None:
        return None
    span = day_range(forecast.earliest, forecast.latest, garden.on.year)
    if forecast.kind == "stands":
        return _standing(forecast, span, garden.on)
    passed = garden.on > forecast.latest
    text = f"was expected {span}, no picking noted" if passed else f"expected {span}"
    return Badge(kind="expected", text=text, basis=forecast.basis)


def _standing(forecast: Forecast, span: str, on: date) -> Badge:
    """ "ready from 1 October – 20 November, and stands"; of these nothing is overdue."""
    ready = on > forecast.latest
    text = (
        f"ready since about {day(forecast.likely, on.year)}, and stands"
        if ready
        else f"ready {span}, and stands"
    )
    return Badge(kind="expected", text=text, basis=forecast.basis)


def _picking(planting: Planting, garden: Garden) -> Badge | None:
    """ "picking for 12 days, 3.4 kg so far", "picked once, on 4 July, 11 days ago", or what was picked if that is a while ago."""
    first, last = planting.first_picked, planting.last_picked or planting.first_picked
    if first is None or last is None:
        return None
    so_far = _amount(planting, garden, " so far")
    entry = _entry_of_picking(planting, garden)
    days = days_since(first, garden.on)
    if days is None or (garden.on - last.last).days > STILL_PICKING:
        return _picked(first, last, _amount(planting, garden), garden, entry)
    amount = _amount(planting, garden)
    if days == 0:
        text, before, after = f"picked today{so_far}", "picked", f"ago{amount}"
    elif first == last:
        before, after = f"{_only_day(planting)} {day(first.first, garden.on.year)},", f"ago{amount}"
        text = f"{before} {counted(days, 'day')} {after}"
    else:
        before, after = "picking for", so_far
        text = f"{before} {counted(days, 'day')}{after}"
    return Badge(kind="picking", text=text, counted_from=first.day, before=before, after=after, entry=entry)


def _only_day(planting: Planting) -> str:
    """One picking, or several of one day: nobody noted that it goes on."""
    return "picked once, on" if len(planting.pickings) == 1 else "picked on"


def _picked(first: When, last: When, amount: str, garden: Garden, entry: str | None) -> Badge:
    """ "picked 3 June – 14 July, 3.4 kg"."""
    year = garden.on.year
    if first.day and last.day:
        span = day_range(first.day, last.day, year)
    elif first == last:
        span = when_words(first, year)
    else:
        span = f"from {when_words(first, year)} to {when_words(last, year)}"
    return Badge(kind="picked", text=f"picked {span}{amount}", entry=entry)


def _ended(planting: Planting, garden: Garden) -> Badge:
    """ "cleared after 94 days, 3.4 kg", "lost after 30 days (slugs)", "presumed over …, estimated"."""
    assert planting.ended_on is not None
    amount = _amount(planting, garden)
    if planting.end_is_estimated and planting.lost is None and planting.cleared is None:
        is_of_this_year = planting.start is None or planting.start.first.year == garden.on.year
        on = day(planting.ended_on, garden.on.year if is_of_this_year else None)
        text = f"presumed over {on}, estimated{amount}"
        return Badge(kind="ended", text=text, basis=planting.end_basis)
    kind = "lost" if planting.lost else "cleared"
    word = kind if planting.lost or planting.cleared else "over"
    when = planting.lost or planting.cleared
    text = f"{word} {_after(planting, when, planting.ended_on, garden.on.year)}"
    cause = _cause(planting)
    if planting.lost and cause:
        text += f" ({cause})"
    if planting.end_is_estimated:
        text += ", estimated"
    entry = _entry(kind, planting, garden)
    return Badge(kind="ended", text=text + amount, entry=entry, basis=planting.end_basis)


def _after(planting: Planting, when: When | None, ended_on: date, this_year: int) -> str:
    """How long it stood, as far as both ends are exact; else when it ended."""
    start = None if planting.is_perennial else planting.start
    if when is not None and when.day is None:
        return when_words(when)
    ended_on = when.day if when and when.day else ended_on
    days = days_since(start, ended_on)
    if days is None:
        return f"on {day_range(ended_on, ended_on, this_year)}"
    return "the same day" if days == 0 else f"after {counted(days, 'day')}"


def _cause(planting: Planting) -> str | None:
    """What a loss was put down to, from the words the assembling gave it."""
    basis = planting.end_basis or ""
    return basis.removeprefix("lost to ") if basis.startswith("lost to ") else None


def _perennial(planting: Planting, garden: Garden, forecast: Forecast | None) -> Iterator[Badge]:
    """ "planted 2015", and this season's picking: "picked 2026 from 3 June, 3.4 kg"."""
    kind = next((kind for kind in LASTING if getattr(planting, kind) is not None), None)
    if kind is not None:
        yield _long_ago(kind, getattr(planting, kind), _entry(kind, planting, garden), garden)
    elif planting.started_between:
        yield from _begun(planting, garden)
    elif planting.year is not None:
        entry = planting.entries[0] if planting.entries else None
        yield Badge(kind="unknown", text=f"known since {planting.year}", entry=entry)
    else:
        yield Badge(kind="unknown", text="start not known")
    season = next((s for s in reversed(planting.seasons) if s.first_picked), None)
    if season and season.first_picked:
        yield _season(season, season.first_picked, planting, garden)
    if forecast and forecast.kind == "season":
        span = day_range(forecast.earliest, forecast.latest, garden.on.year)
        passed = garden.on > forecast.latest
        text = f"was expected {span}, no picking noted" if passed else f"expected {span}"
        yield Badge(kind="expected", text=text, basis=forecast.basis)
    elif to_come := first_crop(planting, garden.on.year, _like(planting, garden)):
        years = f"{to_come.first}" if to_come.first == to_come.last else f"{to_come.first}–{to_come.last}"
        yield Badge(kind="expected", text=f"first crop about {years}", basis=to_come.basis)


def _like(planting: Planting, garden: Garden) -> str | None:
    """The published crop that an own one is like."""
    crop = garden.crops.get(planting.crops[0]) if len(planting.crops) == 1 else None
    return crop.like if crop else None


def _long_ago(kind: str, start: When, entry: str | None, garden: Garden) -> Badge:
    """ "planted 2015"; in its first year "planted 40 days ago"."""
    word = LASTING[kind]
    days = days_since(start, garden.on)
    if days is None or days > FIRST_YEAR:
        return Badge(kind=_shown_as(kind), text=f"{word} {when_words(start)}", entry=entry)
    return _counting(kind, word, start, days, entry)


def _season(season: Season, first: When, planting: Planting, garden: Garden) -> Badge:
    amount = ""
    if season.picked_g:
        about = "about " if planting.picked_estimated else ""
        amount = f", {about}{weight(season.picked_g, garden.units)}"
    text = f"picked {season.name} from {when_words(first, first.first.year)}{amount}"
    return Badge(kind="picked", text=text, entry=_entry_of_picking(planting, garden, first))


def _by_year(planting: Planting, garden: Garden) -> Badge:
    year = planting.year if planting.year is not None else planting.start and planting.start.first.year
    entry = planting.entries[0] if planting.entries else None
    return Badge(kind="unknown", text=f"known by year only: {year}", entry=entry)


def _amount(planting: Planting, garden: Garden, after: str = "") -> str:
    """What was picked, opening with a comma; empty if no amount was noted."""
    if planting.picked_g:
        about = "about " if planting.picked_estimated else ""
        return f", {about}{weight(planting.picked_g, garden.units)}{after}"
    said = [amount_words(a, garden.units) for a in planting.picked if a.value]
    return f", {' and '.join(said)}{after or ' in all'}" if said else ""


def _entry(kind: str, planting: Planting, garden: Garden) -> str | None:
    """The entry in which a date of the planting was noted."""
    when: When | None = getattr(planting, kind, None)
    events = _events(planting, garden)
    for verb in NOTED_BY.get(kind, ()):
        for event in events:
            if event.verb == verb and (when is None or event.when == when):
                return event.entry
    return next((event.entry for event in events if when is not None and event.when == when), None)


def _entry_of_picking(planting: Planting, garden: Garden, when: When | None = None) -> str | None:
    first = when or planting.first_picked
    found = (garden.picking_by_id[i] for i in planting.pickings if i in garden.picking_by_id)
    return next((picking.entry for picking in found if picking.when == first), None)


def _events(planting: Planting, garden: Garden) -> list[Event]:
    return [garden.event_by_id[i] for i in planting.events if i in garden.event_by_id]
