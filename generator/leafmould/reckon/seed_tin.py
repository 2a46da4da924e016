"""What seed there is: the table of the tin and what the notes tell of, packet by packet.

A packet bought or seed saved by a note is in the tin too, unless the table has that crop, variety and year. Trials
and sowings find their packet by crop and variety; of several packets of one name a trial is taken to be of the
oldest, a sowing to be from the newest there was. Runs on an assembled garden. Pure.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from leafmould.facts import tables
from leafmould.garden.model import Event, Garden, Planting
from leafmould.garden.seed_bought import is_seed_bought
from leafmould.notes.setting_values import KeptSeed
from leafmould.reckon.almanac import Almanac
from leafmould.reckon.seed_left import Left, seed_left
from leafmould.reckon.seed_life import Judged, Life, Trial, judge, life_of
from leafmould.values.names import fold

Name = tuple[str, tuple[str, ...]]
"""Crop key and folded variety; () where none is written."""

SEED_WORDS = frozenset({"seed"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """One packet, or one saving of seed."""

    crop: str  # crop key
    word: str  # the crop as it was written
    variety: str | None
    year: int | None  # in which it was got
    row: KeptSeed | None  # in the table
    got: tuple[str, ...]  # ids of the events that tell of it
    trials: tuple[Trial, ...]  # oldest first
    sown: tuple[str, ...]  # ids of plantings from it, as far as can be told
    age: int | None  # years
    life: Life | None
    judged: Judged
    left: Left | None = None  # where it was counted


@dataclass(slots=True, kw_only=True)
class _Draft:
    """A packet while its story is gathered."""

    crop: str
    word: str
    variety: str | None
    year: int | None
    row: KeptSeed | None = None
    got: list[str] = field(default_factory=list)
    trials: list[Trial] = field(default_factory=list)
    sown: list[str] = field(default_factory=list)

    @property
    def name(self) -> Name:
        return self.crop, fold(self.variety or "")

    def was_there(self, year: int) -> bool:
        """Whether it was got by then, as far as is known."""
        return self.year is None or self.year <= year


def seed_tin(garden: Garden, almanac: Almanac) -> tuple[Lot, ...]:
    """Every packet, by crop as written, then variety, then the year it was got."""
    drafts = [_of_row(tin.crop, tin.row) for tin in almanac.tin]
    for event in garden.events:
        for crop, word in _seed_got(event, garden):
            _got(drafts, event, crop, word)
    by_name: dict[Name, list[_Draft]] = defaultdict(list)
    for draft in drafts:
        by_name[draft.name].append(draft)
    drafts += _tried_only(garden, by_name)
    _give_trials(garden.events, by_name)
    _give_sowings(garden.plantings, by_name)
    lots = (_lot(draft, garden) for draft in drafts)
    return tuple(sorted(lots, key=lambda x: (x.word.casefold(), x.variety or "", x.year or 0)))


def lots_by_crop(lots: Iterable[Lot]) -> Mapping[str, tuple[Lot, ...]]:
    """The packets of each crop."""
    found: dict[str, list[Lot]] = defaultdict(list)
    for lot in lots:
        found[lot.crop].append(lot)
    return {crop: tuple(of_crop) for crop, of_crop in found.items()}


def _of_row(crop: str, row: KeptSeed) -> _Draft:
    draft = _Draft(crop=crop, word=row.crop, variety=row.variety, year=row.year, row=row)
    if row.came_up is not None and row.tried:
        year = row.tried_year or row.year
        draft.trials.append(Trial(came_up=row.came_up, tried=row.tried, year=year, event=None))
    return draft


def _seed_got(event: Event, garden: Garden) -> Iterator[tuple[str, str]]:
    """The crops an event brought seed of, with the word they go by here."""
    if not (event.verb == "saved seed" or (event.verb == "bought" and _is_seed(event))):
        return
    for crop in event.crops:
        yield crop, garden.crops[crop].name if crop in garden.crops else crop


def _is_seed(event: Event) -> bool:
    """Whether what was bought is seed: called or counted so, or weighed where seed is sown."""
    action = event.action
    if is_seed_bought(action):
        return True
    words = set(fold(f"{action.remark or ''} {action.subject or ''}"))
    facts = [tables.crops().get(crop) for crop in event.crops]
    is_sown = bool(facts) and all(f is not None and f.starts_as == "seed" for f in facts)
    return is_sown and (bool(words & SEED_WORDS) or any(amount.grams for amount in action.amounts))


def _got(drafts: list[_Draft], event: Event, crop: str, word: str) -> None:
    """Tell of an event at the packet it brought; a new packet where the table has none."""
    year = event.action.crop_year or event.when.last.year
    for variety in event.varieties or (None,):
        name = (crop, fold(variety or ""))
        same = [d for d in drafts if d.name == name and d.year in (year, None)]
        if not same:
            drafts.append(_Draft(crop=crop, word=word, variety=variety, year=year))
        (same or drafts)[-1].got.append(event.id)


def _tried_only(garden: Garden, by_name: dict[Name, list[_Draft]]) -> list[_Draft]:
    """Packets known from a trial alone: of crops that nothing else tells of."""
    known = {crop for crop, _ in by_name}
    made: list[_Draft] = []
    for event in garden.events:
        for crop in event.crops if event.verb == "tried seed" else ():
            for variety in event.varieties or (None,):
                name = (crop, fold(variety or ""))
                if crop not in known and name not in by_name:
                    word = garden.crops[crop].name if crop in garden.crops else crop
                    made.append(_Draft(crop=crop, word=word, variety=variety, year=None))
                    by_name[name] = [made[-1]]
    return made


def _give_trials(events: Iterable[Event], by_name: Mapping[Name, Sequence[_Draft]]) -> None:
    for event in events:
        counted = next((a for a in event.action.amounts if a.of and a.low is not None), None)
        if event.verb != "tried seed" or counted is None or counted.low is None or not counted.of:
            continue
        year = event.when.last.year
        trial = Trial(came_up=round(counted.low), tried=round(counted.of), year=year, event=event.id)
        for name in _names(event.crops, event.varieties):
            there = [draft for draft in _packets(name, by_name) if draft.was_there(year)]
            there = [draft for draft in there if draft.year == event.action.crop_year] or there
            if there:
                min(there, key=lambda d: d.year or 0).trials.append(trial)


def _give_sowings(plantings: Iterable[Planting], by_name: Mapping[Name, Sequence[_Draft]]) -> None:
    for planting in plantings:
        when = planting.started or planting.sown
        if when is None or planting.is_doubtful:
            continue
        for name in _names(planting.crops, planting.varieties):
            there = [draft for draft in _packets(name, by_name) if draft.was_there(when.first.year)]
            if there:
                max(there, key=lambda d: d.year or 0).sown.append(planting.id)


def _names(crops: Iterable[str], varieties: Sequence[str]) -> Iterator[Name]:
    for crop in crops:
        for variety in varieties or ("",):
            yield crop, fold(variety)


def _packets(name: Name, by_name: Mapping[Name, Sequence[_Draft]]) -> Sequence[_Draft]:
    """The packets a note may mean: those of the variety; where none is named, the only variety there is."""
    crop, variety = name
    if variety or name in by_name:
        return by_name.get(name, ())
    named = [packets for (of, _), packets in by_name.items() if of == crop]
    return named[0] if len(named) == 1 else ()


def _once(trials: Iterable[Trial]) -> list[Trial]:
    """The trials by year; one that stands in the table and in a note is the note's."""
    found: dict[tuple[int, int, int | None], Trial] = {}
    for trial in trials:
        key = (trial.came_up, trial.tried, trial.year)
        if key not in found or trial.event:
            found[key] = trial
    return sorted(found.values(), key=lambda trial: trial.year or 0)


def _lot(draft: _Draft, garden: Garden) -> Lot:
    this_year = garden.on.year
    age = None if draft.year is None else this_year - draft.year
    known = garden.crops.get(draft.crop)
    crop = (known.like if known else None) or draft.crop
    life = life_of(crop)
    trials = _once(draft.trials)
    if draft.row is not None and draft.row.is_used_up:
        judged = Judged(standing="used up", why="")
    else:
        judged = judge(crop, age, life, trials[-1] if trials else None, this_year)
    return Lot(
        crop=draft.crop,
        word=draft.word,
        variety=draft.variety,
        year=draft.year,
        row=draft.row,
        got=tuple(draft.got),
        trials=tuple(trials),
        sown=tuple(dict.fromkeys(draft.sown)),
        age=age,
        life=life,
        judged=judged,
        left=seed_left(
            draft.row, draft.got, draft.sown, [trial.event for trial in trials if trial.event], garden
        ),
    )
