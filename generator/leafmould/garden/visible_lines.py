"""What of a work line may be shown: its actions, and its words without what they tell.

Used by `visible` for every line of every note. A line may hold several actions that share its words, so a
hidden one is also taken out of the words of the others.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from functools import cache
from itertools import pairwise
from typing import Any

from leafmould.garden.blank import Shortened, Span, applied, shortened
from leafmould.garden.figures import PRICE
from leafmould.garden.people import is_source
from leafmould.garden.seed_bought import is_seed_bought
from leafmould.garden.sight import Sight, is_hidden, is_in_years, people_spans, without_people
from leafmould.garden.view import View, masker
from leafmould.notes.entries import Action, Entry, Named
from leafmould.values.names import slug
from leafmould.values.problems import Location, Problem
from leafmould.values.quantities import Amount
from leafmould.values.when import When

HIDDEN_VERBS = {
    "seeds": frozenset({"saved seed", "tried seed"}),
    "larder": frozenset({"stored", "put up", "used"}),
    "soil": frozenset({"tested soil"}),
    "animals": frozenset({"penned", "let out", "fed animals", "collected", "released", "opened"}),
    "weather": frozenset({"noted weather"}),
}
"""What was done that belongs to a subject of `leave out`."""

LARDER_FATES = frozenset({"stored", "put up"})

NOT_WORDS = frozenset({"id", "at", "verb", "field", "date_from", "kind", "sureness", "spans"})
"""Fields that hold no words of the gardener's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One work line: where it stands, its words as written and as shown, the actions that stay."""

    at: Location
    field: str
    before: str
    text: str = ""  # "": the whole line is hidden
    actions: tuple[Action, ...] = ()


def visible_line(group: Sequence[Action], sight: Sight) -> Line:
    """What stays of a line, given its actions."""
    view, first = sight.view, group[0]
    gone = Line(at=first.at, field=first.field, before=first.text)
    is_told = view.bed_names.are_in(first.text) or view.disguise.are_in(first.text)
    if is_told or _is_private(group, view):
        return gone
    kept = [action for action in group if not _is_left_out(action, sight)]
    if not kept:
        return gone
    short = _shortened(group, kept, sight)
    if "notes" in view.leave_out:
        short = _understood(short, kept)
    return replace(gone, text=short.text, actions=tuple(_shown(action, short, sight) for action in kept))


def masked(entry: Entry, sight: Sight) -> Entry:
    """The entry with "…" in the place of private words, people and hidden names, wherever they stand."""
    view = sight.view

    def name(named: Named) -> Named:
        return _masked_name(named, view) if view.words else named

    shown: Entry = _mapped(entry, cache(lambda text: _masked_text(text, sight)), name)
    return shown


def _is_private(group: Iterable[Action], view: View) -> bool:
    return "private" not in view.show and any(action.is_private for action in group)


def _is_left_out(action: Action, sight: Sight) -> bool:
    view = sight.view
    places = (*action.places, *action.origins, *action.but)
    things = (*action.crops, *action.varieties, *action.but)
    return (
        _is_of_subject(action, view)
        or any(is_hidden(place, view.beds, view.bed_names) for place in places)
        or any(is_hidden(thing, view.crops, sight.others) for thing in things)
        or is_in_years(action.when, view.years)
        or is_in_years(action.until, view.years)
        or action.crop_year in view.years
    )


def _is_of_subject(action: Action, view: View) -> bool:
    if any(action.verb in HIDDEN_VERBS.get(subject, ()) for subject in view.leave_out):
        return True
    return "seeds" in view.leave_out and is_seed_bought(action)


def _shortened(group: Sequence[Action], kept: Sequence[Action], sight: Sight) -> Shortened:
    """The line's words without prices, people and what hidden actions tell."""
    text = group[0].text
    stays = {span[1:] for action in kept for span in action.spans}
    hidden = [s[1:] for a in group if a not in kept for s in a.spans if not _meets(s[1:], stays)]
    hidden += [*sight.others.spans(text), *sight.view.words.spans(text)]
    hidden += people_spans(text, sight)
    if not sight.view.shows_people:
        hidden += _source_places(group)
    hidden += _place_spans(text, sight.view)
    return shortened(text, blanked=hidden, cut=_to_cut(group, sight.view))


def _to_cut(group: Sequence[Action], view: View) -> list[Span]:
    """Prices, sellers and fates that are not shown, by where they stand."""
    text, cut = group[0].text, []
    if not view.shows_prices:
        cut += [m.span() for m in PRICE.finditer(text)]
        cut += [s for a in group for s in _places_of("price", a.price, a)]
    if not view.shows_people:
        cut += [s for a in group for s in _places_of("source", a.source, a)]
    if "larder" in view.leave_out:
        cut += [span for action in group for span in _larder_fates(action)]
    return cut


def _larder_fates(action: Action) -> list[Span]:
    """What a line says of putting some of a harvest by, up to the next comma."""
    starts = [start for slot, start, _ in action.spans if slot == "fate"]
    text = action.text
    return [
        (start, end if (end := text.find(", ", start)) >= 0 else len(text))
        for fate, start in zip(action.fates, starts, strict=False)
        if fate.kind in LARDER_FATES
    ]


def _places_of(slot: str, value: str | None, action: Action) -> list[Span]:
    """Where a slot stands in the line: by its span, else by its words."""
    if value is None:
        return []
    spans = [(start, end) for name, start, end in action.spans if name == slot]
    return spans or [m.span() for m in re.finditer(re.escape(value), action.text)]


def _shown(action: Action, short: Shortened, sight: Sight) -> Action:
    """An action that stays, without what it tells beside."""
    view = sight.view
    spans = tuple((slot, *to) for slot, a, b in action.spans if (to := short.moved(a, b)))
    is_larder_hidden = "larder" in view.leave_out
    return replace(
        action,
        text=short.text,
        spans=spans,
        price=action.price if view.shows_prices else None,
        amounts=action.amounts if view.shows_prices else _no_prices(action),
        source=action.source if view.shows_people else None,
        places=without_people(
            action.places if view.shows_people else _no_sources(action), action.text, sight
        ),
        origins=without_people(action.origins, action.text, sight),
        crops=without_people(action.crops, action.text, sight),
        varieties=without_people(action.varieties, action.text, sight),
        remark=_remark(action, short, sight),
        fates=tuple(f for f in action.fates if not (is_larder_hidden and f.kind in LARDER_FATES)),
    )


def _no_sources(action: Action) -> tuple[Named, ...]:
    return tuple(place for place in action.places if not is_source(action, place))


def _source_places(group: Iterable[Action]) -> list[Span]:
    """Where whoever something came from was read as a place."""
    names = {place.written for action in group for place in action.places if is_source(action, place)}
    return [(a, b) for action in group for _, a, b in action.spans if action.text[a:b] in names]


def _no_prices(action: Action) -> tuple[Amount, ...]:
    """The amounts that are no part of a price."""
    prices = " ".join(m.group() for m in PRICE.finditer(action.text))
    if not prices:
        return action.amounts
    return tuple(
        amount
        for amount in action.amounts
        if not re.search(rf"(?<![\d.,]){re.escape(amount.written)}(?!\d)", prices)
    )


def _remark(action: Action, short: Shortened, sight: Sight) -> str | None:
    """The words left over that still stand in the line as it is shown, or never stood there as such."""
    if action.remark is None or "notes" in sight.view.leave_out or sight.others.are_in(action.remark):
        return None
    pieces = action.remark.split(", ")
    kept = (p for p in pieces if p not in action.text or _masked_text(p, sight) in short.text)
    return ", ".join(kept) or None


def _understood(short: Shortened, kept: Sequence[Action]) -> Shortened:
    """The line reduced to the words that were understood, where the notes' prose is left out."""
    spans = sorted(
        {(a, b) for action in kept for slot, a, b in action.spans if slot != "remark" and short.moved(a, b)}
    )
    end = len(kept[0].text)
    edges = [(0, 0), *spans, (end, end)]
    gaps = [(a[1], b[0], "" if n in (0, len(spans)) else " ") for n, (a, b) in enumerate(pairwise(edges))]
    edits = tuple(gap for gap in gaps if gap[0] < gap[1])
    return replace(short, text=applied(kept[0].text, edits), edits=edits)


def _meets(span: Span, others: Iterable[Span]) -> bool:
    return any(a < span[1] and span[0] < b for a, b in others)


def _masked_text(text: str, sight: Sight) -> str:
    spans = (
        *sight.view.words.spans(text),
        *sight.others.spans(text),
        *people_spans(text, sight),
    )
    spans += _place_spans(text, sight.view)
    prices = () if sight.view.shows_prices else tuple(m.span() for m in PRICE.finditer(text))
    return shortened(text, (*spans, *prices)).text if spans or prices else text


def _place_spans(text: str, view: View) -> tuple[Span, ...]:
    return () if view.place is None else tuple(m.span() for m in view.place.finditer(text))


def _masked_name(named: Named, view: View) -> Named:
    """A bed, crop or variety as it may be shown, under the key it then has."""
    mask, shown = masker(view.words), dict(view.renamed).get(named.key)
    name = mask(named.name)
    if shown is None:
        shown = slug(name) if named.key == slug(named.name) else mask(named.key)
    return replace(named, key=shown, name=name, written=mask(named.written))


def _mapped(value: Any, text: Callable[[str], str], name: Callable[[Named], Named]) -> Any:
    """The value with every text and every name in it, however deep, put through these."""
    if isinstance(value, str):
        return text(value)
    if isinstance(value, Named):
        return name(value)
    if isinstance(value, tuple):
        return tuple([_mapped(item, text, name) for item in value]) if value else value
    kind: Any = type(value)
    changed = {
        field: new
        for field in _worded(kind)
        if (old := getattr(value, field)) is not None
        and (new := _mapped(old, text, name)) is not old
        and new != old
    }
    return replace(value, **changed) if changed else value


@cache
def _worded(kind: Any) -> tuple[str, ...]:
    """The fields of a value that may hold words of the gardener's."""
    if kind in (Location, When, Problem) or not is_dataclass(kind):
        return ()
    return tuple(f.name for f in fields(kind) if f.name not in NOT_WORDS)
